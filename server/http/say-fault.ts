// What a schema finds wrong, in the language of the request: our own words by the catalogue, the library's by its own locales.
import { z } from 'zod';
import type { Language } from '../../shared/languages.ts';
import { english } from '../../shared/words/en/english.ts';
import type { Say, SharedWords } from '../../shared/words/shared-words.ts';
import { wordsOf } from '../../shared/words/words-of.ts';

/** A fault as the validator reports it: zod's issue in Fastify's clothes. */
export interface Found {
  readonly keyword?: string;
  readonly message?: string | undefined;
  readonly params?: Readonly<Record<string, unknown>>;
}

type ShapeName = keyof SharedWords['shapes'];

const names = new Map(Object.entries(english.shapes).map(([name, text]) => [text, name as ShapeName]));
const libraryOf: Readonly<Record<Language, () => z.core.$ZodErrorMap>> = {
  en: () => z.locales.en().localeError,
  nl: () => z.locales.nl().localeError,
  es: () => z.locales.es().localeError,
};

/** One fault; `input` is the value it lies in. */
export function sayFault({ keyword, message, params }: Found, input: unknown, language: Language): string {
  const words = wordsOf[language];
  const said = sayOf(params);
  if (said !== null) return said(words);
  const name = names.get(message ?? '');
  if (name !== undefined) return words.shapes[name];
  if (language === 'en' || message !== byLibrary('en')) return message ?? words.shapes.notRight;
  return byLibrary(language) ?? message ?? words.shapes.notRight;

  function byLibrary(of: Language): string | undefined {
    const said = libraryOf[of]()({ ...params, code: keyword, input, path: [] } as unknown as z.core.$ZodRawIssue);
    return typeof said === 'string' ? said : said?.message;
  }
}

/** The sentence that a refinement of ours gave along. */
function sayOf(params: Found['params']): Say | null {
  const own = params?.['params'];
  const say = typeof own === 'object' && own !== null && 'say' in own ? own.say : null;
  return typeof say === 'function' ? (say as Say) : null;
}
