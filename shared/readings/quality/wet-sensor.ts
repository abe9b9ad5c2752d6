// Wet sensor test: is the humidity that of the air, or of a drop on the probe?
//
// In a closed healing tent true air is at 97–100 %RH for days, and a probe reading 1–2 %RH high then stands at its top quite honestly. Calling
// that suspect would leave the dryness rule without a reading just when the scions depend on it. So a humidity at its top is called suspect
// only on evidence against it: it reads above 100, or it has not left its top for hours although the air got clearly warmer meanwhile.
// Warmer, not merely different: air that cools stays saturated, while air that warms needs more vapour at once to stay so. And the suspicion
// ends with the first reading below the top, so drying air is seen the moment it dries.
// "At its top for half an hour" is said as `saturatedOrWet` (unknown, high: no proof of the right climate), and is never a flag.
import { FLAG, type Flag } from '../reading.ts';
import type { WetSensorLimits } from './quality-limits.ts';

/** The stretch for which humidity has been at its top; null = it is not there. */
export interface PinnedStretch {
  readonly sinceMs: number;
  readonly lastMs: number;
  /** Lowest temperature in the stretch so far; null = none measured. */
  readonly coolest: number | null;
  /** Greatest rise above an earlier temperature of the stretch, °C. */
  readonly warming: number;
}

export interface WetSensorMemory {
  readonly pinned: PinnedStretch | null;
}

export const emptyWetSensorMemory: WetSensorMemory = { pinned: null };

export interface WetSensorTested {
  readonly memory: WetSensorMemory;
  /** Flag of the humidity. */
  readonly flag: Flag;
  readonly saturatedOrWet: boolean;
}

/** A half that is null was not measured then: a lone temperature still tells how far the air has warmed. */
export interface AirSample {
  readonly timeMs: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
}

/** Judges the humidity of one sample: above `impossibleAbove`, or pinned for `pinnedMs` while warming by `warming` → suspect. */
export function wetSensor(memory: WetSensorMemory, sample: AirSample, limits: WetSensorLimits): WetSensorTested {
  const pinned = followPinned(memory.pinned, sample, limits);
  const pinnedMs = pinned === null ? null : sample.timeMs - pinned.sinceMs;
  return {
    memory: { pinned },
    flag: judge(sample.humidity, pinned, pinnedMs ?? 0, limits),
    saturatedOrWet: pinnedMs !== null && pinnedMs >= limits.saturatedMs,
  };
}

function judge(humidity: number | null, pinned: PinnedStretch | null, pinnedMs: number, limits: WetSensorLimits): Flag {
  if (humidity === null) return FLAG.missing;
  if (humidity > limits.impossibleAbove) return FLAG.suspect;
  const isStuck = pinned !== null && pinnedMs >= limits.pinnedMs && pinned.warming >= limits.warming;
  return isStuck ? FLAG.suspect : FLAG.pass;
}

function followPinned(old: PinnedStretch | null, sample: AirSample, limits: WetSensorLimits): PinnedStretch | null {
  const { timeMs, temperature, humidity } = sample;
  const going = old !== null && timeMs - old.lastMs <= limits.longestGapMs ? old : null;
  if (humidity === null) return going === null ? null : warmBy(going, temperature);
  if (humidity < limits.pinnedAt) return null;
  const stretch = going ?? { sinceMs: timeMs, lastMs: timeMs, coolest: null, warming: 0 };
  return warmBy({ ...stretch, lastMs: timeMs }, temperature);
}

function warmBy(stretch: PinnedStretch, temperature: number | null): PinnedStretch {
  if (temperature === null) return stretch;
  const coolest = Math.min(stretch.coolest ?? temperature, temperature);
  return { ...stretch, coolest, warming: Math.max(stretch.warming, temperature - coolest) };
}
