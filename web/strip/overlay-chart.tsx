// Batches laid over each other by healing time: humidity and temperature, the corridor of the first, a legend, and the values as a table.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { OverlayView } from '../../shared/api/learning.ts';
import { words } from '../late-strings.ts';
import { humidityText, temperatureText } from '../quantities.ts';
import { type BatchFact, OverlayLegend } from './overlay-legend.tsx';
import { overlayRows } from './overlay-lines.ts';
import { createOverlayPlot, type OverlayInput } from './overlay-plot.ts';

const ROW_HOURS = 12;

function Picture({ label, input }: { readonly label: string; readonly input: OverlayInput }) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const room = () => [Math.max(40, element.clientWidth), Math.max(40, element.clientHeight)] as const;
    const plot = createOverlayPlot(element, input, ...room());
    const observer = new ResizeObserver(() => plot.resize(...room()));
    observer.observe(element);
    return () => {
      observer.disconnect();
      plot.destroy();
    };
  }, [input]);
  return <div class="overlay-canvas" role="img" aria-label={label} ref={host} />;
}

function Values({ view }: { readonly view: OverlayView }) {
  return (
    <details>
      <summary>{words.learning.table}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so that the keys must reach it */}
      <section class="table-box" tabIndex={0} aria-label={words.learning.table}>
        <table>
          <caption>{words.learning.tableCaption}</caption>
          <thead>
            <tr>
              <th scope="col">{words.learning.fromHour}</th>
              {view.batches.map(({ id, code }) => (
                <th key={id} scope="col">
                  {code}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {overlayRows(view, ROW_HOURS).map(({ fromHour, batches }) => (
              <tr key={fromHour}>
                <th scope="row">{fromHour}</th>
                {batches.map(({ humidity, temperature }, index) => (
                  <td key={view.batches[index]?.id}>
                    {words.learning.pair(humidityText(humidity), temperatureText(temperature))}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}

interface Props {
  readonly view: OverlayView;
  /** What is told of a batch beside its line; the same labels for every batch. */
  readonly factsOf: (batchId: string) => readonly BatchFact[];
}

export function OverlayChart({ view, factsOf }: Props) {
  const [cell, setCell] = useState<number | null>(null);
  const input = useMemo(
    () => (quantity: 'humidity' | 'temperature') => ({
      hours: view.hours,
      lines: view.batches.map((batch) => batch[quantity]),
      ...view.corridor[quantity],
      dayLabel: words.chart.dayCell,
      onPoint: setCell,
    }),
    [view],
  );
  const humidity = useMemo(() => input('humidity'), [input]);
  const temperature = useMemo(() => input('temperature'), [input]);
  const codes = view.batches.map(({ code }) => code).join(', ');
  return (
    <div class="overlay">
      <OverlayLegend view={view} factsOf={factsOf} cell={cell} />
      <h4>{words.learning.humidity}</h4>
      <Picture label={words.learning.picture(words.learning.humidity, codes)} input={humidity} />
      <h4>{words.learning.temperature}</h4>
      <Picture label={words.learning.picture(words.learning.temperature, codes)} input={temperature} />
      <Values view={view} />
    </div>
  );
}
