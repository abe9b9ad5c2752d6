// The examples of RFC 6901 §5 [from memory; high confidence].
import { expect, test } from 'vitest';
import { resolvePointer } from '../../shared/readings/json-pointer.ts';

const document = {
  foo: ['bar', 'baz'],
  '': 0,
  'a/b': 1,
  'c%d': 2,
  'e^f': 3,
  'g|h': 4,
  'i\\j': 5,
  'k"l': 6,
  ' ': 7,
  'm~n': 8,
};

test.each([
  { pointer: '', value: document },
  { pointer: '/foo', value: ['bar', 'baz'] },
  { pointer: '/foo/0', value: 'bar' },
  { pointer: '/', value: 0 },
  { pointer: '/a~1b', value: 1 },
  { pointer: '/c%d', value: 2 },
  { pointer: '/e^f', value: 3 },
  { pointer: '/g|h', value: 4 },
  { pointer: '/i\\j', value: 5 },
  { pointer: '/k"l', value: 6 },
  { pointer: '/ ', value: 7 },
  { pointer: '/m~0n', value: 8 },
])('RFC 6901 §5: "$pointer" leads to its value', ({ pointer, value }) => {
  expect(resolvePointer(document, pointer)).toEqual(value);
});
