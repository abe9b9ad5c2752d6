// Lines of a batch's log: an answer is said in the reader's words, what a person wrote stands as it was written.
import { expect, test } from 'vitest';
import { noteWords } from '../../web/pages/log-words.ts';
import { english } from '../support/page-words.ts';

const { question } = english.shared.checks.filmWet;

test.each([
  ['an answer', { kind: 'check', note: `${question} yes` }, english.chart.checkWas(question, 'Yes')],
  [
    'an answer with what was added, though it answers too',
    { kind: 'check', note: `${question} no: not yet, yes` },
    `${english.chart.checkWas(question, 'No')}: not yet, yes`,
  ],
  ['a question of their own', { kind: 'check', note: 'Is it no trouble? yes' }, 'Is it no trouble? Yes'],
  ['a note that ends like an answer', { kind: 'note', note: 'All up? yes' }, 'All up? yes'],
  ['an answer that cannot be read', { kind: 'check', note: 'perhaps' }, 'perhaps'],
] as const)('%s', (_, entry, said) => {
  expect(noteWords(entry)).toBe(said);
});
