// The scales of a chart: values at the left of each lane, local times of the site below.
import { words } from '../strings.ts';
import { celsiusOf, inUnit, type TemperatureUnit } from '../temperature-unit.ts';
import { clockTime, dayOfMonth } from '../when.ts';
import { clockTicks } from './clock-ticks.ts';
import { inkFont, inks } from './inks.ts';
import { labelStep, labelValues, type ValueRange } from './lanes.ts';
import { type Painter, type Surface, stroke } from './surface.ts';

const pxPerTime = 62;
const pxPerDay = 46;
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

export interface AxisLabel {
  readonly ms: number;
  readonly text: string;
}

/** What stands under a window of that width in CSS pixels: local times of the site; where a day begins, the day. Pure. */
export function axisLabels(
  { fromSec, toSec }: { readonly fromSec: number; readonly toSec: number },
  widthPx: number,
  zone: string,
): readonly AxisLabel[] {
  const most = Math.max(2, Math.floor(widthPx / pxPerTime));
  const mostDays = Math.max(2, Math.floor(widthPx / pxPerDay));
  return clockTicks(fromSec * 1000, toSec * 1000, zone, most, mostDays).map((ms) => {
    const isDayBegin = dayOfMonth(ms, zone) !== dayOfMonth(ms - 1, zone);
    return { ms, text: isDayBegin ? dayOfMonth(ms, zone) : clockTime(ms, zone) };
  });
}

/** Local times below; where a day begins, the day. */
export const paintTimeAxis: Painter = (surface, { layout, zone }) => {
  if (layout.kind !== 'chart') return;
  const { ctx, box, ratio } = surface;
  ctx.font = inkFont(layout.textPx, ratio);
  ctx.fillStyle = inks.soft;
  ctx.strokeStyle = inks.soft;
  ctx.lineWidth = ratio;
  ctx.textAlign = 'center';
  ctx.textBaseline = 'top';
  const y = box.top + box.height;
  for (const { ms, text } of axisLabels(surface, box.width / ratio, zone)) {
    const x = surface.x(ms / 1000);
    stroke(ctx, x, y, x, y + 4 * ratio);
    const half = ctx.measureText(text).width / 2;
    if (x - half < box.left - 30 * ratio || x + half > box.left + box.width + 8 * ratio) continue;
    ctx.fillText(text, x, y + 6 * ratio);
  }
};
