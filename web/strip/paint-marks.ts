// The marks between the two lanes: checks as dots, log entries as small strokes under them.
import { inks } from './inks.ts';
import { type Mark, type MarkShape, markOf } from './marks.ts';
import type { StripData } from './strip-data.ts';
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

interface Placed {
  readonly mark: Mark;
  readonly x: number;
  /** 0 = in its row; 1 = under it, where a mark of another shape stands in the way. */
  readonly level: 0 | 1;
}

/**
 * Where marks stand so that none hides another: one on top of a mark of its own shape is left out, since they would look like one; one on another
 * shape goes a level down where there is one. `marks` in order of time. Pure.
 */
export function placeMarks(
  marks: readonly Mark[],
  toX: (seconds: number) => number,
  apart: number,
  levels: 1 | 2,
): readonly Placed[] {
  const placed: Placed[] = [];
  for (const mark of marks) {
    const x = toX(mark.atSec);
    const near = placed.filter((other) => other.mark.row === mark.row && Math.abs(other.x - x) < apart);
    if (near.some((other) => other.mark.shape === mark.shape && looksLikeOne(other.mark, mark))) continue;
    placed.push({
      mark,
      x,
      level: levels === 2 && mark.row === 'log' && near.some(({ level }) => level === 0) ? 1 : 0,
    });
  }
  return placed;
}

/** Rings to come that overlap still show that there are several. */
function looksLikeOne(one: Mark, other: Mark): boolean {
  return one.row === 'log' || one.atSec === other.atSec;
}

function marksOf({ series }: StripData): readonly Mark[] {
  return series.events.flatMap((event) => markOf(event) ?? []).sort((one, other) => one.atSec - other.atSec);
}

export const paintMarks: Painter = (surface, { data, layout }) => {
  const { ctx, box, ratio } = surface;
  const isRow = layout.kind === 'row';
  const radius = (isRow ? 3.2 : 4.5) * ratio;
  const { top, bottom } = layout.marks;
  const at = (share: number) => surface.fractionY(top + (bottom - top) * share);
  const rowY = { check: [at(0.25), at(0.25)], log: isRow ? [at(0.85), at(0.85)] : [at(0.62), at(0.92)] } as const;
  for (const { mark, x, level } of placeMarks(marksOf(data), surface.x, 2.4 * radius, isRow ? 1 : 2)) {
    if (x < box.left - radius || x > box.left + box.width + radius) continue;
    const isAhead = data.nowSec !== null && mark.atSec > data.nowSec;
    ctx.fillStyle = inks.ink;
    ctx.strokeStyle = isAhead ? inks.soft : inks.ink;
    ctx.lineWidth = 1.4 * ratio;
    pens[mark.shape](ctx, x, rowY[mark.row][level], mark.row === 'log' ? radius * 0.8 : radius);
  }
};
