// The picture of a chart: takes the focus so that keys can move it, and the pointer so that it can be dragged.
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { words } from '../strings.ts';
import { temperatureUnit } from '../temperature-unit.ts';
import { chartLayout } from './lanes.ts';
import type { PlotInput } from './plot.ts';
import type { StripData } from './strip-data.ts';
import { summarizeStrip } from './summary.ts';
import { useChartPointer } from './use-chart-pointer.ts';
import { usePlot } from './use-plot.ts';
import type { Window } from './zoom.ts';

interface Props {
  readonly data: StripData | undefined;
  readonly shown: Window;
  readonly whole: Window;
  /** Where the cross-hair stands, seconds; null = nowhere. */
  readonly atSec: number | null;
  readonly zone: string;
  readonly onMove: (window: Window) => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  /** The instant pointed to, seconds; null = none. */
  readonly onPoint: (atSec: number | null) => void;
}

function labelOf(data: StripData | undefined, zone: string): string {
  return data === undefined ? words.chart.loading : `${words.chart.title}. ${summarizeStrip(data, zone)}`;
}

export function ChartPicture({ data, shown, whole, atSec, zone, onMove, onKeyDown, onPoint }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const unit = temperatureUnit.value;
  const input = useMemo<PlotInput | undefined>(
    () =>
      data && {
        ...{ data, layout: chartLayout, zone, unit, marked: null },
        window: [shown.fromMs / 1000, shown.toMs / 1000],
      },
    [data, zone, unit, shown.fromMs, shown.toMs],
  );
  const plot = usePlot(host, input);
  const handlers = useChartPointer(plot, { shown, whole, onMove, onPoint });
  useEffect(() => plot.current?.point(atSec), [atSec, data === undefined]);
  const label = useMemo(() => labelOf(data, zone), [data, zone, unit]);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset groups form fields, and this is a picture that is moved
    <div
      class="chart-host"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the keys move the picture, so it must take the focus
      tabIndex={0}
      role="group"
      aria-label={words.chart.keys}
      onKeyDown={onKeyDown}
      {...handlers}
    >
      <div class="chart-canvas" role="img" aria-label={label} ref={host} />
    </div>
  );
}
