// Which line is which batch, with what is known of each beside it, and the values under the cross-hair.
import type { OverlayView } from '../../shared/api/learning.ts';
import { words } from '../late-strings.ts';
import { humidityText, temperatureText } from '../quantities.ts';
import { temperatureUnit } from '../temperature-unit.ts';
import { lineStyle } from './overlay-lines.ts';

/** Something that is told of a batch beside its line, such as its take. */
export interface BatchFact {
  readonly label: string;
  readonly value: string;
}

interface Props {
  readonly view: OverlayView;
  /** The same labels in the same order for every batch; the first is told on the smallest screen too. */
  readonly factsOf: (batchId: string) => readonly BatchFact[];
  /** Cell under the cross-hair; null = the pointer is elsewhere. */
  readonly cell: number | null;
}

const HOURS_A_DAY = 24;

function LineSample({ index }: { readonly index: number }) {
  const { ink, dash } = lineStyle(index);
  return (
    <svg viewBox="0 0 44 8" aria-hidden="true">
      <path d="M0 4h44" stroke={ink} stroke-width="2.5" stroke-dasharray={dash.join(' ')} />
    </svg>
  );
}

/** "Day 3, hour 5" of a cell. */
export function whereOf({ hours }: OverlayView, cell: number): string {
  const hour = Math.floor(hours[cell] ?? 0);
  return words.learning.at(Math.floor(hour / HOURS_A_DAY) + 1, hour % HOURS_A_DAY, temperatureUnit.value);
}

export function OverlayLegend({ view, factsOf, cell }: Props) {
  const [first] = view.batches;
  if (first === undefined) return null;
  const labels = factsOf(first.id).map(({ label }) => label);
  const here = cell === null ? words.learning.pointAt : whereOf(view, cell);
  return (
    <>
      <table class="stacking overlay-legend">
        <caption class="unseen">{words.learning.legend}</caption>
        <thead>
          <tr>
            {[words.batches.columns.code, ...labels, here].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {view.batches.map(({ id, code, humidity, temperature }, index) => (
            <tr key={id}>
              <th scope="row">
                <LineSample index={index} /> {code}
              </th>
              {factsOf(id).map(({ label, value }, column) => (
                <td key={label} data-name={label} class={column === 0 ? '' : 'is-said'}>
                  {value}
                </td>
              ))}
              <td data-name={here}>
                {cell !== null &&
                  words.learning.pair(humidityText(humidity[cell] ?? null), temperatureText(temperature[cell] ?? null))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="details">{words.learning.corridorOf(first.code)}</p>
    </>
  );
}
