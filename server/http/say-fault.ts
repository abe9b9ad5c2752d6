// What a schema finds wrong, in the language of the request: our own words by the catalogue, the library's by its own locales.
import { z } from 'zod';
import type { Language } from '../../shared/languages.ts';
import { findShape } from '../../shared/words/find-shape.ts';
import type { Say } from '../../shared/words/shared-words.ts';
import { wordsOf } from '../../shared/words/words-of.ts';

/** A fault as the validator reports it: zod's issue in Fastify's clothes. */
export interface Found {
  readonly keyword?: string;
  readonly message?: string | undefined;
  readonly params?: Readonly<Record<string, unknown>>;
}

const libraryOf: Readonly<Record<Language, () => z.core.$ZodErrorMap>> = {
  en: () => z.locales.en().localeError,
  nl: () => z.locales.nl().localeError,
  es: () => z.locales.es().localeError,
};

/** One fault; `input` is the value it lies in. */
export function sayFault({ keyword, message, params }: Found, input: unknown, language: Language): string {
  const words = wordsOf[language];
  const say = sayOf(params) ?? findShape(message ?? '');
  if (say !== null) return say(words);
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
