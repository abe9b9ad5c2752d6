// The shared catalogues: every text is there in every language, says all that it is given, and is not the English one left over.
import { describe, expect, it } from 'vitest';
import { type Language, languages } from '../../../shared/languages.ts';
import { wordsOf } from '../../../shared/words/words-of.ts';
import { walkWords } from '../../support/walk-words.ts';

/** Said alike in another language. */
const alike: Readonly<Record<Exclude<Language, 'en'>, readonly string[]>> = {
  nl: [
    'spans.minutes',
    'ahead.between',
    'notices.flood.where',
    'notices.page.title',
    'service.was',
    'findings.asWritten',
  ],
  es: ['spans.minutes', 'spans.hours', 'ahead.between', 'findings.asWritten'],
};
const others = languages.filter((one) => one !== 'en');

describe.each(languages)('%s', (language) => {
  const texts = walkWords(wordsOf[language]);

  it('has many texts, none of them empty', () => {
    expect(texts.length).toBeGreaterThan(150);
    expect(texts.filter(({ text }) => text.trim() === '')).toEqual([]);
  });

  it('says everything that it is given', () => {
    const silent = texts.filter(({ text, given }) => given.some((one) => !text.includes(one)));
    expect(silent).toEqual([]);
  });

  it('leaves no gap in a sentence', () => {
    expect(texts.filter(({ text }) => /undefined|NaN|\[object|\s{2}|^\s|\s$/.test(text))).toEqual([]);
  });
});

describe.each(others)('%s', (language) => {
  it('has the texts that English has', () => {
    const paths = (one: Language) => walkWords(wordsOf[one]).map(({ path }) => path);
    expect(paths(language).sort()).toEqual(paths('en').sort());
  });

  it('is said otherwise than English, except where it is listed here', () => {
    const english = new Map(walkWords(wordsOf.en).map(({ path, text }) => [path, text]));
    const same = walkWords(wordsOf[language]).filter(({ path, text }) => english.get(path) === text);
    expect(same.map(({ path }) => path).sort()).toEqual([...alike[language]].sort());
  });
});
