// The healing strip on its canvas. It draws what it is given and never asks the service for anything.
import type { ForecastView } from '../../shared/api/chambers.ts';
import type { TemperatureUnit } from '../temperature-unit.ts';
import { uPlot } from './chart-library.ts';
import { inks } from './inks.ts';
import { type StripLayout, scaleForLane, type ValueRange } from './lanes.ts';
import { paintAlarms } from './paint-alarms.ts';
import { paintTimeAxis, paintValueAxes } from './paint-axes.ts';
import { paintClouds } from './paint-clouds.ts';
import { paintHumidityCorridor, paintTemperatureLimits } from './paint-corridor.ts';
import { paintDoubted } from './paint-doubted.ts';
import { paintForecast } from './paint-forecast.ts';
import { paintDays, paintGaps, paintHolds, paintStages } from './paint-ground.ts';
import { paintMarks } from './paint-marks.ts';
import { paintMarkedWindow, paintNow } from './paint-now.ts';
import { drawnColumn, isolatedIndices, type StripData } from './strip-data.ts';
import type { Painter, Picture, Surface } from './surface.ts';
import { valueRanges } from './value-ranges.ts';

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
  /** Puts the cross-hair on an instant, seconds; null takes it away. It stays on its instant when the window moves. */
  point(atSec: number | null): void;
  /** The time under a place in the plot, seconds; `offsetPx` counts from the plot's left edge in CSS pixels. */
  secondsAt(offsetPx: number): number;
  /** The part that takes the pointer. */
  readonly surface: HTMLElement;
  destroy(): void;
}

const below: readonly Painter[] = [
  ...[paintHumidityCorridor, paintValueAxes, paintDays, paintTemperatureLimits, paintGaps, paintHolds, paintAlarms],
  ...[paintClouds, paintForecast],
];
const above: readonly Painter[] = [
  ...[paintDoubted, paintMarks, paintStages, paintTimeAxis, paintNow, paintMarkedWindow],
];

/** A cone shorter than this share of the window would be a smudge beside "now", and must not stretch the scale. */
const leastConeShare = 0.01;

function visibleForecast({ series }: StripData, [from, to]: PlotInput['window']): ForecastView | null {
  const { forecast } = series;
  const seconds = (forecast?.minutes.at(-1) ?? 0) * 60;
  return seconds / (to - from) < leastConeShare ? null : forecast;
}

function pictureOf({ data, layout, zone, unit, marked, window }: PlotInput): Picture {
  const forecast = visibleForecast(data, window);
  const ranges = valueRanges(data.series, layout.kind, forecast);
  return {
    ...{ data, layout, zone, unit, marked, forecast },
    humidityRange: ranges.humidity,
    temperatureRange: ranges.temperature,
  };
}

function columnsOf({ data, layout }: PlotInput): uPlot.AlignedData {
  const { series, middles } = data;
  // A row is too small for a second line among the temperatures.
  const houseTemperature = layout.kind === 'chart' ? series.houseTemperature : middles.map(() => null);
  const drawn = [series.houseHumidity, houseTemperature, series.humidity.mean, series.temperature.mean];
  return [[...middles], ...drawn.map((column) => drawnColumn(column, data))] as uPlot.AlignedData;
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
      filter: (plot, index) => [...isolatedIndices([...(plot.data[index] ?? [])])],
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
    cursor: { show: layout.kind === 'chart', y: false, points: { show: false }, drag: { x: false, y: false } },
    axes: [{ show: false }, { show: false }, { show: false }],
    scales: {
      x: { time: false, range: () => [...current().input.window] },
      humidity: { range: () => rangeInLane(current().picture.humidityRange, layout.humidity) },
      temperature: { range: () => rangeInLane(current().picture.temperatureRange, layout.temperature) },
    },
    series: [
      {},
      line('humidity', inks.house, 1),
      line('temperature', inks.house, 1),
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
    columnsOf(first),
    host,
  );
  let pointedSec: number | null = null;
  const showCrossHair = () => {
    const left = pointedSec === null ? -10 : plot.valToPos(pointedSec, 'x');
    const isInside = left >= 0 && left <= plot.over.clientWidth;
    plot.setCursor({ left: isInside ? left : -10, top: isInside ? 0 : -10 }, false);
  };
  return {
    update(input) {
      const hasNewData = input.data !== current.input.data;
      current = { input, picture: pictureOf(input) };
      plot.batch(() => {
        if (hasNewData) plot.setData(columnsOf(input), false);
        setScales(plot, current);
      });
      plot.redraw(true);
      showCrossHair();
    },
    point(atSec) {
      pointedSec = atSec;
      showCrossHair();
    },
    resize: (newWidth, newHeight) => plot.setSize({ width: newWidth, height: newHeight }),
    secondsAt: (offsetPx) => plot.posToVal(offsetPx, 'x'),
    surface: plot.over,
    destroy: () => plot.destroy(),
  };
}
