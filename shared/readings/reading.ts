// A reading: one probe at one instant, and the quality flags of the QARTOD manuals.
import type { Battery } from './battery.ts';
import type { Reason } from './reason.ts';

/** QARTOD flags: 1 pass, 2 not evaluated, 3 suspect, 4 fail, 9 missing (IOOS QARTOD manuals). */
export const FLAG = { pass: 1, notEvaluated: 2, suspect: 3, fail: 4, missing: 9 } as const;
export type Flag = (typeof FLAG)[keyof typeof FLAG];

/** A measurement as a node sent it, before it is known which stored probe it belongs to. `time` is ms since the epoch. */
export interface IncomingReading {
  readonly node: string;
  /** The probe's address on its node; `''` when the node has a single unnamed probe. */
  readonly probe: string;
  readonly timeMs: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
}

/** Why a payload or a part of it was not admitted, and the place of the fault (JSON Pointer; `''` = the whole). */
export interface Refusal {
  readonly reason: Reason;
  readonly where: string;
}

/** What admission makes of one message. A message may be admitted in part. */
export interface Admission {
  readonly admitted: readonly IncomingReading[];
  readonly refused: readonly Refusal[];
  /** What is left in the node's battery; absent where the message does not tell. */
  readonly battery?: Battery;
}

/** A stored reading, judged. Values are °C and %RH; `null` = that half has not been sent. */
export interface Reading {
  readonly timeMs: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
  readonly temperatureFlag: Flag;
  readonly humidityFlag: Flag;
  /** When the server got it, ms since the epoch. */
  readonly receivedMs: number;
  readonly late: boolean;
}

/** A value as it is stored: to four decimals, far finer than any sensor. */
export function fourDecimals(value: number | null): number | null {
  return value === null ? null : Math.round(value * 10_000) / 10_000;
}
