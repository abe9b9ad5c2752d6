// The marks between the two lanes: checks as dots, log entries as small strokes under them.
import { inks } from './inks.ts';
import { type Mark, type MarkShape, markOf } from './marks.ts';
import { type Painter, stroke } from './surface.ts';

type Pen = (ctx: CanvasRenderingContext2D, x: number, y: number, radius: number) => void;

function disc(ctx: CanvasRenderingContext2D, x: number, y: number, radius: number): void {
  ctx.beginPath();
  ctx.arc(x, y, radius, 0, 2 * Math.PI);
}

function diamond(ctx: CanvasRenderingContext2D, x: number, y: number, radius: number): void {
  const reach = radius * 1.5;
  ctx.beginPath();
  ctx.moveTo(x, y - reach);
  ctx.lineTo(x + reach, y);
  ctx.lineTo(x, y + reach);
  ctx.lineTo(x - reach, y);
  ctx.closePath();
}

const pens: Record<MarkShape, Pen> = {
  full: (ctx, x, y, radius) => {
    disc(ctx, x, y, radius);
    ctx.fill();
  },
  ring: (ctx, x, y, radius) => {
    disc(ctx, x, y, radius);
    ctx.stroke();
  },
  crossed: (ctx, x, y, radius) => {
    stroke(ctx, x - radius, y - radius, x + radius, y + radius);
    stroke(ctx, x - radius, y + radius, x + radius, y - radius);
  },
  diamond: (ctx, x, y, radius) => {
    ctx.fillStyle = inks.now;
    diamond(ctx, x, y, radius);
    ctx.fill();
  },
  'open-diamond': (ctx, x, y, radius) => {
    ctx.strokeStyle = inks.now;
    diamond(ctx, x, y, radius);
    ctx.stroke();
  },
  drop: (ctx, x, y, radius) => {
    ctx.beginPath();
    ctx.moveTo(x, y - 1.4 * radius);
    ctx.quadraticCurveTo(x + 1.6 * radius, y + radius, x, y + radius);
    ctx.quadraticCurveTo(x - 1.6 * radius, y + radius, x, y - 1.4 * radius);
    ctx.fill();
  },
  gap: (ctx, x, y, radius) => {
    stroke(ctx, x - radius, y + radius, x - radius, y - radius);
    stroke(ctx, x + radius, y + radius, x + radius, y - radius);
  },
  down: (ctx, x, y, radius) => {
    stroke(ctx, x - radius, y - radius, x, y + radius);
    stroke(ctx, x + radius, y - radius, x, y + radius);
  },
  up: (ctx, x, y, radius) => {
    stroke(ctx, x - radius, y + radius, x, y - radius);
    stroke(ctx, x + radius, y + radius, x, y - radius);
  },
  stroke: (ctx, x, y, radius) => stroke(ctx, x, y - radius, x, y + radius),
};

function isMark(mark: Mark | null): mark is Mark {
  return mark !== null;
}

export const paintMarks: Painter = (surface, { data, layout }) => {
  const { ctx, box, ratio } = surface;
  const radius = (layout.kind === 'row' ? 3 : 4) * ratio;
  const { top, bottom } = layout.marks;
  const rowY = { check: top + (bottom - top) * 0.3, log: top + (bottom - top) * 0.85 };
  for (const mark of data.series.events.map(markOf).filter(isMark)) {
    const x = surface.x(mark.atSec);
    if (x < box.left - radius || x > box.left + box.width + radius) continue;
    const isAhead = data.nowSec !== null && mark.atSec > data.nowSec;
    ctx.fillStyle = inks.ink;
    ctx.strokeStyle = isAhead ? inks.soft : inks.ink;
    ctx.lineWidth = 1.4 * ratio;
    pens[mark.shape](ctx, x, surface.fractionY(rowY[mark.row]), mark.row === 'log' ? radius * 0.8 : radius);
  }
};
