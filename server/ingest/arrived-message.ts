// A message as either broker hands it over, and what its topic makes of it. Decoding only: nothing is decided about stored probes here.
import { decodeMapped } from '../../shared/readings/decode-mapped.ts';
import { decodePayload } from '../../shared/readings/decode-payload.ts';
import type { Admission } from '../../shared/readings/reading.ts';
import { parseReadingTopic } from '../../shared/readings/reading-topic.ts';
import { because, type Reason } from '../../shared/readings/reason.ts';
import { topicMatches } from '../../shared/readings/topic-filter.ts';
import type { TopicMapping } from '../../shared/readings/topic-mapping.ts';

export interface ArrivedMessage {
  readonly topic: string;
  readonly payload: Uint8Array;
  readonly arrivalMs: number;
  /** Sent by the broker from its retained store: not a fresh message. */
  readonly retained: boolean;
}

export interface DecodedMessage extends Admission {
  readonly message: ArrivedMessage;
  readonly status: { readonly nodeId: string; readonly status: 'online' | 'offline' } | null;
}

const nothing: Admission = { admitted: [], refused: [] };

/** Reads a message by its topic. Any bytes on any topic are answered; nothing throws. */
export function decodeMessage(message: ArrivedMessage, mappings: readonly TopicMapping[]): DecodedMessage {
  const topic = parseReadingTopic(message.topic);
  if (topic.kind === 'bad') return refuse(message, topic.reason);
  if (topic.kind === 'status') return decodeStatus(message, topic.node);
  const { payload } = message;
  if (topic.kind === 'readings') {
    return decodeDated(message, (arrivalMs) => decodePayload({ node: topic.node, payload, arrivalMs }));
  }
  const mapping = mappings.find((one) => topicMatches(one.filter, message.topic));
  if (mapping !== undefined) {
    return decodeDated(message, (arrivalMs) => decodeMapped(mapping, { topic: message.topic, payload, arrivalMs }));
  }
  return refuse(message, because('nobodyReads'));
}

function decodeStatus(message: ArrivedMessage, nodeId: string): DecodedMessage {
  const text = Buffer.from(message.payload).toString('utf8');
  if (text === 'online' || text === 'offline') return { message, ...nothing, status: { nodeId, status: text } };
  // An empty retained message is how MQTT clears a retained one.
  if (text === '') return { message, ...nothing, status: null };
  return refuse(message, because('statusWord'));
}

// A retained reading says when it was measured or it says nothing: its arrival is the subscription's, not its own.
function decodeDated(message: ArrivedMessage, decode: (arrivalMs: number) => Admission): DecodedMessage {
  const admission = decode(message.arrivalMs);
  const isDated = !message.retained || keepsItsTimes(admission, decode(message.arrivalMs + 1));
  if (isDated) return { message, ...admission, status: null };
  return refuse(message, because('retainedUndated'));
}

// A time that moves with the arrival was not sent: there is none, or it is counted from now (RFC 8428 §4.5.3).
function keepsItsTimes(admission: Admission, arrivedLater: Admission): boolean {
  const later = new Set(arrivedLater.admitted.map(({ timeMs }) => timeMs));
  return admission.admitted.every(({ timeMs }) => later.has(timeMs));
}

function refuse(message: ArrivedMessage, reason: Reason): DecodedMessage {
  return { message, admitted: [], refused: [{ reason, where: '' }], status: null };
}
