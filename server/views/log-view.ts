// A line of a batch's log as it is sent to people: what it is about as fields, and what the person wrote.
import type { LogEntry } from '../../shared/api/log-entry.ts';
import { partsOfAbout, questionOf } from '../../shared/healing/batch-log.ts';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { utcText } from '../../shared/units.ts';
import type { LogRow } from '../store/store.ts';

/** `document` is the version of the profile that the batch has pinned. */
export function viewLogEntry(row: LogRow, document: ProfileDocument): LogEntry {
  const { id, atMs, kind, gapPercent, minutes, about, note, person } = row;
  const { check, stage, changes } = partsOfAbout(about);
  return {
    ...{ id, gapPercent, minutes, note, person, stage },
    at: utcText(atMs),
    kind: kind as LogEntry['kind'],
    check: check === null ? null : { ...check, question: questionOf(check.id, document) },
    changes: changes === null ? null : [...changes],
  };
}
