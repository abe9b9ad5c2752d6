// A chamber that exchanges air, integrated by Runge and Kutta's fourth-order rule in steps of its own. It shares no line with the code it tests:
// humidity comes from PsychroLib, the course from the differential equation itself.
import psychrolib from 'psychrolib';
import type { ClimateSample } from '../../../shared/exposure/day-figures.ts';
import { HOUR_MS } from '../../../shared/units.ts';
import type { NoiseStream } from '../../support/noise-stream.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const PASCAL = 101_325;
const STEP_MS = 5_000;

/** Hours count from the start of the simulation. Rates in 1/h, source in kg/kg/h as a function of hours and the humidity ratio inside. */
export interface SimulatedChamber {
  readonly startMs: number;
  readonly hours: number;
  readonly startRatio: number;
  readonly rateAt: (hours: number) => number;
  readonly source: (hours: number, ratio: number) => number;
  readonly temperature: (hours: number) => number;
  readonly house: (hours: number) => { readonly temperature: number; readonly humidity: number };
  readonly readingEverySeconds: number;
  /** Time constant of the sensor, s; 0 = none. */
  readonly lagSeconds: number;
  /** Standard deviation of a humidity reading, %RH, and of a temperature reading, °C. */
  readonly noise: { readonly humidity: number; readonly temperature: number; readonly stream: NoiseStream };
}

export interface SimulatedClimate {
  readonly chamber: readonly ClimateSample[];
  readonly house: readonly ClimateSample[];
  /** The true %RH at each reading of the chamber, without lag or noise. */
  readonly trueHumidity: readonly number[];
}

export function simulate(plan: SimulatedChamber): SimulatedClimate {
  const chamber: ClimateSample[] = [];
  const house: ClimateSample[] = [];
  const trueHumidity: number[] = [];
  const total = Math.round((plan.hours * HOUR_MS) / STEP_MS);
  const every = Math.round((plan.readingEverySeconds * 1000) / STEP_MS);
  let ratio = plan.startRatio;
  let felt = humidityOf(ratio, plan.temperature(0));
  for (let step = 0; step <= total; step++) {
    const hours = (step * STEP_MS) / HOUR_MS;
    const timeMs = plan.startMs + step * STEP_MS;
    const humidity = humidityOf(ratio, plan.temperature(hours));
    if (plan.lagSeconds === 0) felt = humidity;
    else felt += (humidity - felt) * (1 - Math.exp(-STEP_MS / 1000 / plan.lagSeconds));
    if (step % every === 0) {
      const { stream } = plan.noise;
      const temperature = plan.temperature(hours) + plan.noise.temperature * stream.normal();
      chamber.push({ timeMs, temperature, humidity: Math.min(100, felt + plan.noise.humidity * stream.normal()) });
      house.push({ timeMs, ...plan.house(hours) });
      trueHumidity.push(humidity);
    }
    ratio = rungeKutta(plan, hours, ratio);
  }
  return { chamber, house, trueHumidity };
}

function rungeKutta(plan: SimulatedChamber, hours: number, ratio: number): number {
  const h = STEP_MS / HOUR_MS;
  const slope = (t: number, w: number) => -plan.rateAt(t) * (w - houseRatio(plan, t)) + plan.source(t, w);
  const a = slope(hours, ratio);
  const b = slope(hours + h / 2, ratio + (h / 2) * a);
  const c = slope(hours + h / 2, ratio + (h / 2) * b);
  const d = slope(hours + h, ratio + h * c);
  return ratio + (h / 6) * (a + 2 * b + 2 * c + d);
}

function houseRatio(plan: SimulatedChamber, hours: number): number {
  const { temperature, humidity } = plan.house(hours);
  return ratioOf(temperature, humidity);
}

/** kg/kg at sea level. */
export function ratioOf(temperature: number, humidity: number): number {
  return psychrolib.GetHumRatioFromRelHum(temperature, humidity / 100, PASCAL);
}

/** %RH: vapour pressure from w = 0.621945 e/(p − e), over that of saturation. */
export function humidityOf(ratio: number, temperature: number): number {
  return (100 * ((ratio * PASCAL) / (0.621945 + ratio))) / psychrolib.GetSatVapPres(temperature);
}
