// The line of "now", the one accent of the strip, and the brackets round the window that the chart below it shows.
import { inks } from './inks.ts';
import { type Painter, stroke } from './surface.ts';

export const paintNow: Painter = (surface, { data }) => {
  const { ctx, box, ratio } = surface;
  if (data.nowSec === null || data.nowSec < surface.fromSec || data.nowSec > surface.toSec) return;
  const x = Math.min(box.left + box.width - ratio, Math.round(surface.x(data.nowSec)));
  ctx.strokeStyle = inks.now;
  ctx.lineWidth = 2 * ratio;
  stroke(ctx, x, box.top - 6 * ratio, x, box.top + box.height + 4 * ratio);
};

export const paintMarkedWindow: Painter = (surface, { marked }) => {
  if (marked === null) return;
  const { ctx, box, ratio } = surface;
  const left = Math.max(box.left + ratio, surface.x(marked[0]));
  const right = Math.min(box.left + box.width - ratio, surface.x(marked[1]));
  const reach = 5 * ratio;
  ctx.strokeStyle = inks.ink;
  ctx.lineWidth = 1.5 * ratio;
  for (const [x, inward] of [
    [left, reach],
    [right, -reach],
  ] as const) {
    stroke(ctx, x, box.top, x, box.top + box.height);
    stroke(ctx, x, box.top, x + inward, box.top);
    stroke(ctx, x, box.top + box.height, x + inward, box.top + box.height);
  }
};
