// The log of a batch, newest first.
import { useState } from 'preact/hooks';
import type { LogEntry } from '../../shared/api/log-entry.ts';
import { slowNowMs } from '../clock.ts';
import { entryWords, noteWords } from '../log-words.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';

const fewShown = 8;

export function LogList({ log }: { readonly log: readonly LogEntry[] }) {
  const [isAll, setAll] = useState(false);
  const newest = [...log].sort((one, other) => (one.at < other.at ? 1 : -1));
  const shown = isAll ? newest : newest.slice(0, fewShown);
  return (
    <section aria-labelledby="log-list">
      <h2 id="log-list">{words.log.recent}</h2>
      {log.length === 0 && <p class="quiet-line">{words.log.none}</p>}
      <ul class="log-list">
        {shown.map((entry) => (
          <li key={entry.id}>
            <time dateTime={entry.at}>{dayAndTime(Date.parse(entry.at), slowNowMs.value, zone.value)}</time>
            <span>
              <b>{entryWords(entry)}</b> {noteWords(entry, slowNowMs.value, zone.value)} <small>{entry.person}</small>
            </span>
          </li>
        ))}
      </ul>
      {newest.length > shown.length && (
        <button type="button" class="quiet" onClick={() => setAll(true)}>
          {words.log.all(newest.length)}
        </button>
      )}
    </section>
  );
}
