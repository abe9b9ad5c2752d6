// The scales of a chart: values at the left of each lane, local times of the site below.
import { words } from '../strings.ts';
import { celsiusOf, inUnit, type TemperatureUnit } from '../temperature-unit.ts';
import { clockTime, weekdayAndTime } from '../when.ts';
import { clockTicks } from './clock-ticks.ts';
import { inkFont, inks } from './inks.ts';
import { labelStep, labelValues, type ValueRange } from './lanes.ts';
import { type Painter, type Surface, stroke } from './surface.ts';

const pxPerTick = 74;
const mostValues = 6;
const humiditySteps = [10, 20] as const;
const temperatureSteps: Record<TemperatureUnit, readonly number[]> = { '°C': [4, 8, 16], '°F': [5, 10, 20] };

interface Scale {
  /** Written over the values. */
  readonly unit: string;
  /** In that unit. */
  readonly range: ValueRange;
  readonly steps: readonly number[];
  readonly toY: (value: number) => number;
}

function paintValues(surface: Surface, { unit, range, steps, toY }: Scale): void {
  const { ctx, box, ratio } = surface;
  ctx.textAlign = 'right';
  ctx.textBaseline = 'middle';
  ctx.fillText(unit, box.left - 5 * ratio, toY(range.high) - 14 * ratio);
  for (const value of labelValues(range, labelStep(range, steps, mostValues))) {
    const y = Math.round(toY(value)) + 0.5 * ratio;
    ctx.strokeStyle = inks.cell;
    stroke(ctx, box.left, y, box.left + box.width, y);
    ctx.fillText(String(value), box.left - 5 * ratio, y);
  }
}

/** Values of both lanes and their faint lines. */
export const paintValueAxes: Painter = (surface, { layout, humidityRange, temperatureRange, unit }) => {
  if (layout.kind === 'row') return;
  const { ctx, ratio } = surface;
  ctx.font = inkFont(layout.textPx, ratio);
  ctx.lineWidth = ratio;
  ctx.fillStyle = inks.humidity;
  const { humidity } = words.units;
  paintValues(surface, { unit: humidity, range: humidityRange, steps: humiditySteps, toY: surface.humidityY });
  ctx.fillStyle = inks.temperature;
  paintValues(surface, {
    unit,
    range: { low: inUnit(temperatureRange.low, unit), high: inUnit(temperatureRange.high, unit) },
    steps: temperatureSteps[unit],
    toY: (value) => surface.temperatureY(celsiusOf(value, unit)),
  });
};

/** Local times below; midnight is written with its weekday. */
export const paintTimeAxis: Painter = (surface, { layout, zone }) => {
  if (layout.kind === 'row') return;
  const { ctx, box, ratio } = surface;
  ctx.font = inkFont(layout.textPx, ratio);
  ctx.fillStyle = inks.soft;
  ctx.strokeStyle = inks.soft;
  ctx.lineWidth = ratio;
  ctx.textAlign = 'center';
  ctx.textBaseline = 'top';
  const y = box.top + box.height;
  const most = Math.max(2, Math.floor(box.width / ratio / pxPerTick));
  for (const ms of clockTicks(surface.fromSec * 1000, surface.toSec * 1000, zone, most)) {
    const x = surface.x(ms / 1000);
    stroke(ctx, x, y, x, y + 4 * ratio);
    const time = clockTime(ms, zone);
    const text = time === '00:00' ? (weekdayAndTime(ms, zone).split(' ')[0] ?? time) : time;
    const half = ctx.measureText(text).width / 2;
    if (x - half < box.left - 30 * ratio || x + half > box.left + box.width + 8 * ratio) continue;
    ctx.fillText(text, x, y + 6 * ratio);
  }
};
