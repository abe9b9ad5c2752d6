// A line of the log as the record hands it on: in English and as one text, whatever the program knows of it as data.
import type { RecordLogEntry } from '../../shared/api/record.ts';
import { plainNote } from '../../shared/healing/batch-log.ts';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { utcText } from '../../shared/units.ts';
import type { LogRow } from '../store/store.ts';

/** `document` is the version of the profile that the batch has pinned. */
export function describeLogLine(line: LogRow, document: ProfileDocument): RecordLogEntry {
  const { id, atMs, kind, gapPercent, person } = line;
  return { id, at: utcText(atMs), kind, gapPercent, note: plainNote(line, document), person };
}
