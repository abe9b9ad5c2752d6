// What an alarm of the service itself says beside numbers: names and stretches, never sentences. Stored with the alarm as plain JSON.
import type { Finding } from '../finding.ts';
import type { RuleId } from './alarm.ts';

export interface ServiceFacts {
  /** What the part that is in trouble found. */
  readonly trouble?: Finding;
  /** Open batches whose chambers nobody measures meanwhile. */
  readonly blind?: readonly BatchPlace[];
  /** Of the message after a gap. */
  readonly outage?: OutageFacts;
}

export interface BatchPlace {
  readonly chamberId: string;
  readonly chamberName: string;
  readonly batchCode: string;
}

/** A stretch of time in which nobody watched, and what is known of it now. */
export interface OutageFacts {
  /** `stopped`: the service did not run, or its machine slept; `broker`: no reading could come in. */
  readonly cause: 'stopped' | 'broker';
  readonly fromMs: number;
  readonly toMs: number;
  /** Chambers with an open batch, by what the readings say that were sent afterwards. */
  readonly chambers: readonly OutageClimate[];
  /** Alarms of chambers in force when it was over, the worst first. */
  readonly inForce: readonly { readonly chamberName: string; readonly rule: RuleId }[];
}

export interface OutageClimate extends BatchPlace {
  /** Minutes above the high temperature limit, by the hottest place. */
  readonly minutesHot: number;
  /** The limit, while it was one and the same; null = it changed, or there was none. */
  readonly high: number | null;
  /** Minutes below the low humidity limit, by the driest place. */
  readonly minutesDry: number;
  readonly low: number | null;
  readonly minutesUnknown: number;
}
