// Batches laid over each other by healing time: humidity and temperature, the corridor of the first, a legend, and the values as a table.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { OverlayView } from '../../shared/api/learning.ts';
import { words } from '../late-strings.ts';
import { humidityText, temperatureText } from '../quantities.ts';
import { inUnit, type TemperatureUnit, temperatureUnit } from '../temperature-unit.ts';
import { cellAfterKey } from './overlay-keys.ts';
import { type BatchFact, OverlayLegend, whereOf } from './overlay-legend.tsx';
import { overlayRows } from './overlay-lines.ts';
import { createOverlayPlot, type OverlayInput, type OverlayPlot } from './overlay-plot.ts';

const ROW_HOURS = 12;

interface PictureProps {
  readonly label: string;
  readonly input: OverlayInput;
  /** Where the cross-hair stands in all pictures of these batches; null = nowhere. */
  readonly cell: number | null;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

function Picture({ label, input, cell, onKeyDown }: PictureProps) {
  const host = useRef<HTMLDivElement>(null);
  const plot = useRef<OverlayPlot | null>(null);
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const room = () => [Math.max(40, element.clientWidth), Math.max(40, element.clientHeight)] as const;
    const made = createOverlayPlot(element, input, ...room());
    plot.current = made;
    const observer = new ResizeObserver(() => made.resize(...room()));
    observer.observe(element);
    return () => {
      observer.disconnect();
      made.destroy();
      plot.current = null;
    };
  }, [input]);
  useEffect(() => plot.current?.point(cell), [cell, input]);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset groups form fields, and this is a picture that is read
    <div
      class="overlay-host"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the keys move the cross-hair, so it must take the focus
      tabIndex={0}
      role="group"
      aria-label={words.learning.keys(label)}
      onKeyDown={onKeyDown}
    >
      <div class="overlay-canvas" role="img" aria-label={label} ref={host} />
    </div>
  );
}

/** What stands under the cross-hair, for who cannot see it: read out when keys moved it. */
function Spoken({ view, cell }: { readonly view: OverlayView; readonly cell: number | null }) {
  const values = view.batches.map(({ code, humidity, temperature }) => {
    const at = (column: readonly (number | null)[]) => column[cell ?? -1] ?? null;
    return `${code} ${words.learning.pair(humidityText(at(humidity)), temperatureText(at(temperature)))}`;
  });
  return (
    <p class="unseen" role="status">
      {cell !== null && `${whereOf(view, cell)}. ${values.join(', ')}`}
    </p>
  );
}

function Values({ view }: { readonly view: OverlayView }) {
  return (
    <details>
      <summary>{words.learning.table}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so that the keys must reach it */}
      <section class="table-box" tabIndex={0} aria-label={words.learning.table}>
        <table>
          <caption>{words.learning.tableCaption(temperatureUnit.value)}</caption>
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
  const [isSpoken, setSpoken] = useState(false);
  const unit = temperatureUnit.value;
  const { humidity, temperature } = useMemo(() => {
    const point = (at: number | null) => {
      setCell(at);
      setSpoken(false);
    };
    return inputsOf(view, unit, point);
  }, [view, unit]);
  const onKeyDown = (event: KeyboardEvent) => {
    const next = cellAfterKey(event.key, event.shiftKey, cell, view.hours);
    if (next === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    setCell(next);
    setSpoken(true);
  };
  const codes = view.batches.map(({ code }) => code).join(', ');
  const heat = words.learning.temperature(unit);
  return (
    <div class="overlay">
      <OverlayLegend view={view} factsOf={factsOf} cell={cell} />
      <Spoken view={view} cell={isSpoken ? cell : null} />
      <h4>{words.learning.humidity}</h4>
      <Picture
        label={words.learning.picture(words.learning.humidity, codes)}
        input={humidity}
        {...{ cell, onKeyDown }}
      />
      <h4>{heat}</h4>
      <Picture label={words.learning.picture(heat, codes)} input={temperature} {...{ cell, onKeyDown }} />
      <Values view={view} />
    </div>
  );
}

type Column = readonly (number | null)[];

/** Both quantities as they are drawn, temperatures in the reader's unit. */
function inputsOf(view: OverlayView, unit: TemperatureUnit, onPoint: OverlayInput['onPoint']) {
  const shared = { hours: view.hours, dayLabel: words.chart.dayCell, onPoint };
  const shown = (column: Column) => column.map((value) => (value === null ? null : inUnit(value, unit)));
  const { humidity, temperature } = view.corridor;
  return {
    humidity: { ...shared, lines: view.batches.map((batch) => batch.humidity), ...humidity },
    temperature: {
      ...shared,
      lines: view.batches.map((batch) => shown(batch.temperature)),
      low: shown(temperature.low),
      high: shown(temperature.high),
    },
  };
}
