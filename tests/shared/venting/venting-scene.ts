// A venting as the tests play it: a chamber whose rates, source and sensors are known, opened in steps that are written down.
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import type { ExchangeRecord, VentLogEntry } from '../../../shared/venting/cut-windows.ts';
import { type ExchangeResult, fitExchange } from '../../../shared/venting/fit-exchange.ts';
import { createNoiseStream } from '../../support/noise-stream.ts';
import { ratioOf, type SimulatedChamber, type SimulatedClimate, simulate } from './simulated-chamber.ts';

/** Air exchange alone, 1/h: a leak, and a gap whose flow grows with its height to the power 1.5. */
export function airRateAt(gapPercent: number): number {
  return 0.6 + 45 * (gapPercent / 100) ** 1.5;
}

/** What wet leaves and trays give off, 1/h: it takes part in every rate. */
export const SURFACES = 2;
export const TEMPERATURE = 22;
export const SILENCE_MS = 15 * MINUTE_MS;

/** House air that stands still, °C and %RH. */
export const STILL_HOUSE = { temperature: 20, humidity: 50 };

/** The gap from an hour on. */
export interface GapStep {
  readonly hours: number;
  readonly gapPercent: number;
}

export const openedInSteps: readonly GapStep[] = [
  { hours: 1, gapPercent: 10 },
  { hours: 4, gapPercent: 25 },
  { hours: 7, gapPercent: 40 },
];

export interface Venting {
  readonly steps?: readonly GapStep[];
  readonly hours?: number;
  /** `lacking`: surfaces give off by what the air lacks. `constant`: 8 g/kg an hour whatever the air. */
  readonly source?: 'lacking' | 'constant';
  /** House air that drifts as a day does, or stands still. */
  readonly house?: 'drifting' | 'still';
  readonly lagSeconds?: number;
  readonly readingEverySeconds?: number;
  readonly noise?: number;
  readonly draws?: number;
  /** Air exchange at a gap, and what surfaces give off, each as it is at an hour. */
  readonly rateAt?: (gapPercent: number, hours: number) => number;
  readonly surfacesAt?: (hours: number) => number;
}

export interface PlayedVenting extends SimulatedClimate {
  readonly record: ExchangeRecord;
}

export function playVenting(venting: Venting = {}): PlayedVenting {
  const { steps = openedInSteps, hours = 10, draws = 1, source = 'lacking' } = venting;
  const rateAt = venting.rateAt ?? airRateAt;
  const gapAt = (at: number) => steps.findLast((step) => step.hours <= at)?.gapPercent ?? 0;
  const surfacesAt = venting.surfacesAt ?? (() => SURFACES);
  const noise = venting.noise ?? 1;
  const plan: SimulatedChamber = {
    startMs: 0,
    hours,
    startRatio: ratioOf(TEMPERATURE, 96),
    rateAt: (at) => rateAt(gapAt(at), at),
    source: (at, ratio) => (source === 'lacking' ? surfacesAt(at) * (ratioOf(TEMPERATURE, 100) - ratio) : 0.008),
    temperature: () => TEMPERATURE,
    house: (at) =>
      venting.house === 'still'
        ? STILL_HOUSE
        : { temperature: 20 + Math.sin(at / 4), humidity: 62 + 4 * Math.cos(at / 3) },
    readingEverySeconds: venting.readingEverySeconds ?? 60,
    lagSeconds: venting.lagSeconds ?? 30,
    noise: { humidity: 0.16 * noise, temperature: 0.02 * noise, stream: createNoiseStream(draws) },
  };
  const climate = simulate(plan);
  const log = steps.map(
    (step): VentLogEntry => ({ atMs: step.hours * HOUR_MS, kind: 'gap', gapPercent: step.gapPercent }),
  );
  const record = { log, ...climate, altitudeM: 0, silenceMs: SILENCE_MS, untilMs: hours * HOUR_MS };
  return { ...climate, record };
}

/** The fit, which the test expects to be there. */
export function expectFit(result: ExchangeResult) {
  if (result.fit === null) throw new Error(`no fit: ${result.why}`);
  return result.fit;
}

export function fitVenting(venting: Venting = {}) {
  return expectFit(fitExchange(playVenting(venting).record));
}
