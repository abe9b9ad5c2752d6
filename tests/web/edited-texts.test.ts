// Who edits a shipped profile reads it in their language; what they leave as it is stays the shipped text.
import { afterEach, describe, expect, it } from 'vitest';
import { profileDocumentSchema } from '../../shared/healing/profile.ts';
import { standardProfiles } from '../../shared/healing/standard-profiles.ts';
import { readableDocument, storedDocument } from '../../web/editor/edited-texts.ts';
import { speak } from '../../web/strings.ts';
import { temperatureUnit } from '../../web/temperature-unit.ts';
import { dutch, english, spanish } from '../support/page-words.ts';

afterEach(() => {
  speak(english);
  temperatureUnit.value = '°C';
});

describe.each([
  ['English', english],
  ['Dutch', dutch],
  ['Spanish', spanish],
] as const)('in %s', (_, words) => {
  it.each(standardProfiles)('$id comes back as it was, and fits its fields', ({ document }) => {
    speak(words);
    for (const unit of ['°C', '°F'] as const) {
      temperatureUnit.value = unit;
      const readable = readableDocument(document);
      expect(profileDocumentSchema.safeParse(readable).error).toBeUndefined();
      expect(storedDocument(readable)).toEqual(document);
    }
  });
});

it('shows a shipped question in Dutch, and leaves what somebody wrote', () => {
  speak(dutch);
  const document = standardProfiles.find(({ id }) => id === 'tomato-common-practice')?.document;
  if (document === undefined) throw new Error('there is no profile for tomato');
  const readable = readableDocument({ ...document, note: 'Our own house, row 3' });
  expect(readable.name).toBe(dutch.shared.profiles.names.tomato);
  expect(readable.checks.map(({ question }) => question)).toContain(dutch.shared.checks.filmWet.question);
  expect(readable.note).toBe('Our own house, row 3');
  expect(readable.stages.map(({ stage }) => stage)).toEqual(document.stages.map(({ stage }) => stage));
});
