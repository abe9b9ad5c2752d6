// What the readings say of a gap in which nobody watched, chamber by chamber: exact for what nodes measured and sent afterwards, and honest about
// what nobody measured.
import type { Alarm } from '../../shared/alarms/alarm.ts';
import { standingLevel } from '../../shared/alarms/debounce.ts';
import type { Outage } from '../../shared/alarms/service/follow-outage.ts';
import type { OutageClimate, OutageFacts } from '../../shared/alarms/service-facts.ts';
import { createExposure } from '../../shared/exposure/exposure.ts';
import { calibrate } from '../../shared/readings/calibration.ts';
import { FLAG, type Flag } from '../../shared/readings/reading.ts';
import { HOUR_MS, MINUTE_MS } from '../../shared/units.ts';
import type { Store } from '../store/store.ts';
import type { ProbeState } from './probe-book.ts';
import type { Watch } from './watch.ts';
import type { WatchedChamber } from './watched-chamber.ts';

/** Limits are taken to be one and the same for so long; a longer gap is cut into so many parts at most. */
const PART_MS = MINUTE_MS;
const MOST_PARTS = 500;

export async function gatherOutage(outage: Outage, watch: Watch, readings: Store['readings']): Promise<OutageFacts> {
  const chambers: OutageClimate[] = [];
  for (const chamber of watch.chambers())
    if (chamber.healing !== null) chambers.push(await gatherChamber(chamber, outage, watch, readings));
  return { ...outage, chambers, inForce: inForce(watch) };
}

async function gatherChamber(
  chamber: WatchedChamber,
  outage: Outage,
  watch: Watch,
  readings: Store['readings'],
): Promise<OutageClimate> {
  const limits = limitsIn(chamber, outage, watch);
  const probes = canopyOf(chamber, watch);
  const measured = await Promise.all(probes.map((probe) => measureProbe(probe, limits, readings)));
  const wholeMinutes = (outage.toMs - outage.fromMs) / MINUTE_MS;
  return {
    chamberId: chamber.chamber.id,
    chamberName: chamber.chamber.name,
    batchCode: chamber.healing?.batch.code ?? '',
    minutesHot: Math.max(0, ...measured.map((one) => one.minutesHot)),
    high: theOne(limits.map(({ high }) => high)),
    minutesDry: Math.max(0, ...measured.map((one) => one.minutesDry)),
    low: theOne(limits.map(({ low }) => low)),
    minutesUnknown: Math.min(wholeMinutes, ...measured.map((one) => one.minutesUnknown)),
  };
}

interface PartLimits {
  readonly fromMs: number;
  readonly toMs: number;
  readonly high: number | null;
  readonly low: number | null;
}

/** The limits of the gap, in stretches within which they do not change. */
function limitsIn(chamber: WatchedChamber, { fromMs, toMs }: Outage, watch: Watch): PartLimits[] {
  const plan = watch.plan(chamber, toMs);
  const partMs = Math.max(PART_MS, (toMs - fromMs) / MOST_PARTS);
  const parts: PartLimits[] = [];
  for (let atMs = fromMs; atMs < toMs; atMs += partMs) {
    const corridor = plan?.corridorAt(atMs) ?? null;
    const part = {
      fromMs: atMs,
      toMs: Math.min(toMs, atMs + partMs),
      high: corridor?.temperature.high ?? null,
      low: corridor?.humidity.low ?? null,
    };
    const last = parts.at(-1);
    if (last?.high === part.high && last.low === part.low) parts[parts.length - 1] = { ...last, toMs: part.toMs };
    else parts.push(part);
  }
  return parts;
}

function canopyOf({ chamber }: WatchedChamber, watch: Watch): ProbeState[] {
  return [...watch.probes.all()].filter(
    ({ probe }) =>
      probe.placement?.chamberId === chamber.id && probe.placement.place === 'canopy' && !probe.outOfService,
  );
}

async function measureProbe({ probe, calibrations }: ProbeState, limits: PartLimits[], readings: Store['readings']) {
  const { silenceMs } = probe;
  const parts = limits.map(({ fromMs, toMs, high, low }) => ({
    temperature: createExposure({ fromMs, toMs, silenceMs, above: high === null ? [] : [high] }),
    humidity: createExposure({ fromMs, toMs, silenceMs, above: [], below: low === null ? [] : [low] }),
  }));
  const [fromMs, toMs] = [limits[0]?.fromMs ?? 0, limits.at(-1)?.toMs ?? 0];
  // The lines into and out of the gap begin and end at readings outside it.
  for await (const raw of readings.range(probe.number, fromMs - silenceMs, toMs + silenceMs)) {
    const { timeMs, temperature, humidity, temperatureFlag, humidityFlag } = calibrate(raw, calibrations);
    for (const part of parts) {
      if (temperature !== null && isGood(temperatureFlag)) part.temperature.add(timeMs, temperature);
      if (humidity !== null && isGood(humidityFlag)) part.humidity.add(timeMs, humidity);
    }
  }
  const results = parts.map((part) => ({ heat: part.temperature.result(), air: part.humidity.result() }));
  return {
    minutesHot: sum(results.flatMap(({ heat }) => Object.values(heat.minutesAbove))),
    minutesDry: sum(results.flatMap(({ air }) => Object.values(air.minutesBelow))),
    minutesUnknown: sum(results.map(({ heat }) => (heat.unknownHours * HOUR_MS) / MINUTE_MS)),
  };
}

const order = { critical: 0, high: 1, medium: 2, low: 3 } as const;

/** Alarms of chambers whose condition stands and that nobody has put aside. */
function inForce(watch: Watch): OutageFacts['inForce'] {
  const asking: ReadonlySet<Alarm['state']> = new Set(['unacknowledged', 'acknowledged']);
  return watch
    .chambers()
    .flatMap(({ chamber, watch: { entries } }) =>
      Object.values(entries).flatMap(({ alarm, memory }) =>
        alarm !== null && asking.has(alarm.state) && standingLevel(memory) > 0 && alarm.priority !== 'low'
          ? [{ chamberName: chamber.name, rule: alarm.rule, priority: alarm.priority }]
          : [],
      ),
    )
    .sort((a, b) => order[a.priority] - order[b.priority])
    .map(({ chamberName, rule }) => ({ chamberName, rule }));
}

function theOne(values: readonly (number | null)[]): number | null {
  const [first = null] = values;
  return values.every((value) => value === first) ? first : null;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function isGood(flag: Flag): boolean {
  return flag === FLAG.pass || flag === FLAG.notEvaluated;
}
