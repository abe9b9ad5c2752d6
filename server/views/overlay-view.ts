// Batches laid over each other by healing time, as they are sent to a chart: hour 0 is the closing of each.
import type { OverlayView } from '../../shared/api/learning.ts';
import { type Batch, timesOf } from '../../shared/healing/batch.ts';
import type { Corridor } from '../../shared/healing/corridor.ts';
import { type OverlaidBatch, overlayBatches } from '../../shared/learning/overlay.ts';
import { Problem } from '../../shared/problem.ts';
import { DAY_MS, HOUR_MS, utcText } from '../../shared/units.ts';
import type { Clock } from '../clock.ts';
import { type ClimateOfBatch, readClimate } from '../record/read-climate.ts';
import { recordCorridor } from '../record/record-corridor.ts';
import { findSources, type ProbeSource, type RecordWindow } from '../record/record-sources.ts';
import type { Site } from '../site.ts';
import type { Store } from '../store/store.ts';
import { rounded } from './rounded.ts';

interface OverlayParts {
  readonly store: Store;
  readonly site: Site;
  readonly clock: Clock;
}

/** No healing is longer; a batch that nobody has finished is not drawn out for months. */
const LONGEST_MS = 40 * DAY_MS;

interface Laid {
  readonly batch: Batch;
  readonly closedMs: number;
  readonly window: RecordWindow;
  readonly sources: readonly ProbeSource[];
  readonly climate: ClimateOfBatch;
}

/** Problems: `not-found`, `conflict` for a batch whose chamber was never closed. */
export async function viewOverlay(ids: readonly string[], points: number, parts: OverlayParts): Promise<OverlayView> {
  const laid: Laid[] = [];
  for (const id of ids) laid.push(await layOut(id, parts));
  const toHours = Math.max(...laid.map(({ closedMs, window }) => (window.toMs - closedMs) / HOUR_MS));
  if (toHours <= 0) throw new Problem('conflict', ({ problems }) => problems.nothingToOverlay);
  const grid = { fromHours: 0, toHours, stepHours: toHours / points };
  const of = (quantity: 'temperature' | 'humidity') => overlayBatches(laid.map(seriesOf(quantity)), grid);
  const [temperature, humidity] = [of('temperature'), of('humidity')];
  const hours = humidity.hours.map((hour) => rounded(hour, 4) ?? 0);
  return {
    stepHours: grid.stepHours,
    hours,
    batches: laid.map(({ batch: { id, code }, closedMs }, i) => ({
      ...{ id, code },
      closedAt: utcText(closedMs),
      temperature: hundredths(temperature.batches[i]?.values),
      humidity: hundredths(humidity.batches[i]?.values),
    })),
    corridor: await corridorOf(laid[0], hours, parts),
  };
}

async function layOut(id: string, { store, clock }: OverlayParts): Promise<Laid> {
  const batch = await store.batches.get(id);
  if (batch === null) throw new Problem('not-found', ({ problems }) => problems.noBatchOf(id));
  const { closedMs } = batch;
  if (closedMs === null) throw new Problem('conflict', ({ problems }) => problems.batchNotClosed(batch.code));
  const endMs = Math.min(batch.finishedMs ?? clock.nowMs(), closedMs + LONGEST_MS);
  const window = { fromMs: closedMs, toMs: Math.max(closedMs, endMs) };
  const sources = await findSources(store, batch, window);
  return { batch, closedMs, window, sources, climate: await readClimate(store, sources) };
}

function seriesOf(quantity: 'temperature' | 'humidity'): (laid: Laid) => OverlaidBatch {
  return ({ batch, closedMs, climate: { samples, silenceMs } }) => {
    const values = samples.flatMap((sample) => {
      const value = sample[quantity];
      return value === null ? [] : { timeMs: sample.timeMs, value };
    });
    return { id: batch.id, closedMs, silenceMs, values };
  };
}

async function corridorOf(
  laid: Laid | undefined,
  hours: readonly number[],
  { store, site }: OverlayParts,
): Promise<OverlayView['corridor']> {
  const corridors = laid === undefined ? [] : await corridorsAt(laid, hours, store, site.current().zone);
  const column = (quantity: keyof Corridor, side: 'low' | 'high') =>
    corridors.map((one) => rounded(one?.[quantity][side] ?? null, 2));
  return {
    temperature: { low: column('temperature', 'low'), high: column('temperature', 'high') },
    humidity: { low: column('humidity', 'low'), high: column('humidity', 'high') },
  };
}

async function corridorsAt(
  { batch, closedMs, window, sources }: Laid,
  hours: readonly number[],
  store: Store,
  zone: string,
): Promise<(Corridor | null)[]> {
  const profile = await store.profiles.get(batch.profileId, batch.profileVersion);
  if (profile === null) return hours.map(() => null);
  const times = timesOf(batch, zone);
  const corridorAt = await recordCorridor(store, { document: profile.document, times, sources, window });
  return hours.map((hour) => corridorAt(closedMs + hour * HOUR_MS));
}

function hundredths(values: readonly (number | null)[] = []): (number | null)[] {
  return values.map((value) => rounded(value, 2));
}
