// The probes of a replayed chamber as they stand at an instant: their newest readings and the climate these make.
import type { SceneProbe } from '../alarms/rules/rule.ts';
import { type ChamberClimate, chamberClimate, type ProbeNow } from '../readings/chamber-climate.ts';
import type { JudgedSample } from './judged-probe.ts';
import { OneProbeClimate } from './one-probe-climate.ts';

export interface ReplayProbe {
  readonly probeId: string;
  readonly place: 'canopy' | 'film';
  /** How long it may be silent, ms. */
  readonly silenceMs: number;
  /** From when to when it stood in the chamber, both included. */
  readonly fromMs: number;
  readonly toMs: number;
}

export class ReplayedProbes {
  readonly #probes: readonly ReplayProbe[];
  readonly #newest: (JudgedSample | null)[];
  #climate: { readonly climate: ChamberClimate; readonly atMs: number } | null = null;

  constructor(probes: readonly ReplayProbe[]) {
    this.#probes = probes;
    this.#newest = probes.map(() => null);
  }

  /** Takes the newest reading of a probe. */
  hear(probe: number, sample: JudgedSample): void {
    this.#newest[probe] = sample;
    this.#climate = null;
  }

  /** Ask in order of time. The same object while nothing can have changed. */
  climate(nowMs: number): ChamberClimate {
    if (this.#climate === null || this.#hasChanged(this.#climate.atMs, nowMs)) {
      this.#climate = { climate: climateOf(this.present(nowMs), nowMs), atMs: nowMs };
    }
    return this.#climate.climate;
  }

  scene(nowMs: number): SceneProbe[] {
    const present: SceneProbe[] = [];
    for (const [i, { probeId, place, silenceMs, fromMs, toMs }] of this.#probes.entries()) {
      if (nowMs < fromMs || nowMs > toMs) continue;
      present.push({ probeId, place, silenceMs, lastHeardMs: this.#newest[i]?.timeMs ?? null, watchedSinceMs: fromMs });
    }
    return present;
  }

  /** The newest reading of each probe that stands in the chamber. */
  present(nowMs: number): ProbeNow[] {
    const present: ProbeNow[] = [];
    for (const [i, { probeId, place, silenceMs, fromMs, toMs }] of this.#probes.entries()) {
      const newest = this.#newest[i] ?? null;
      if (newest === null || nowMs < fromMs || nowMs > toMs) continue;
      const { timeMs, temperature, humidity, temperatureFlag, humidityFlag } = newest;
      present.push({ probeId, place, silenceMs, timeMs, temperature, humidity, temperatureFlag, humidityFlag });
    }
    return present;
  }

  /** True when between two instants a probe came, went or fell silent. */
  #hasChanged(beforeMs: number, nowMs: number): boolean {
    const isBetween = (border: number) => beforeMs <= border && border < nowMs;
    return this.#probes.some(({ silenceMs, fromMs, toMs }, i) => {
      const lastMs = this.#newest[i]?.timeMs ?? fromMs;
      return isBetween(fromMs - 1) || isBetween(toMs) || isBetween(lastMs + silenceMs);
    });
  }
}

function climateOf(present: readonly ProbeNow[], nowMs: number): ChamberClimate {
  const [only, ...others] = present;
  const isOne = only !== undefined && others.length === 0 && only.place === 'canopy';
  return isOne && nowMs - only.timeMs <= only.silenceMs ? new OneProbeClimate(only) : chamberClimate(present, nowMs, 0);
}
