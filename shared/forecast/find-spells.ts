// Finds when a quantity was beyond its limit, one reading at a time; memory is constant but for the spells found.
import { areJoined } from '../exposure/segments.ts';
import { QUIET_MS, type Spell } from './judge-warnings.ts';

export class SpellFinder {
  readonly #silenceMs: number;
  readonly #found: Spell[] = [];
  #lastMs: number | null = null;
  /** Since when it has been seen to be inside; null = it is not, or nobody knows. */
  #quietSinceMs: number | null = null;
  /** Everything since the last spell has been seen. */
  #isUnbroken = false;
  #knownMs = 0;

  /** `silenceMs`: the longest gap between two readings over which is believed what both say. */
  constructor(silenceMs: number) {
    this.#silenceMs = silenceMs;
  }

  /** Takes the next reading in time order. `isBeyond` null = no limit holds: what was before it is not known. */
  add(timeMs: number, isBeyond: boolean | null): void {
    const joined = this.#lastMs !== null && areJoined(this.#lastMs, timeMs, this.#silenceMs);
    if (joined && isBeyond !== null) this.#knownMs += timeMs - (this.#lastMs ?? timeMs);
    if (!joined || isBeyond === null) {
      this.#quietSinceMs = null;
      this.#isUnbroken = false;
    }
    this.#lastMs = isBeyond === null ? null : timeMs;
    if (isBeyond === true) this.#beyond(timeMs);
    else if (isBeyond === false) this.#quietSinceMs ??= timeMs;
  }

  get spells(): readonly Spell[] {
    return this.#found;
  }

  /** Time for which readings say what was, ms. */
  get knownMs(): number {
    return this.#knownMs;
  }

  #beyond(timeMs: number): void {
    const last = this.#found.at(-1);
    const isCrossing = this.#quietSinceMs !== null && timeMs - this.#quietSinceMs >= QUIET_MS;
    this.#quietSinceMs = null;
    const goesOn = last !== undefined && this.#isUnbroken && !isCrossing;
    this.#isUnbroken = true;
    if (goesOn) {
      this.#found[this.#found.length - 1] = { ...last, toMs: timeMs };
    } else {
      this.#found.push({ fromMs: timeMs, toMs: timeMs, isCrossing });
    }
  }
}
