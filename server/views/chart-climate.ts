// The whole answer for a chart of a chamber: measured columns, house air, corridor and marks on one grid.
import type { ClimateSeries } from '../../shared/api/chambers.ts';
import { Problem } from '../../shared/problem.ts';
import { DEFAULT_SILENCE_MS } from '../../shared/readings/silence.ts';
import { HOUR_MS, SECOND_MS } from '../../shared/units.ts';
import type { Clock } from '../clock.ts';
import type { Site } from '../site.ts';
import type { Store } from '../store/store.ts';
import type { Watch } from '../watch/watch.ts';
import { type HealingNow, loadHealing, planBatch, type WatchedChamber } from '../watch/watched-chamber.ts';
import { chartEvents } from './chart-events.ts';
import { chartForecast } from './chart-forecast.ts';
import { defaultStretch, type Grid, gridHead, makeGrid, measureSeries } from './climate-series.ts';
import { rounded } from './rounded.ts';

interface ChartParts {
  readonly store: Store;
  readonly watch: Watch;
  readonly site: Site;
  readonly clock: Clock;
}

interface ChartQuery {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly points: number;
}

const LONGEST_MS = 400 * 24 * HOUR_MS;

export async function chartClimate(
  chamber: WatchedChamber,
  query: ChartQuery,
  parts: ChartParts,
): Promise<ClimateSeries> {
  const { store, watch, site, clock } = parts;
  const nowMs = clock.nowMs();
  const open = chamber.healing;
  const endsMs = open === null ? null : (watch.plan(chamber, nowMs)?.spans.at(-1)?.endMs ?? null);
  const stretch = defaultStretch(open === null ? null : { openedMs: open.batch.openedMs, endsMs }, nowMs);
  const fromMs = query.from === undefined ? stretch.fromMs : Date.parse(query.from);
  const toMs = query.to === undefined ? stretch.toMs : Date.parse(query.to);
  if (toMs <= fromMs) throw new Problem('bad-input', ({ problems }) => problems.chartEndsBeforeStart);
  if (toMs - fromMs > LONGEST_MS) throw new Problem('bad-input', ({ problems }) => problems.chartTooLong);
  const grid = makeGrid({ fromMs, toMs, points: query.points });
  const measured = await measureSeries(store, chamber.chamber.id, grid);
  const house = await measureSeries(store, null, grid);
  const healing = await healingIn(chamber, { fromMs, toMs }, parts);
  const plan =
    healing === null ? null : planBatch(healing, site.current().zone, watch.house(), healing.batch.finishedMs ?? nowMs);
  return {
    ...gridHead(grid, nowMs),
    ...measured,
    silenceSeconds: silenceMs(chamber.chamber.id, watch) / SECOND_MS,
    houseTemperature: house.temperature.mean,
    houseHumidity: house.humidity.mean,
    corridor: corridorColumns(grid, plan?.corridorAt ?? (() => null)),
    events: healing === null || plan === null ? [] : await chartEvents(store, healing, plan, nowMs),
    forecast: chartForecast(chamber.trends.heat.trend, nowMs, { fromMs, toMs }),
  };
}

/** The longest silence that is allowed to a probe that stands in the chamber; the usual one where none does. */
function silenceMs(chamberId: string, { probes }: Watch): number {
  const own = probes.inChamber(chamberId);
  return own.length === 0 ? DEFAULT_SILENCE_MS : Math.max(...own.map(({ probe }) => probe.silenceMs));
}

/** The open batch if it lies in the stretch, else the newest that did. */
async function healingIn(
  chamber: WatchedChamber,
  { fromMs, toMs }: { fromMs: number; toMs: number },
  { store }: ChartParts,
): Promise<HealingNow | null> {
  if (chamber.healing !== null && chamber.healing.batch.openedMs < toMs) return chamber.healing;
  const [batch] = await store.batches.inChamber(chamber.chamber.id, fromMs, toMs);
  return batch === undefined ? null : loadHealing(store, batch);
}

function corridorColumns(
  grid: Grid,
  corridorAt: ReturnType<typeof planBatch>['corridorAt'],
): ClimateSeries['corridor'] {
  const corridors = Array.from({ length: grid.count }, (_, index) =>
    corridorAt(grid.fromMs + (index + 0.5) * grid.bucketMs),
  );
  return {
    temperature: {
      low: corridors.map((one) => one?.temperature.low ?? null).map((value) => rounded(value, 2)),
      high: corridors.map((one) => one?.temperature.high ?? null).map((value) => rounded(value, 2)),
      highHigh: corridors.map((one) => one?.temperature.highHigh ?? null).map((value) => rounded(value, 2)),
    },
    humidity: {
      low: corridors.map((one) => one?.humidity.low ?? null).map((value) => rounded(value, 2)),
      high: corridors.map((one) => one?.humidity.high ?? null).map((value) => rounded(value, 2)),
    },
  };
}
