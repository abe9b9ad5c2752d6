// What a wall screen shows in turn, and when it is night.
import { describe, expect, it } from 'vitest';
import { isNight, wallViews } from '../../web/wall-steps.ts';

const ids = (letter: string, count: number) => Array.from({ length: count }, (_, i) => `${letter}${i + 1}`);
const said = (alarm: number, soon: number, fine: number) =>
  wallViews({ alarm: ids('a', alarm), soon: ids('s', soon), fine: ids('f', fine) }, 6).map((view) =>
    view.kind === 'chamber'
      ? view.id
      : `${view.ids.at(0) ?? 'none'}…${view.ids.at(-1) ?? 'none'} ${view.page}/${view.pages}`,
  );

describe('the views of a wall screen', () => {
  it.each([
    { why: 'calm: everybody, page by page', groups: [0, 0, 8], views: ['f1…f6 1/2', 'f7…f8 2/2'] },
    { why: 'one chamber alone has the whole screen', groups: [0, 0, 1], views: ['f1'] },
    { why: 'one needs someone: itself, then the list', groups: [1, 0, 3], views: ['a1', 'a1…f3 1/1'] },
    { why: 'what is due comes after what is wrong', groups: [1, 2, 1], views: ['a1', 's1', 's2', 'a1…f1 1/1'] },
    {
      why: 'many: the worst four by themselves, then all who need someone',
      groups: [12, 1, 40],
      views: ['a1', 'a2', 'a3', 'a4', 'a1…a6 1/3', 'a7…a12 2/3', 's1…s1 3/3'],
    },
    { why: 'no chamber yet: an empty list, never nothing', groups: [0, 0, 0], views: ['none…none 1/1'] },
  ])('$why', ({ groups: [alarm = 0, soon = 0, fine = 0], views }) => {
    expect(said(alarm, soon, fine)).toEqual(views);
  });
});

it.each([
  [20, false],
  [21, true],
  [5, true],
  [6, false],
])('at %i o’clock night is %s', (hour, night) => {
  expect(isNight(hour)).toBe(night);
});
