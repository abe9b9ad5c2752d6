// The corridor, drawn from the limits themselves: the humidity band with its steps and the temperature limits.
import { inks } from './inks.ts';
import { type Column, runsWhere, type StripData } from './strip-data.ts';
import { clipped, type Painter, type Surface } from './surface.ts';

function stepPath(surface: Surface, data: StripData, column: Column, toY: (value: number) => number): Path2D {
  const path = new Path2D();
  for (const run of runsWhere(column.length, (index) => (column[index] ?? null) !== null)) {
    for (let index = run.from; index < run.to; index++) {
      const y = toY(column[index] ?? 0);
      const start = surface.x(data.starts[index] ?? 0);
      if (index === run.from) path.moveTo(start, y);
      else path.lineTo(start, y);
      path.lineTo(surface.x((data.starts[index] ?? 0) + data.bucketSeconds), y);
    }
  }
  return path;
}

function bandPath(surface: Surface, data: StripData, low: Column, high: Column): Path2D {
  const path = new Path2D();
  const isBand = (index: number) => (low[index] ?? null) !== null && (high[index] ?? null) !== null;
  for (const run of runsWhere(low.length, isBand)) {
    const ends: [number, number, number][] = [];
    for (let index = run.from; index < run.to; index++)
      ends.push([surface.x(data.starts[index] ?? 0), surface.x((data.starts[index] ?? 0) + data.bucketSeconds), index]);
    const firstX = ends[0]?.[0] ?? 0;
    path.moveTo(firstX, surface.humidityY(high[run.from] ?? 0));
    for (const [left, right, index] of ends) {
      path.lineTo(left, surface.humidityY(high[index] ?? 0));
      path.lineTo(right, surface.humidityY(high[index] ?? 0));
    }
    for (const [left, right, index] of ends.reverse()) {
      path.lineTo(right, surface.humidityY(low[index] ?? 0));
      path.lineTo(left, surface.humidityY(low[index] ?? 0));
    }
    path.closePath();
  }
  return path;
}

function withPart(surface: Surface, fromX: number, toX: number, paint: () => void): void {
  const { ctx, box } = surface;
  ctx.save();
  ctx.beginPath();
  ctx.rect(fromX, box.top, Math.max(0, toX - fromX), box.height);
  ctx.clip();
  paint();
  ctx.restore();
}

/** The green band: full before now, paler ahead, its low edge inked since that is where wilting begins. */
export const paintHumidityCorridor: Painter = (surface, { data }) => {
  const { ctx, box, ratio } = surface;
  const { low, high } = data.series.corridor.humidity;
  const band = bandPath(surface, data, low, high);
  const edge = stepPath(surface, data, low, surface.humidityY);
  const end = box.left + box.width;
  const now = data.nowSec === null ? end : Math.min(end, Math.max(box.left, surface.x(data.nowSec)));
  const paint = (fill: string) => () => {
    ctx.fillStyle = fill;
    ctx.fill(band);
    ctx.strokeStyle = inks.bandEdge;
    ctx.lineWidth = ratio;
    ctx.stroke(edge);
  };
  withPart(surface, box.left, now, paint(inks.band));
  withPart(surface, now, end, paint(inks.bandAhead));
};

/** The temperature limits as dashes; the outer limit in long ones. */
export const paintTemperatureLimits: Painter = (surface, { data }) => {
  const { ctx, ratio } = surface;
  const { low, high, highHigh } = data.series.corridor.temperature;
  clipped(surface, () => {
    ctx.strokeStyle = inks.limit;
    ctx.lineWidth = 1.2 * ratio;
    const lines: readonly [Column, readonly number[]][] = [
      [low, [2, 3]],
      [high, [4, 3]],
      [highHigh, [10, 4]],
    ];
    for (const [column, dashes] of lines) {
      ctx.setLineDash(dashes.map((dash) => dash * ratio));
      ctx.stroke(stepPath(surface, data, column, surface.temperatureY));
    }
    ctx.setLineDash([]);
  });
};
