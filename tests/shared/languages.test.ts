// Which language a person gets.
import { describe, expect, it } from 'vitest';
import { chooseLanguage, languageNames, languages, locales, readAcceptLanguage } from '../../shared/languages.ts';

describe('the language a person gets', () => {
  it.each([
    { preferred: ['nl'], language: 'nl', why: 'it is there' },
    { preferred: ['nl-BE', 'en'], language: 'nl', why: 'another region speaks it too' },
    { preferred: ['ES-mx'], language: 'es', why: 'capitals mean nothing in a tag' },
    { preferred: ['de', 'fr', 'es'], language: 'es', why: 'the first that is there' },
    { preferred: ['de'], language: 'en', why: 'none of them is there' },
    { preferred: [], language: 'en', why: 'nothing is preferred' },
    { preferred: ['', '-', 'nl_NL'], language: 'en', why: 'what is no tag counts for nothing' },
  ])('$preferred gives $language: $why', ({ preferred, language }) => {
    expect(chooseLanguage(preferred)).toBe(language);
  });
});

describe('an Accept-Language header', () => {
  it.each([
    { header: 'nl-NL,nl;q=0.9,en;q=0.8', tags: ['nl-NL', 'nl', 'en'], why: 'as browsers send it' },
    { header: 'en;q=0.3, es', tags: ['es', 'en'], why: 'the weight decides, not the place' },
    { header: 'es;q=0, en', tags: ['en'], why: 'a weight of nothing is a refusal' },
    { header: 'nl;q=x, en', tags: ['en'], why: 'a weight that cannot be read' },
    { header: '', tags: [], why: 'nothing is said' },
    { header: undefined, tags: [], why: 'there is no header' },
  ])('$header: $why', ({ header, tags }) => {
    expect(readAcceptLanguage(header)).toEqual(tags);
  });
});

it('every language has a name of its own and a locale that Intl knows', () => {
  expect(new Set(Object.values(languageNames)).size).toBe(languages.length);
  for (const language of languages)
    expect(Intl.DateTimeFormat.supportedLocalesOf(locales[language])).toEqual([locales[language]]);
});
