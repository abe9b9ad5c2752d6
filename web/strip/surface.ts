// What a painter may draw on: a canvas, the plot's box in canvas pixels, and how time and value become places.
// Painters know no chart library.

import type { ForecastView } from '../../shared/api/chambers.ts';
import type { TemperatureUnit } from '../temperature-unit.ts';
import type { StripLayout, ValueRange } from './lanes.ts';
import type { StripData } from './strip-data.ts';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Surface {
  readonly ctx: CanvasRenderingContext2D;
  readonly box: Box;
  /** Canvas pixels per CSS pixel. */
  readonly ratio: number;
  readonly fromSec: number;
  readonly toSec: number;
  x(seconds: number): number;
  humidityY(value: number): number;
  temperatureY(value: number): number;
  /** A fraction of the plot's height, from its top. */
  fractionY(fraction: number): number;
}

/** Everything a painter is told. `zone` is the site's. */
export interface Picture {
  readonly data: StripData;
  readonly layout: StripLayout;
  readonly humidityRange: ValueRange;
  readonly temperatureRange: ValueRange;
  readonly zone: string;
  /** In which temperatures are labelled; everything in `data` and `temperatureRange` is °C. */
  readonly unit: TemperatureUnit;
  /** What is drawn of the forecast; null where it would be thinner than can be seen. */
  readonly forecast: ForecastView | null;
  /** A window to mark on the strip, seconds; null for none. */
  readonly marked: readonly [number, number] | null;
}

export type Painter = (surface: Surface, picture: Picture) => void;

/** Clips to the plot while `paint` draws, so that nothing spills into the margins. */
export function clipped({ ctx, box }: Surface, paint: () => void): void {
  ctx.save();
  ctx.beginPath();
  ctx.rect(box.left, box.top, box.width, box.height);
  ctx.clip();
  paint();
  ctx.restore();
}

/** A straight stroke. */
export function stroke(ctx: CanvasRenderingContext2D, x1: number, y1: number, x2: number, y2: number): void {
  ctx.beginPath();
  ctx.moveTo(x1, y1);
  ctx.lineTo(x2, y2);
  ctx.stroke();
}

/** Diagonal hatching of a box in the current stroke style. */
export function hatch(surface: Surface, box: Box, stepPx: number): void {
  const { ctx, ratio } = surface;
  const step = stepPx * ratio;
  ctx.save();
  ctx.beginPath();
  ctx.rect(box.left, box.top, box.width, box.height);
  ctx.clip();
  // Begins at a multiple of the step, so that hatching of neighbours meets.
  const first = Math.floor((box.left - box.height) / step) * step;
  for (let x = first; x < box.left + box.width; x += step)
    stroke(ctx, x, box.top + box.height, x + box.height, box.top);
  ctx.restore();
}
