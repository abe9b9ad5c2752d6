import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseReadingTopic } from '../../../shared/readings/reading-topic.ts';
import { sayRefusal } from '../../../shared/readings/say-refusal.ts';
import { english } from '../../../shared/words/en/english.ts';

const longest = 'n'.repeat(64);

describe('parseReadingTopic', () => {
  test.each([
    { topic: 'takewell/v1/tent-3/readings', kind: 'readings', node: 'tent-3' },
    { topic: 'takewell/v1/A.b_c-9/status', kind: 'status', node: 'A.b_c-9' },
    { topic: `takewell/v1/${longest}/readings`, kind: 'readings', node: longest },
    { topic: 'takewell/v1/readings/readings', kind: 'readings', node: 'readings' },
  ])('$topic is the $kind of $node', ({ topic, kind, node }) => {
    expect(parseReadingTopic(topic)).toEqual({ kind, node });
  });

  test.each([
    { topic: `takewell/v1/n${longest}/readings`, says: 'longer than 64', why: 'one character too many' },
    { topic: 'takewell/v1/tent 3/readings', says: 'may hold only', why: 'a space' },
    { topic: 'takewell/v1/tent/3/readings', says: 'may hold only', why: 'a slash in the name' },
    { topic: 'takewell/v1/tent:3/status', says: 'may hold only', why: 'a colon' },
    { topic: 'takewell/v1//readings', says: 'is empty', why: 'no name' },
    { topic: 'takewell/v1/readings', says: 'is empty', why: 'no level for the name' },
    { topic: 'takewell/v1/chambers/readings', says: 'reserved', why: 'our own word' },
    { topic: 'takewell/v1/chambers/status', says: 'reserved', why: 'our own word' },
    { topic: 'takewell/v1/service/readings', says: 'reserved', why: 'our own word' },
  ])('$topic is bad: $why', ({ topic, says }) => {
    const parsed = parseReadingTopic(topic);
    expect(parsed.kind === 'bad' && sayRefusal(parsed.reason, english)).toContain(says);
  });

  test.each([
    { topic: 'takewell/v1/service/status', why: 'what Takewell says of itself' },
    { topic: 'takewell/v1/chambers/tent-3/state', why: 'what Takewell says of a chamber' },
    { topic: 'takewell/v1/tent-3/config', why: 'not readings and not a status' },
    { topic: 'takewell/v2/tent-3/readings', why: 'another version' },
    { topic: 'Takewell/v1/tent-3/readings', why: 'capital letters make another topic' },
    { topic: '/takewell/v1/tent-3/readings', why: 'a leading slash makes another topic' },
    { topic: 'sensors/tent-3/air', why: 'somebody else’s' },
    { topic: '', why: 'nothing' },
  ])('"$topic" is none of ours: $why', ({ topic }) => {
    expect(parseReadingTopic(topic)).toEqual({ kind: 'other' });
  });

  test('every node it names can be named in its topic', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom('readings', 'status'), (name, kind) => {
        const parsed = parseReadingTopic(`takewell/v1/${name}/${kind}`);
        if ('node' in parsed) expect(parsed).toEqual({ kind, node: name });
      }),
    );
  });
});
