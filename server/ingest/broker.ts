// What the service asks of a broker, be it the embedded one or one that runs elsewhere.

import type { Finding } from '../../shared/finding.ts';

/** The part through which Takewell speaks. */
export interface BrokerVoice {
  /** Why no message can come in or go out now; null = connected or listening. */
  trouble(): Finding | null;
  /** Retained, QoS 1. Resolves when the broker has it; while there is no connection it is dropped: the next state follows. */
  publish(topic: string, payload: string): Promise<void>;
  /** Says a retained state that ends with this process at the latest. Resolves when the broker has acknowledged it; rejects when it does not. */
  hold(holding: Holding): Promise<Held>;
}

export interface Holding {
  readonly topic: string;
  readonly payload: string;
  /** What the topic says when it is let go, or when this process dies before. */
  readonly afterwards: string;
}

export interface Held {
  /** Connections that it was handed to; null = an outside broker does not say. */
  readonly followers: number | null;
  /** Resolves when it has ended by itself, such as with the connection. */
  readonly lost: Promise<void>;
  /** Ends it: `afterwards` is said, unless somebody else speaks on the topic from here on. Rejects when the broker does not acknowledge it. */
  letGo(isTakenOver: boolean): Promise<void>;
}

export interface Broker extends BrokerVoice {
  /** Port the embedded broker listens on; null for an outside one. */
  readonly port: number | null;
  /** Follows these topic filters as well as Takewell's own (the mappings were changed). */
  follow(filters: readonly string[]): Promise<void>;
  close(): Promise<void>;
}

export const SERVICE_STATUS_TOPIC = 'takewell/v1/service/status';
export const SIREN_TOPIC = 'takewell/v1/siren';
export const SIREN_REASON_TOPIC = 'takewell/v1/siren/reason';
export const OWN_FILTERS = ['takewell/v1/+/readings', 'takewell/v1/+/status'] as const;

const ownTopics: readonly string[] = [SERVICE_STATUS_TOPIC, SIREN_TOPIC, SIREN_REASON_TOPIC];

/** Topics that only Takewell itself publishes. */
export function isOwnOutput(topic: string): boolean {
  return ownTopics.includes(topic) || topic.startsWith('takewell/v1/chambers/');
}
