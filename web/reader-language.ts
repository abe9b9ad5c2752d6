// The language of who reads this page: as kept on this device, which is the person's own or was chosen before signing in; else the browser's.
// A change loads the page anew: every part of it then has its words from the beginning.
import { chooseLanguage, isLanguage, type Language } from '../shared/languages.ts';

const keptAs = 'takewell-language';

/** The storage of the device; null where the browser keeps nothing, as in some private windows. */
function storage(): Storage | null {
  try {
    return globalThis.localStorage ?? null;
  } catch (problem) {
    if (problem instanceof DOMException) return null;
    throw problem;
  }
}

function kept(): Language | null {
  const tag = storage()?.getItem(keptAs) ?? null;
  return isLanguage(tag) ? tag : null;
}

function browsers(): readonly string[] {
  return globalThis.document === undefined ? [] : navigator.languages;
}

/** What this page speaks; stands as long as the page does. */
export const readerLanguage: Language = kept() ?? chooseLanguage(browsers());

/** Keeps the language for this device, null = the browser's, and loads the page anew if it speaks another. */
export function readIn(language: Language | null): void {
  const wanted = language ?? chooseLanguage(browsers());
  if (language === null) storage()?.removeItem(keptAs);
  else storage()?.setItem(keptAs, language);
  // Where nothing is kept the page would come back as it is, again and again.
  const comesBack = kept() ?? chooseLanguage(browsers());
  if (wanted !== readerLanguage && comesBack === wanted) location.reload();
}

/** Takes what was kept away without loading anew: somebody else may sign in on this device. */
export function forgetLanguage(): void {
  storage()?.removeItem(keptAs);
}
