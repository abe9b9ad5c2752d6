// The language a request is answered in: that of the person who is signed in, else the one its sender prefers, else English.
import type { FastifyRequest } from 'fastify';
import { findLanguage, type Language, readAcceptLanguage } from '../../shared/languages.ts';
import type { SharedWords } from '../../shared/words/shared-words.ts';
import { wordsOf } from '../../shared/words/words-of.ts';

/** Of any request, also one that was refused before anybody was known. */
export function languageOf(request: FastifyRequest): Language {
  // The actor is not set yet where a request is refused before anybody looked who sent it.
  return request.actor?.language ?? preferredLanguage(request) ?? 'en';
}

/** What the sender of a request prefers among the languages there are; null when that is not said, or none of them. */
export function preferredLanguage(request: FastifyRequest): Language | null {
  return findLanguage(readAcceptLanguage(request.headers['accept-language']));
}

/** The catalogue of that language. */
export function wordsFor(request: FastifyRequest): SharedWords {
  return wordsOf[languageOf(request)];
}
