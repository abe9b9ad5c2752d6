import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jsonPointerPattern, pointerToken, resolvePointer } from '../../../shared/readings/json-pointer.ts';

describe('resolvePointer', () => {
  test('leads to a member of any name once the name is escaped', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (name) => {
        const pointer = `/${pointerToken(name)}/${pointerToken(name)}`;
        expect(pointer).toMatch(jsonPointerPattern);
        const document = JSON.parse(`{${JSON.stringify(name)}:{${JSON.stringify(name)}:42}}`);
        expect(resolvePointer(document, pointer)).toBe(42);
      }),
    );
  });

  test.each([
    { pointer: '/list/2', why: 'past the end of the list' },
    { pointer: '/list/-', why: 'the place after the end' },
    { pointer: '/list/01', why: 'no leading zeros' },
    { pointer: '/list/length', why: 'a list has only its elements' },
    { pointer: '/toString', why: 'inherited, not in the document' },
    { pointer: '/__proto__', why: 'inherited, not in the document' },
    { pointer: '/text/0', why: 'text has no members' },
    { pointer: '/none/x', why: 'null has no members' },
    { pointer: 'list', why: 'a pointer starts with a slash' },
    { pointer: '/a~2', why: 'no such escape' },
  ])('$pointer leads nowhere: $why', ({ pointer }) => {
    expect(resolvePointer({ list: [1, 2], text: 'x', none: null, 'a~2': 1 }, pointer)).toBeUndefined();
  });

  test('~01 is the member ~1 and not a slash', () => {
    expect(resolvePointer({ '~1': 'yes', '/': 'no' }, '/~01')).toBe('yes');
  });

  test('null is a value, and not the same as nowhere', () => {
    expect(resolvePointer({ none: null }, '/none')).toBeNull();
  });
});
