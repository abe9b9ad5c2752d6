// What the topic of a message makes of it, and what a retained message may still say.
import { describe, expect, it } from 'vitest';
import { type ArrivedMessage, decodeMessage } from '../../../server/ingest/arrived-message.ts';
import type { TopicMapping } from '../../../shared/readings/topic-mapping.ts';
import { inEnglish } from '../../support/readings.ts';

const ARRIVAL_MS = Date.parse('2026-03-02T07:00:00Z');

const mapping: TopicMapping = {
  filter: 'greenhouse/+/air',
  node: 'level:1',
  temperature: { pointer: '/t', unit: 'Cel' },
  time: { pointer: '/at', unit: 's' },
};

function decode(topic: string, payload: unknown, change: Partial<ArrivedMessage> = {}) {
  const text = typeof payload === 'string' ? payload : JSON.stringify(payload);
  const message = { topic, payload: Buffer.from(text), arrivalMs: ARRIVAL_MS, retained: false, ...change };
  return inEnglish(decodeMessage(message, [mapping]));
}

describe('decodeMessage', () => {
  it('reads a pack from the topic of a node', () => {
    const { admitted, refused } = decode('takewell/v1/n1/readings', { temperature: 21.4, humidity: 93.1 });
    expect(admitted).toEqual([{ node: 'n1', probe: '', timeMs: ARRIVAL_MS, temperature: 21.4, humidity: 93.1 }]);
    expect(refused).toEqual([]);
  });

  it('reads a message of another topic by its mapping', () => {
    const { admitted } = decode('greenhouse/bench-4/air', { t: 20.5, at: ARRIVAL_MS / 1000 - 5 });
    expect(admitted).toEqual([
      { node: 'bench-4', probe: '', timeMs: ARRIVAL_MS - 5_000, temperature: 20.5, humidity: null },
    ]);
  });

  it.each([
    ['nobody has set up a mapping for it', 'weather/outside', 'Nobody reads this topic'],
    ['a level is missing', 'takewell/v1/readings', 'The node name "" is empty'],
    ['there is a level too many', 'takewell/v1/n1/probe/readings', 'may hold only the letters'],
    ['the node has a name of Takewell’s own', 'takewell/v1/chambers/readings', 'is reserved'],
    ['it is another kind of message', 'takewell/v1/n1/commands', 'Nobody reads this topic'],
    ['it is an older form', 'takewell/v0/n1/readings', 'Nobody reads this topic'],
  ])('refuses a topic when %s', (_why, topic, reason) => {
    const { admitted, refused, status } = decode(topic, { temperature: 21 });
    expect({ admitted, status }).toEqual({ admitted: [], status: null });
    expect(refused).toEqual([{ reason: expect.stringContaining(reason), where: '' }]);
  });

  it.each(['online', 'offline'] as const)('takes the status %s', (status) => {
    expect(decode('takewell/v1/n1/status', status)).toMatchObject({ refused: [], status: { nodeId: 'n1', status } });
  });

  it('takes an empty status for what it is: the clearing of a retained one', () => {
    expect(decode('takewell/v1/n1/status', '')).toMatchObject({ admitted: [], refused: [], status: null });
  });

  it.each(['Online', 'online\n', '{"status":"online"}', 'off'])('refuses the status %j', (text) => {
    const { refused, status } = decode('takewell/v1/n1/status', text);
    expect(status).toBeNull();
    expect(refused).toEqual([{ reason: 'A status is the word online or the word offline.', where: '' }]);
  });

  it('answers 500,000 brackets without running out of stack', () => {
    const { refused } = decode('takewell/v1/n1/readings', '['.repeat(500_000));
    expect(refused).toHaveLength(1);
  });
});

describe('a retained message', () => {
  const retained = { retained: true };
  const seconds = ARRIVAL_MS / 1000;

  it.each([
    ['plain, without a time', { temperature: 21 }],
    ['a list in which one has no time', [{ temperature: 21, time: seconds - 60 }, { temperature: 22 }]],
    ['SenML without a time', [{ n: 'temperature', u: 'Cel', v: 21 }]],
    // RFC 8428 §4.5.3: times below 2^28 are counted from now.
    ['SenML with a time counted from now', [{ n: 'temperature', u: 'Cel', v: 21, t: -30 }]],
  ])('is refused when nobody can say when it was measured: %s', (_why, payload) => {
    const { admitted, refused } = decode('takewell/v1/n1/readings', payload, retained);
    expect(admitted).toEqual([]);
    expect(refused).toEqual([{ reason: expect.stringContaining('cannot be dated'), where: '' }]);
  });

  it('is refused on a mapped topic too', () => {
    expect(decode('greenhouse/b/air', { t: 20 }, retained)).toMatchObject({ admitted: [], refused: [{ where: '' }] });
  });

  it.each([
    ['plain, with its time', { temperature: 21, time: seconds - 600 }, ARRIVAL_MS - 600_000],
    ['measured in the very millisecond of its arrival', { temperature: 21, time: seconds }, ARRIVAL_MS],
    ['SenML with a time of day', [{ n: 'temperature', u: 'Cel', v: 21, t: seconds - 600 }], ARRIVAL_MS - 600_000],
  ])('is admitted when it says itself when it was measured: %s', (_why, payload, timeMs) => {
    const { admitted, refused } = decode('takewell/v1/n1/readings', payload, retained);
    expect(admitted).toMatchObject([{ timeMs, temperature: 21 }]);
    expect(refused).toEqual([]);
  });

  it('keeps its refusals when the rest of it is dated', () => {
    const pack = [{ temperature: 21, time: seconds - 600 }, { temperature: 'warm' }];
    const { admitted, refused } = decode('takewell/v1/n1/readings', pack, retained);
    expect(admitted).toHaveLength(1);
    expect(refused).toMatchObject([{ where: '/1/temperature' }]);
  });

  it('still tells the status of a node: that is what retaining is for', () => {
    expect(decode('takewell/v1/n1/status', 'offline', retained)).toMatchObject({ status: { status: 'offline' } });
  });
});
