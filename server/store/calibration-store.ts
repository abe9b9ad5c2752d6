// The calibration history of the probes. It only grows: readings stay raw, and what corrected them stays known.
import type { Database } from 'better-sqlite3';
import type { Calibration } from '../../shared/readings/calibration.ts';
import type { Store, StoredCalibration } from './store.ts';
import { guarded } from './store-problem.ts';

type Row = Omit<StoredCalibration, 'correction'> & { readonly entry: string };

export function openCalibrationStore(db: Database): Store['calibrations'] {
  // Of two that begin together the one entered later comes later: `calibrate` lets the later listed hold.
  const list = db.prepare<[], Row>(
    'SELECT id, probe, entry, note, person, entered_ms enteredMs FROM calibrations ORDER BY probe, from_ms, id',
  );
  const add = db.prepare(`INSERT INTO calibrations (probe, from_ms, entry, note, person, entered_ms)
    VALUES (@probe, @fromMs, @entry, @note, @person, @enteredMs)`);
  return {
    list: async () => guarded(() => list.all().map(toStored)),
    async add({ correction, ...row }) {
      const values = { ...row, fromMs: correction.fromMs, entry: JSON.stringify(correction) };
      const id = guarded(() => Number(add.run(values).lastInsertRowid));
      return { ...row, correction, id };
    },
  };
}

function toStored({ entry, ...row }: Row): StoredCalibration {
  // Checked by `calibrationFaults` before it was kept.
  return { ...row, correction: JSON.parse(entry) as Calibration };
}
