// Batches with their holds, moves, log and answered checks.
import type { Database } from 'better-sqlite3';
import type { Batch, Hold, Move } from '../../shared/healing/batch.ts';
import type { LogAbout } from '../../shared/healing/batch-log.ts';
import type { CheckAnswer, LogRow, Store } from './store.ts';
import { guarded } from './store-problem.ts';

type BatchRow = Omit<Batch, 'holds' | 'moves'>;
type StoredLine = Omit<LogRow, 'about'> & { readonly about: string | null };

const columns = `SELECT id, code, chamber_id chamberId, profile_id profileId, profile_version profileVersion, scion, rootstock, method,
  trays, plants, opened_ms openedMs, closed_ms closedMs, finished_ms finishedMs, taken_plants takenPlants,
  entered_ms enteredMs FROM batches`;

const settable = {
  code: 'code',
  scion: 'scion',
  rootstock: 'rootstock',
  method: 'method',
  trays: 'trays',
  plants: 'plants',
  closedMs: 'closed_ms',
  finishedMs: 'finished_ms',
  takenPlants: 'taken_plants',
} as const;

export function openBatchStore(db: Database): Store['batches'] {
  const pageSql = `${columns} WHERE (@beforeMs IS NULL OR (opened_ms, id) < (@beforeMs, @beforeId)) ORDER BY opened_ms DESC, id DESC LIMIT @limit`;
  const page = db.prepare<[{ beforeMs: number | null; beforeId: string | null; limit: number }], BatchRow>(pageSql);
  const open = db.prepare<[], BatchRow>(`${columns} WHERE finished_ms IS NULL`);
  const inChamber = db.prepare<[{ chamberId: string; fromMs: number; toMs: number }], BatchRow>(
    `${columns} WHERE chamber_id = @chamberId AND coalesce(finished_ms, @fromMs) >= @fromMs AND opened_ms < @toMs ORDER BY opened_ms DESC`,
  );
  const one = db.prepare<[string], BatchRow>(`${columns} WHERE id = ?`);
  const holds = db.prepare<[string], Hold>(
    'SELECT from_ms fromMs, to_ms toMs FROM holds WHERE batch_id = ? ORDER BY from_ms',
  );
  const moves = db.prepare<[string], Move>('SELECT stage, at_ms atMs FROM moves WHERE batch_id = ? ORDER BY at_ms');
  const add =
    db.prepare(`INSERT INTO batches (id, code, chamber_id, profile_id, profile_version, scion, rootstock, method,
    trays, plants, opened_ms, closed_ms, finished_ms, taken_plants, entered_ms) VALUES (@id, @code, @chamberId, @profileId, @profileVersion, @scion, @rootstock, @method,
    @trays, @plants, @openedMs, @closedMs, @finishedMs, @takenPlants, @enteredMs)`);
  const startHold = db.prepare('INSERT INTO holds (batch_id, from_ms) VALUES (?, ?)');
  const endHold = db.prepare('UPDATE holds SET to_ms = ? WHERE batch_id = ? AND to_ms IS NULL');
  const move = db.prepare('INSERT OR REPLACE INTO moves (batch_id, stage, at_ms) VALUES (?, ?, ?)');
  const log = db.prepare<
    [string],
    StoredLine
  >(`SELECT id, batch_id batchId, at_ms atMs, kind, gap_percent gapPercent, minutes, about, note, person
    FROM log_entries WHERE batch_id = ? ORDER BY at_ms, id`);
  const addLog =
    db.prepare(`INSERT INTO log_entries (id, batch_id, at_ms, kind, gap_percent, minutes, about, note, person)
    VALUES (@id, @batchId, @atMs, @kind, @gapPercent, @minutes, @about, @note, @person)`);
  const answers = db.prepare<[string], CheckAnswer>(
    'SELECT batch_id batchId, check_id checkId, answer, at_ms atMs, person, note FROM check_answers WHERE batch_id = ?',
  );
  const answer = db.prepare(`INSERT OR REPLACE INTO check_answers (batch_id, check_id, answer, at_ms, person, note)
    VALUES (@batchId, @checkId, @answer, @atMs, @person, @note)`);
  const whole = (row: BatchRow): Batch => ({ ...row, holds: holds.all(row.id), moves: moves.all(row.id) });
  return {
    async page({ limit, cursor }) {
      const [ms, id] = cursor?.split('~') ?? [];
      const before = { beforeMs: ms === undefined ? null : Number(ms), beforeId: id ?? null };
      const rows = guarded(() => page.all({ ...before, limit: limit + 1 }).map(whole));
      const items = rows.slice(0, limit);
      const last = rows.length > limit ? items.at(-1) : undefined;
      return { items, nextCursor: last === undefined ? null : `${last.openedMs}~${last.id}` };
    },
    open: async () => guarded(() => open.all().map(whole)),
    inChamber: async (chamberId, fromMs, toMs) => guarded(() => inChamber.all({ chamberId, fromMs, toMs }).map(whole)),
    async get(id) {
      const row = guarded(() => one.get(id));
      return row === undefined ? null : whole(row);
    },
    async add(batch) {
      const { holds: _holds, moves: _moves, ...row } = batch;
      guarded(() => add.run({ enteredMs: null, ...row }));
    },
    async update(id, change) {
      const names = Object.keys(settable).filter((name) => name in change) as (keyof typeof settable)[];
      if (names.length === 0) return;
      const sets = names.map((name) => `${settable[name]} = @${name}`).join(', ');
      guarded(() => db.prepare(`UPDATE batches SET ${sets} WHERE id = @id`).run({ ...change, id }));
    },
    async startHold(id, atMs) {
      guarded(() => startHold.run(id, atMs));
    },
    async endHold(id, atMs) {
      guarded(() => endHold.run(atMs, id));
    },
    async moveTo(id, stage, atMs) {
      guarded(() => move.run(id, stage, atMs));
    },
    log: async (id) => guarded(() => log.all(id).map(lineOf)),
    async addLog(row) {
      guarded(() => addLog.run({ minutes: null, ...row, about: row.about ? JSON.stringify(row.about) : null }));
    },
    answers: async (id) => guarded(() => answers.all(id)),
    async answer(row) {
      guarded(() => answer.run(row));
    },
  };
}

function lineOf({ about, ...line }: StoredLine): LogRow {
  return { ...line, about: about === null ? null : (JSON.parse(about) as LogAbout) };
}
