// One quantity of several batches over healing time, on its canvas. It draws what it is given and never asks the service for anything.
import { uPlot } from './chart-library.ts';
import { inkFont, inks } from './inks.ts';
import { lineStyle } from './overlay-lines.ts';

type Column = readonly (number | null)[];

export interface OverlayInput {
  /** Hours after closing, one a cell. */
  readonly hours: readonly number[];
  readonly lines: readonly Column[];
  readonly low: Column;
  readonly high: Column;
  /** Printed at each day of the axis, such as "day 3". */
  readonly dayLabel: (day: number) => string;
  /** Told the cell under the cross-hair; null when the pointer has left. */
  readonly onPoint: (cell: number | null) => void;
}

export interface OverlayPlot {
  /** Puts the cross-hair on a cell, or away. Tells nobody. */
  point(cell: number | null): void;
  resize(width: number, height: number): void;
  destroy(): void;
}

const HOURS_A_DAY = 24;

function dataOf({ hours, lines, low, high }: OverlayInput): uPlot.AlignedData {
  return [hours, low, high, ...lines].map((column) => [...column]) as unknown as uPlot.AlignedData;
}

function axis(given: uPlot.Axis): uPlot.Axis {
  const font = inkFont(12, 1);
  return {
    ...{ font, stroke: inks.soft, size: 34 },
    grid: { stroke: inks.cell, width: 1 },
    ticks: { stroke: inks.line, width: 1, size: 4 },
    ...given,
  };
}

function dayStarts(_plot: uPlot, _axis: number, from: number, to: number): number[] {
  const days = Math.floor(to / HOURS_A_DAY) - Math.ceil(from / HOURS_A_DAY) + 1;
  return Array.from({ length: Math.max(0, days) }, (_, i) => (Math.ceil(from / HOURS_A_DAY) + i) * HOURS_A_DAY);
}

function optionsFor(
  input: OverlayInput,
  width: number,
  height: number,
  onCursor: (plot: uPlot) => void,
): uPlot.Options {
  const edge = { stroke: inks.bandEdge, width: 1, points: { show: false } };
  const lines = input.lines.map((_, index): uPlot.Series => {
    const { ink, dash } = lineStyle(index);
    return { stroke: ink, width: 2, dash: [...dash], spanGaps: false, points: { show: false } };
  });
  return {
    ...{ width, height },
    legend: { show: false },
    cursor: { y: false, points: { show: false }, drag: { x: false, y: false } },
    hooks: { setCursor: [onCursor] },
    // From closing on, so that the first day has its mark too.
    scales: { x: { time: false, range: (_plot, _from, to) => [0, to] } },
    axes: [
      axis({
        splits: dayStarts,
        values: (_plot, starts) => starts.map((hour) => input.dayLabel(hour / HOURS_A_DAY + 1)),
      }),
      axis({}),
    ],
    series: [{}, edge, edge, ...lines],
    bands: [{ series: [2, 1], fill: inks.band }],
  };
}

/** Draws into `host`; another input is another plot. */
export function createOverlayPlot(host: HTMLElement, input: OverlayInput, width: number, height: number): OverlayPlot {
  let isPlaced = false;
  // The library hears a mouse only; what a browser makes of a finger for it comes and is gone in one.
  let isTouched = false;
  const tell = ({ cursor }: uPlot) => {
    if (!isPlaced && !isTouched) input.onPoint(cursor.idx ?? null);
  };
  const plot = new uPlot(optionsFor(input, width, height, tell), dataOf(input), host);
  const touch = ({ pointerType, clientX }: PointerEvent) => {
    isTouched = pointerType === 'touch';
    const { left, right } = plot.over.getBoundingClientRect();
    if (isTouched) input.onPoint(clientX < left || clientX > right ? null : plot.posToIdx(clientX - left));
  };
  host.addEventListener('pointerdown', touch);
  host.addEventListener('pointermove', touch);
  return {
    point(cell) {
      const hour = cell === null ? undefined : input.hours[cell];
      isPlaced = true;
      plot.setCursor({ left: hour === undefined ? -10 : plot.valToPos(hour, 'x'), top: 0 });
      isPlaced = false;
    },
    resize: (newWidth, newHeight) => plot.setSize({ width: newWidth, height: newHeight }),
    destroy() {
      host.removeEventListener('pointerdown', touch);
      host.removeEventListener('pointermove', touch);
      plot.destroy();
    },
  };
}
