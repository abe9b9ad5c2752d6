// How often alarms came in the last 30 days, beside the targets of the standard: a sentence, a small table, what chatters and what comes most.
import { calls } from '../calls.ts';
import { chamberNames } from '../chamber-store.ts';
import { changes } from '../live.ts';
import { LoadState } from '../parts/load-state.tsx';
import { useLoad } from '../parts/use-load.ts';
import { words } from '../strings.ts';
import { type Measure, measuresOf, sourceLines, verdictOf } from './alarm-statistics-words.ts';

const { howOften } = words;
const SHOWN_SOURCES = 3;

function Measures({ measures }: { readonly measures: readonly Measure[] }) {
  return (
    <table class="stacking measures">
      <caption class="unseen">{howOften.caption}</caption>
      <thead>
        <tr>
          {Object.values(howOften.columns).map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {measures.map(({ name, found, target }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td data-name={howOften.columns.found}>{found}</td>
            <td data-name={howOften.columns.target}>{target}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface SourcesProps {
  readonly title: string;
  readonly lines: readonly string[];
  readonly advice?: string;
}

function Sources({ title, lines, advice }: SourcesProps) {
  if (lines.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul class="plain-list">
        {lines.map((line, index) => (
          <li key={`${index} ${line}`}>{line}</li>
        ))}
      </ul>
      {advice !== undefined && <p class="details">{advice}</p>}
    </>
  );
}

export function AlarmStatistics() {
  const statistics = useLoad(calls.alarmStatistics, 'statistics', [changes.alarms]);
  const names = new Map(chamberNames.value);
  const nameOf = (id: string) => names.get(id) ?? null;
  const view = statistics.data;
  return (
    <section aria-labelledby="how-often">
      <h2 id="how-often">{howOften.title}</h2>
      {view === undefined ? (
        <LoadState {...statistics} />
      ) : (
        <>
          <p>{verdictOf(view)}</p>
          <Measures measures={measuresOf(view)} />
          <Sources
            title={howOften.chatteringTitle}
            lines={sourceLines(view.chattering, nameOf)}
            advice={howOften.chatteringAdvice}
          />
          <Sources title={howOften.mostTitle} lines={sourceLines(view.mostFrequent.slice(0, SHOWN_SOURCES), nameOf)} />
          <p class="details">{howOften.basis}</p>
        </>
      )}
    </section>
  );
}
