// The language a request is answered in: that of the person who is signed in, else the one its sender prefers, else English.
import type { FastifyRequest } from 'fastify';
import { chooseLanguage, type Language, readAcceptLanguage } from '../../shared/languages.ts';
import type { SharedWords } from '../../shared/words/shared-words.ts';
import { wordsOf } from '../../shared/words/words-of.ts';

/** Of any request, also one that was refused before anybody was known. */
export function languageOf(request: FastifyRequest): Language {
  // The actor is not set yet where a request is refused before anybody looked who sent it.
  return request.actor?.language ?? chooseLanguage(readAcceptLanguage(request.headers['accept-language']));
}

/** The catalogue of that language. */
export function wordsFor(request: FastifyRequest): SharedWords {
  return wordsOf[languageOf(request)];
}
