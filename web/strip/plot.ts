// The healing strip on its canvas. It draws what it is given and never asks the service for anything.
import type { TemperatureUnit } from '../temperature-unit.ts';
import { uPlot } from './chart-library.ts';
import { inks } from './inks.ts';
import { type StripLayout, scaleForLane, type ValueRange, widenRange } from './lanes.ts';
import { paintAlarms } from './paint-alarms.ts';
import { paintTimeAxis, paintValueAxes } from './paint-axes.ts';
import { paintClouds } from './paint-clouds.ts';
import { paintHumidityCorridor, paintTemperatureLimits } from './paint-corridor.ts';
import { paintDays, paintGaps, paintStages } from './paint-ground.ts';
import { paintMarks } from './paint-marks.ts';
import { paintMarkedWindow, paintNow } from './paint-now.ts';
import { type Column, isolatedIndices, type StripData } from './strip-data.ts';
import type { Painter, Picture, Surface } from './surface.ts';

export interface PlotInput {
  readonly data: StripData;
  readonly layout: StripLayout;
  readonly zone: string;
  readonly unit: TemperatureUnit;
  /** Shown window, seconds. */
  readonly window: readonly [number, number];
  readonly marked: readonly [number, number] | null;
}

export interface Plot {
  /** Draws anew; the layout cannot change. */
  update(input: PlotInput): void;
  resize(width: number, height: number): void;
  /** The time under a place in the plot, seconds; `offsetPx` counts from the plot's left edge in CSS pixels. */
  secondsAt(offsetPx: number): number;
  /** The part that takes the pointer. */
  readonly surface: HTMLElement;
  destroy(): void;
}

const below: readonly Painter[] = [
  ...[paintGaps, paintHumidityCorridor, paintValueAxes, paintDays, paintTemperatureLimits, paintAlarms, paintClouds],
];
const above: readonly Painter[] = [paintMarks, paintStages, paintTimeAxis, paintNow, paintMarkedWindow];

function pictureOf({ data, layout, zone, unit, marked }: PlotInput): Picture {
  const { humidity, temperature, houseHumidity, corridor } = data.series;
  const humidityColumns = [humidity.min, humidity.max, houseHumidity, corridor.humidity.low];
  const temperatureColumns = [
    temperature.min,
    temperature.max,
    corridor.temperature.low,
    corridor.temperature.highHigh,
  ];
  return {
    ...{ data, layout, zone, unit, marked },
    humidityRange: widenRange({ low: 50, high: 100 }, humidityColumns, 10),
    temperatureRange: widenRange({ low: 16, high: 32 }, temperatureColumns, 4),
  };
}

function columnsOf(data: StripData): uPlot.AlignedData {
  const { series } = data;
  const drawn: Column[] = [data.middles, series.houseHumidity, series.humidity.mean, series.temperature.mean];
  return drawn.map((column) => [...column]) as unknown as uPlot.AlignedData;
}

function surfaceOf(plot: uPlot): Surface {
  const { left, top, width, height } = plot.bbox;
  return {
    ctx: plot.ctx,
    box: { left, top, width, height },
    ratio: uPlot.pxRatio,
    fromSec: plot.scales['x']?.min ?? 0,
    toSec: plot.scales['x']?.max ?? 1,
    x: (seconds) => plot.valToPos(seconds, 'x', true),
    humidityY: (value) => plot.valToPos(value, 'humidity', true),
    temperatureY: (value) => plot.valToPos(value, 'temperature', true),
    fractionY: (fraction) => top + fraction * height,
  };
}

function line(scale: string, stroke: string, width: number): uPlot.Series {
  return {
    ...{ scale, stroke, width },
    spanGaps: false,
    // A value alone between two gaps has no line: it is shown as a point.
    points: {
      show: true,
      size: 4,
      fill: stroke,
      filter: (plot, index) => [...isolatedIndices(plot.data[index] as unknown as Column)],
    },
  };
}

function rangeInLane(range: ValueRange, lane: StripLayout['humidity']): uPlot.Range.MinMax {
  const [min, max] = scaleForLane(range, lane);
  return [min, max];
}

interface Current {
  readonly input: PlotInput;
  readonly picture: Picture;
}

function setScales(plot: uPlot, { input, picture }: Current): void {
  const { layout, window } = input;
  const [humidityMin, humidityMax] = scaleForLane(picture.humidityRange, layout.humidity);
  const [temperatureMin, temperatureMax] = scaleForLane(picture.temperatureRange, layout.temperature);
  plot.setScale('x', { min: window[0], max: window[1] });
  plot.setScale('humidity', { min: humidityMin, max: humidityMax });
  plot.setScale('temperature', { min: temperatureMin, max: temperatureMax });
}

function optionsFor(current: () => Current, width: number, height: number): uPlot.Options {
  const { layout } = current().input;
  const isRow = layout.kind === 'row';
  const run = (painters: readonly Painter[]) => (plot: uPlot) => {
    const { picture } = current();
    plot.ctx.save();
    for (const paint of painters) paint(surfaceOf(plot), picture);
    plot.ctx.restore();
  };
  return {
    ...{ width, height },
    padding: [...layout.padding],
    legend: { show: false },
    cursor: isRow ? { show: false } : { y: false, points: { show: false }, drag: { x: false, y: false } },
    axes: [{ show: false }, { show: false }, { show: false }],
    scales: {
      x: { time: false, range: () => [...current().input.window] },
      humidity: { range: () => rangeInLane(current().picture.humidityRange, layout.humidity) },
      temperature: { range: () => rangeInLane(current().picture.temperatureRange, layout.temperature) },
    },
    series: [
      {},
      line('humidity', inks.house, 1),
      line('humidity', inks.humidity, isRow ? 1.6 : 2),
      line('temperature', inks.temperature, isRow ? 1.6 : 2),
    ],
    hooks: { drawClear: [run(below)], draw: [run(above)] },
  };
}

/** Draws a strip into `host`. */
export function createPlot(host: HTMLElement, first: PlotInput, width: number, height: number): Plot {
  let current: Current = { input: first, picture: pictureOf(first) };
  const plot = new uPlot(
    optionsFor(() => current, width, height),
    columnsOf(first.data),
    host,
  );
  return {
    update(input) {
      const hasNewData = input.data !== current.input.data;
      current = { input, picture: pictureOf(input) };
      plot.batch(() => {
        if (hasNewData) plot.setData(columnsOf(input.data), false);
        setScales(plot, current);
      });
      plot.redraw(true);
    },
    resize: (newWidth, newHeight) => plot.setSize({ width: newWidth, height: newHeight }),
    secondsAt: (offsetPx) => plot.posToVal(offsetPx, 'x'),
    surface: plot.over,
    destroy: () => plot.destroy(),
  };
}
