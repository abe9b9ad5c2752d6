// The quality tests of one probe over a series: flags as the live watch would have seen them, and the final ones one reading later, when the
// spike test has had its say.
import type { ClimateSample } from '../exposure/day-figures.ts';
import { emptyProbeQualityMemory, judgeReading } from '../readings/quality/judge-reading.ts';
import { defaultQualityLimits } from '../readings/quality/quality-limits.ts';
import { FLAG, type Flag } from '../readings/reading.ts';
import type { QualityTally } from './replay-result.ts';

export interface JudgedSample extends ClimateSample {
  readonly temperatureFlag: Flag;
  readonly humidityFlag: Flag;
}

export class JudgedProbe {
  #memory = emptyProbeQualityMemory;
  #last: JudgedSample | null = null;
  readonly #tally = { pass: 0, suspect: 0, fail: 0, missing: 0 };

  /** Judges the next sample in time order. `settled` is the one before, judged for good. */
  judge({ timeMs, temperature, humidity }: ClimateSample): { now: JudgedSample; settled: JudgedSample | null } {
    const judged = judgeReading(this.#memory, { timeMs, temperature, humidity }, defaultQualityLimits);
    const { temperatureFlag, humidityFlag, revised } = judged;
    this.#memory = judged.memory;
    const last = this.#last;
    const settled =
      last !== null && revised !== null && revised.timeMs === last.timeMs ? { ...last, ...revised } : last;
    this.#last = { timeMs, temperature, humidity, temperatureFlag, humidityFlag };
    if (settled !== null) this.#count(settled);
    return { now: this.#last, settled };
  }

  /** No sample follows: the last one as it stands. */
  end(): JudgedSample | null {
    const last = this.#last;
    this.#last = null;
    if (last !== null) this.#count(last);
    return last;
  }

  /** A row in which nothing could be read. */
  miss(): void {
    this.#tally.missing += 1;
  }

  tally(): QualityTally {
    return { ...this.#tally };
  }

  #count({ temperatureFlag, humidityFlag }: JudgedSample): void {
    const worst = order.find(({ flag }) => temperatureFlag === flag || humidityFlag === flag);
    this.#tally[worst?.name ?? 'pass'] += 1;
  }
}

const order = [
  { flag: FLAG.fail, name: 'fail' },
  { flag: FLAG.suspect, name: 'suspect' },
  { flag: FLAG.missing, name: 'missing' },
] as const;

/** What of a sample is to be trusted, as the exposure takes it. */
export function trustedPart({
  timeMs,
  temperature,
  humidity,
  temperatureFlag,
  humidityFlag,
}: JudgedSample): ClimateSample {
  return {
    timeMs,
    temperature: isTrusted(temperatureFlag) ? temperature : null,
    humidity: isTrusted(humidityFlag) ? humidity : null,
  };
}

function isTrusted(flag: Flag): boolean {
  return flag === FLAG.pass || flag === FLAG.notEvaluated;
}
