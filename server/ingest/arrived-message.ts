// A message as either broker hands it over, and what its topic makes of it. Decoding only: nothing is decided about stored probes here.
import { decodeMapped } from '../../shared/readings/decode-mapped.ts';
import { decodePayload } from '../../shared/readings/decode-payload.ts';
import type { Admission } from '../../shared/readings/reading.ts';
import { parseReadingTopic } from '../../shared/readings/reading-topic.ts';
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
  if (topic.kind === 'readings') return withoutStale(message, decodePayload({ node: topic.node, ...message }));
  const mapping = mappings.find((one) => topicMatches(one.filter, message.topic));
  if (mapping !== undefined) return withoutStale(message, decodeMapped(mapping, message));
  return refuse(
    message,
    'Nobody reads this topic: publish to takewell/v1/<node>/readings, or add a mapping in the settings.',
  );
}

function decodeStatus(message: ArrivedMessage, nodeId: string): DecodedMessage {
  const text = Buffer.from(message.payload).toString('utf8');
  if (text === 'online' || text === 'offline') return { message, ...nothing, status: { nodeId, status: text } };
  // An empty retained message is how MQTT clears a retained one.
  if (text === '') return { message, ...nothing, status: null };
  return refuse(message, 'A status is the word online or the word offline.');
}

// A retained reading says when it was measured or it says nothing: its arrival is the subscription's, not its own.
function withoutStale(message: ArrivedMessage, admission: Admission): DecodedMessage {
  const isUndated = message.retained && admission.admitted.some(({ timeMs }) => timeMs === message.arrivalMs);
  if (!isUndated) return { message, ...admission, status: null };
  return refuse(
    message,
    'A retained reading without a time cannot be dated: publish readings without the retain flag.',
  );
}

function refuse(message: ArrivedMessage, reason: string): DecodedMessage {
  return { message, admitted: [], refused: [{ reason, where: '' }], status: null };
}
