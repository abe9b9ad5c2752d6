// The advice after a "no" stands until it is closed or the next answer is "yes".
import { expect, test } from 'vitest';
import { closeFirstAid, firstAidOf, noteAnswer } from '../../web/first-aid.ts';

const limp = { question: 'Do the scions stand erect?', ifNo: 'Close the gap and mist.' };
const dry = { question: 'Is the film wet?', ifNo: 'Mist the film.' };

test('"no" brings the advice of its check, to its own batch only', () => {
  noteAnswer('b1', limp, 'no');
  expect(firstAidOf('b1')).toEqual(limp);
  expect(firstAidOf('b2')).toBeUndefined();
});

test('the next "no" takes its place', () => {
  noteAnswer('b3', limp, 'no');
  noteAnswer('b3', dry, 'no');
  expect(firstAidOf('b3')).toEqual(dry);
});

test('"yes" takes it away, and so does closing it, and another batch keeps its own', () => {
  noteAnswer('b4', limp, 'no');
  noteAnswer('b5', dry, 'no');
  noteAnswer('b6', dry, 'no');
  noteAnswer('b4', dry, 'yes');
  closeFirstAid('b5');
  expect([firstAidOf('b4'), firstAidOf('b5'), firstAidOf('b6')]).toEqual([undefined, undefined, dry]);
});
