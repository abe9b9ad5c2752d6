// The ground of a strip: day cells with their numbers, the stages under them, and the hatching of times without a reading.
import { words } from '../strings.ts';
import { stageWords } from './event-words.ts';
import { dayCells } from './healing-days.ts';
import { inkFont, inks } from './inks.ts';
import type { StripLayout } from './lanes.ts';
import { eventsOf, gapRuns } from './strip-data.ts';
import { clipped, hatch, type Painter, type Surface, stroke } from './surface.ts';

/** Upright lines between healing days and the day's number above each cell; today's number is bold. */
export const paintDays: Painter = (surface, { data, layout }) => {
  const { ctx, box, ratio } = surface;
  ctx.lineWidth = ratio;
  ctx.textBaseline = 'bottom';
  ctx.textAlign = 'left';
  let lastTextX = Number.NEGATIVE_INFINITY;
  for (const cell of dayCells(data.closedSec, surface.fromSec, surface.toSec)) {
    const x = Math.round(surface.x(cell.fromSec)) + 0.5 * ratio;
    ctx.strokeStyle = cell.day === 1 ? inks.soft : inks.cell;
    if (x >= box.left - ratio) stroke(ctx, x, box.top - 4 * ratio, x, box.top + box.height);
    const isToday = data.nowSec !== null && data.nowSec >= cell.fromSec && data.nowSec < cell.toSec;
    const textX = Math.max(x, box.left) + 3 * ratio;
    const hasRoom = textX - lastTextX > 16 * ratio && surface.x(cell.toSec) - textX > 8 * ratio;
    ctx.font = inkFont(layout.textPx, ratio, isToday ? 700 : 400);
    ctx.fillStyle = isToday ? inks.ink : inks.soft;
    const isFirstText = lastTextX === Number.NEGATIVE_INFINITY && layout.kind !== 'row';
    const text = isFirstText ? `${words.overview.day} ${cell.day}` : words.chart.dayCell(cell.day);
    // Half a numeral at the edge is none.
    if (!hasRoom || textX + ctx.measureText(text).width > box.left + box.width) continue;
    ctx.fillText(text, textX, box.top - 1 * ratio);
    lastTextX = textX + (isFirstText ? 24 * ratio : 0);
  }
};

/** The stages as brackets under the strip, each with its name where it fits. */
export const paintStages: Painter = (surface, { data, layout }) => {
  if (layout.kind === 'chart') return;
  const { ctx, box, ratio } = surface;
  const y = box.top + box.height + 3.5 * ratio;
  ctx.strokeStyle = inks.soft;
  ctx.lineWidth = ratio;
  ctx.font = inkFont(layout.textPx, ratio);
  ctx.fillStyle = inks.soft;
  ctx.textBaseline = 'top';
  ctx.textAlign = 'left';
  for (const stage of eventsOf(data, 'stage')) {
    const from = Math.max(box.left, surface.x(Date.parse(stage.at) / 1000));
    const untilSec = stage.until === null ? data.toSec : Date.parse(stage.until) / 1000;
    const until = Math.min(box.left + box.width, surface.x(untilSec));
    if (until - from < 2 * ratio) continue;
    stroke(ctx, from + ratio, y, until - ratio, y);
    stroke(ctx, from + ratio, y - 3 * ratio, from + ratio, y);
    const name = stageWords(stage);
    if (ctx.measureText(name).width < until - from - 4 * ratio) ctx.fillText(name, from + 2 * ratio, y + 2 * ratio);
  }
};

/** Grey hatching where nothing was heard, with the words where they fit: a gap stays a gap. */
export const paintGaps: Painter = (surface, { data, layout }) => {
  const { ctx, box, ratio } = surface;
  clipped(surface, () => {
    for (const run of gapRuns(data)) {
      const left = surface.x(data.starts[run.from] ?? data.fromSec);
      const right = surface.x((data.starts[run.to - 1] ?? data.fromSec) + data.bucketSeconds);
      ctx.strokeStyle = inks.hatch;
      ctx.lineWidth = ratio;
      hatch(surface, { left, top: box.top, width: right - left, height: box.height }, 5);
      const top = surface.fractionY((layout.marks.top + layout.marks.bottom) / 2);
      label(surface, layout, words.chart.readGap, { from: left, to: right, y: top });
    }
  });
};

/** Words in the middle of a stretch, on paper of their own; left out where they do not fit. */
function label(
  { ctx, box, ratio }: Surface,
  layout: StripLayout,
  text: string,
  { from, to, y }: { readonly from: number; readonly to: number; readonly y: number },
): void {
  const left = Math.max(from, box.left);
  const right = Math.min(to, box.left + box.width);
  ctx.font = inkFont(layout.textPx, ratio);
  const width = ctx.measureText(text).width + 8 * ratio;
  if (right - left < width + 4 * ratio) return;
  const middle = (left + right) / 2;
  const height = (layout.textPx + 6) * ratio;
  ctx.fillStyle = inks.paper;
  ctx.fillRect(middle - width / 2, y - height / 2, width, height);
  ctx.fillStyle = inks.soft;
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  ctx.fillText(text, middle, y);
}

/** A hold as a grey stretch with two upright strokes where it began: the plan stood still. */
export const paintHolds: Painter = (surface, { data, layout }) => {
  const { ctx, box, ratio } = surface;
  clipped(surface, () => {
    for (const hold of eventsOf(data, 'hold')) {
      const left = surface.x(Date.parse(hold.at) / 1000);
      const right = surface.x(hold.until === null ? (data.nowSec ?? data.toSec) : Date.parse(hold.until) / 1000);
      ctx.fillStyle = inks.holdWash;
      ctx.fillRect(left, box.top, Math.max(2 * ratio, right - left), box.height);
      ctx.fillStyle = inks.soft;
      for (const shift of [0, 4]) ctx.fillRect(left + shift * ratio, box.top, 1.5 * ratio, box.height);
      const y = surface.fractionY(layout.temperature.bottom) - 12 * ratio;
      label(surface, layout, words.chart.onHold, { from: left, to: right, y });
    }
  });
};
