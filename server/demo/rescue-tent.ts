// The crew comes to the tent that overheats: when somebody logs that its gap was opened, or by itself when nobody does.
import { MINUTE_MS } from '../../shared/units.ts';
import type { App } from '../app.ts';
import { RESCUE_GAP_PERCENT, RESCUE_MS } from './crew.ts';
import type { RunningTents } from './start-tents.ts';
import type { StoredNursery, StoredTent } from './store-nursery.ts';

/** So long the tent waits for whoever looks at the demo. */
const LONGEST_WAIT_MS = 6 * MINUTE_MS;

export interface Rescue {
  /** Looks whether it is time for the next step, and takes it. */
  look(nowMs: number): Promise<void>;
}

/** `startMs`: when the present began; gaps logged before it are past. */
export function createRescue(app: App, stored: StoredNursery, tents: RunningTents, startMs: number): Rescue {
  const hot = stored.tents.find(({ tent }) => tent.scenario.kind === 'overheat');
  const person = stored.nursery.people.find(({ role }) => role === 'crew')?.name ?? '';
  const note = (gapPercent: number, text: string) =>
    hot === undefined ? undefined : app.parts.batchActs.log(hot.batchId, 'gap', { gapPercent, note: text }, person);
  let rescuedMs: number | null = null;
  let isClosed = false;
  return {
    async look(nowMs) {
      if (hot === undefined || isClosed || (await isFinished(app, hot))) return;
      if (rescuedMs !== null) {
        if (nowMs < rescuedMs + RESCUE_MS) return;
        isClosed = true;
        await note(0, 'Cool again: shaded as usual and closed.');
        return;
      }
      const isOpened = await isGapOpened(app, hot, startMs);
      if (!isOpened && nowMs < startMs + LONGEST_WAIT_MS) return;
      rescuedMs = nowMs;
      tents.shadeAndOpen(nowMs);
      if (!isOpened) await note(RESCUE_GAP_PERCENT, 'Too hot: shaded and opened.');
    },
  };
}

async function isGapOpened(app: App, { batchId }: StoredTent, startMs: number): Promise<boolean> {
  const log = await app.store.batches.log(batchId);
  return log.some(({ kind, gapPercent, atMs }) => kind === 'gap' && (gapPercent ?? 0) > 0 && atMs >= startMs);
}

/** A finished batch has left the tent, and its log stands. */
async function isFinished(app: App, { batchId }: StoredTent): Promise<boolean> {
  return (await app.store.batches.get(batchId))?.finishedMs !== null;
}
