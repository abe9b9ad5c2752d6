// Why a message was refused, in words.
import type { SharedWords } from '../words/shared-words.ts';
import type { Reason, ReasonPart } from './reason.ts';

type Words = Pick<SharedWords, 'refusals' | 'decimal'>;

/** "The temperature is the text "warm"; send a number in °C, or leave it out." */
export function sayRefusal({ key, parts }: Reason, words: Words): string {
  const said: string | ((...parts: string[]) => string) = words.refusals[key];
  return typeof said === 'string' ? said : said(...parts.map((part) => sayPart(part, words)));
}

/** One part of it, such as what a value is: "a list". */
export function sayPart(part: ReasonPart, words: Words): string {
  if (typeof part === 'number') return String(part).replace('.', words.decimal);
  return typeof part === 'string' ? part : sayRefusal(part, words);
}
