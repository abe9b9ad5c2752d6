// Which node a message on `takewell/v1/…` comes from, and what it is. Everything else is left to the mappings.
import { quoteText } from './json-object.ts';
import { findNodeNameFault } from './probe-name.ts';
import { because, type Reason } from './reason.ts';

type ReadingTopic =
  | { readonly kind: 'readings' | 'status'; readonly node: string }
  | { readonly kind: 'other' }
  | { readonly kind: 'bad'; readonly reason: Reason };

const PREFIX = 'takewell/v1/';
const OTHER: ReadingTopic = { kind: 'other' };

/**
 * Reads `takewell/v1/<node>/readings` and `takewell/v1/<node>/status`. A topic of that shape whose node name cannot be
 * one is `bad`, with the reason; what Takewell publishes itself (`chambers/…/state`, `service/status`) and any other topic is `other`.
 */
export function parseReadingTopic(topic: string): ReadingTopic {
  if (!topic.startsWith(PREFIX) || isOurs(topic)) return OTHER;
  const end = topic.lastIndexOf('/');
  const kind = topic.slice(end + 1);
  if (kind !== 'readings' && kind !== 'status') return OTHER;
  const node = topic.slice(PREFIX.length, Math.max(end, PREFIX.length));
  const fault = findNodeNameFault(node);
  return fault === null ? { kind, node } : { kind: 'bad', reason: because('nodeName', quoteText(node), fault) };
}

function isOurs(topic: string): boolean {
  return topic === `${PREFIX}service/status` || /^takewell\/v1\/chambers\/[^/]+\/state$/.test(topic);
}
