// What stands in English on a page of another language: texts of the English catalogue, and lines with words that neither Dutch nor Spanish has.
import type { Page } from 'playwright-core';
import type { Words } from '../../web/late-strings.ts';
import { spaced } from '../web/plain-text.ts';
import { pageTexts } from './page-texts.ts';
import { english } from './page-words.ts';
import { walkWords } from './walk-words.ts';

const onlyEnglish = /\b(the|and|are|with|until|since|from|for|not|you|which)\b/i;
const hasTwoWords = /\p{L}{2,}[^\p{L}]+\p{L}{2,}/u;

/** The fixed parts of every text, between what is put in. */
function fixedParts(words: Words): readonly { readonly path: string; readonly text: string }[] {
  return [...pageTexts(words), ...walkWords(words.shared)].flatMap(({ path, text }) =>
    text.split(/\d+/).map((part, index) => ({ path: `${path} ${index}`, text: spaced(part).trim() })),
  );
}

/** Parts of more than one word that are English and not also of the reader's language. */
export function englishParts(words: Words): readonly string[] {
  const own = new Set(fixedParts(words).map(({ text }) => text));
  const parts = fixedParts(english).filter(({ text }) => hasTwoWords.test(text) && !own.has(text));
  return [...new Set(parts.map(({ text }) => text))];
}

/** The lines among `lines` that are English, without those in which a person's own words stand. */
export function leftInEnglish(
  lines: readonly string[],
  parts: readonly string[],
  written: readonly RegExp[],
): string[] {
  const isEnglish = (line: string) => onlyEnglish.test(line) || parts.some((part) => line.includes(part));
  return lines.filter((line) => !written.some((own) => own.test(line)) && isEnglish(line));
}

/** Opens what is folded away: some of it is asked for only then. */
export async function unfold(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
}

/** Every line that a page shows or has read out, what was unfolded included. */
export async function linesOf(page: Page): Promise<string[]> {
  const found = await page.evaluate(() => {
    const told = ['aria-label', 'title', 'placeholder', 'alt'];
    const labels = [...document.querySelectorAll('*')].flatMap((one) => told.map((name) => one.getAttribute(name)));
    const options = [...document.querySelectorAll('option')].map(({ text }) => text);
    return [document.title, ...labels, ...options];
  });
  // biome-ignore lint/performance/useDomNodeTextContent: only what is laid out is read, block by block as lines
  const shown = (await page.locator('body').innerText()).split('\n');
  const lines = [...shown, ...found].flatMap((line) => (line === null ? [] : spaced(line).trim()));
  return [...new Set(lines.filter((line) => line !== ''))];
}
