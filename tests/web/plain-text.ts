// Text as a person reads it: a space that does not break looks like any other.

/** The text with plain spaces only. */
export function spaced(text: string): string {
  return text.replaceAll('\u00a0', ' ');
}
