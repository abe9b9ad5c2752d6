import { describe, expect, test } from 'vitest';
import { topicMappingSchema } from '../../../shared/readings/topic-mapping.ts';

const mapping = {
  filter: 'sensors/+/air',
  node: 'level:1',
  temperature: { pointer: '/t', unit: 'Cel' },
};

function faultsOf(given: object): string[] {
  const result = topicMappingSchema.safeParse({ ...mapping, ...given });
  return result.success ? [] : result.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
}

describe('topicMappingSchema', () => {
  test.each([
    { given: {}, why: 'the least that is needed' },
    { given: { node: 'tent-3', probe: 'canopy-1' }, why: 'node and probe named outright' },
    { given: { filter: 'sensors/#', node: 'level:7' }, why: 'how deep # goes is not known beforehand' },
    {
      given: { temperature: undefined, humidity: { pointer: '', unit: '/' } },
      why: 'humidity alone, the message being the value',
    },
    { given: { time: { pointer: '/at', unit: 'ms' } }, why: 'with a time' },
  ])('takes $why', ({ given }) => {
    expect(faultsOf(given)).toEqual([]);
  });

  test.each([
    {
      given: { temperature: undefined },
      fault: 'temperature: say where the temperature stands, or the humidity, or both',
    },
    { given: { filter: 'sensors/#/air' }, fault: 'filter: put # last' },
    { given: { filter: 'sensors/a+/air' }, fault: 'filter: let + and # stand alone between slashes' },
    { given: { filter: 'takewell/v1/+/air' }, fault: 'filter: topics under takewell/v1 need no mapping' },
    { given: { node: 'level:3' }, fault: 'node: the filter has 3 levels, counted from level:0' },
    { given: { node: 'tent 3' }, fault: 'node: the node may hold only the letters' },
    { given: { node: 'service' }, fault: 'node: the node is reserved' },
    { given: { probe: '-x' }, fault: 'probe: may hold only the letters' },
    { given: { temperature: { pointer: 't', unit: 'Cel' } }, fault: 'temperature.pointer: write a JSON Pointer' },
    { given: { temperature: { pointer: '/t', unit: 'K' } }, fault: 'temperature.unit: ' },
    { given: { colour: 'red' }, fault: ': Unrecognized key' },
  ])('refuses with "$fault"', ({ given, fault }) => {
    expect(faultsOf(given)).toEqual([expect.stringContaining(fault)]);
  });
});
