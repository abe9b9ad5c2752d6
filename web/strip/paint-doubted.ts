// Small flags at the foot of the picture where readings were flagged as suspect or failed: they are in no line, and that must be seen.
import { inks } from './inks.ts';
import type { StripData } from './strip-data.ts';
import { type Painter, stroke } from './surface.ts';

/** Places of the flags, seconds: the middle of each bucket with a doubted reading, none nearer to the one before than `apartSec`. Pure. */
export function flagPlaces({ middles, series }: StripData, apartSec: number): readonly number[] {
  const places: number[] = [];
  middles.forEach((at, index) => {
    const last = places.at(-1);
    const isDoubted = (series.badShare[index] ?? 0) > 0;
    if (isDoubted && (last === undefined || at - last >= apartSec)) places.push(at);
  });
  return places;
}

export const paintDoubted: Painter = (surface, { data, layout }) => {
  const { ctx, box, ratio } = surface;
  const height = (layout.kind === 'row' ? 6 : 9) * ratio;
  const secondsAPx = (surface.toSec - surface.fromSec) / box.width;
  ctx.fillStyle = inks.ink;
  ctx.strokeStyle = inks.ink;
  ctx.lineWidth = ratio;
  const foot = box.top + box.height - ratio;
  for (const at of flagPlaces(data, height * secondsAPx)) {
    const x = Math.round(surface.x(at)) + 0.5 * ratio;
    if (x < box.left || x > box.left + box.width) continue;
    stroke(ctx, x, foot, x, foot - height);
    ctx.beginPath();
    ctx.moveTo(x, foot - height);
    ctx.lineTo(x + height * 0.75, foot - height * 0.72);
    ctx.lineTo(x, foot - height * 0.44);
    ctx.fill();
  }
};
