// The languages people are spoken to in, and which of them a person gets.

/** Tags of BCP 47. Another language is one more here, and the compiler then asks for its catalogues. */
export const languages = ['en', 'nl', 'es'] as const;
export type Language = (typeof languages)[number];

/** How dates and numbers are written: 24 h clock and day before month in all of them. */
export const locales: Readonly<Record<Language, string>> = { en: 'en-GB', nl: 'nl-NL', es: 'es-ES' };

/** Each language by its own name, so that it is found by those who read no other. */
export const languageNames: Readonly<Record<Language, string>> = { en: 'English', nl: 'Nederlands', es: 'Español' };

/** True for the tag of a language there is. */
export function isLanguage(tag: unknown): tag is Language {
  return languages.some((one) => one === tag);
}

/** The first of the preferred tags that there is, whatever its region ("nl-BE" is Dutch); null when there is none. */
export function findLanguage(preferred: readonly string[]): Language | null {
  return preferred.map((tag) => tag.trim().toLowerCase().split('-')[0]).find(isLanguage) ?? null;
}

/** The same, and English when there is none. */
export function chooseLanguage(preferred: readonly string[]): Language {
  return findLanguage(preferred) ?? 'en';
}

/** The tags of an Accept-Language header, the most wanted first (RFC 9110 §12.5.4); what cannot be read counts as not wanted. */
export function readAcceptLanguage(header: string | undefined): string[] {
  const wanted = (header ?? '').split(',').map((part) => {
    const [tag = '', ...parameters] = part.split(';').map((one) => one.trim());
    const weight = parameters.find((one) => one.startsWith('q='))?.slice(2);
    return { tag, weight: weight === undefined ? 1 : Number(weight) };
  });
  return wanted
    .filter(({ tag, weight }) => tag !== '' && weight > 0)
    .sort((a, b) => b.weight - a.weight)
    .map(({ tag }) => tag);
}
