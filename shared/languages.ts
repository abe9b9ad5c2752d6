// The languages in which Takewell speaks to people.
export const languages = ['en', 'nl', 'es'] as const;
export type Language = (typeof languages)[number];
