// MQTT topic filters (MQTT 3.1.1 §4.7): `+` stands for one level, `#` for all that follow.
import type { Say } from '../words/shared-words.ts';

/** Why a text is not a topic filter, or null. Shared subscriptions (`$share/…`) are the broker connection's business, not a filter's. */
export function findTopicFilterFault(filter: string): Say | null {
  if (filter === '' || filter.includes('\0')) return ({ faults }) => faults.writeFilter;
  const levels = filter.split('/');
  if (levels.some((level) => level.length > 1 && /[+#]/.test(level))) return ({ faults }) => faults.wildcardAlone;
  return levels.slice(0, -1).includes('#') ? ({ faults }) => faults.hashLast : null;
}

/** True if a filter takes in a topic. A topic holds no wildcards; one that starts with `$` is taken in only by a filter that spells its first level out. */
export function topicMatches(filter: string, topic: string): boolean {
  if (topic === '' || /[+#]/.test(topic)) return false;
  const wanted = filter.split('/');
  const levels = topic.split('/');
  // MQTT 3.1.1 §4.7.2: wildcards at the start never reach the broker's own topics.
  if (topic.startsWith('$') && wanted[0] !== levels[0]) return false;
  for (const [index, level] of wanted.entries()) {
    // §4.7.1.2: # takes in the parent level as well, so nothing need be left for it.
    if (level === '#') return true;
    if (index >= levels.length || (level !== '+' && level !== levels[index])) return false;
  }
  return wanted.length === levels.length;
}
