// A finding in the database: as JSON, and beside it in English for whoever looks into the file with other tools.
import { type Finding, type GivenFinding, readFinding, sayFinding } from '../../shared/finding.ts';
import { plainEnglish } from '../../shared/plain-english.ts';

/** The two columns of a row. `json` is null in rows that are older than findings. */
export interface KeptFinding {
  readonly text: string;
  readonly json: string | null;
}

export function keepFinding(found: Finding): { readonly text: string; readonly json: string } {
  return { text: sayFinding(found, plainEnglish.words), json: JSON.stringify(found) };
}

/** What this program has no text for is as it was written. */
export function takeFinding({ text, json }: KeptFinding): Finding {
  return readFinding(json === null ? null : (JSON.parse(json) as GivenFinding), text, plainEnglish.words);
}
