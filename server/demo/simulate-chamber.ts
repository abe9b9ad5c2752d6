// A stretch of a simulated chamber's past as a series of readings, the same for the same options on every machine.
import { HOUR_MS } from '../../shared/units.ts';
import { type ChamberOptions, type ChamberReadings, createLiveChamber } from './live-chamber.ts';

/** Readings every `stepMs` from `startMs` up to and including `endMs`; made as they are asked for, so memory stays flat. */
export function* simulateChamber(options: ChamberOptions & { readonly endMs: number }): Generator<ChamberReadings> {
  const chamber = createLiveChamber(options);
  for (let timeMs = options.startMs; timeMs < options.endMs; timeMs += HOUR_MS) {
    yield* chamber.advanceTo(timeMs);
  }
  yield* chamber.advanceTo(options.endMs);
}
