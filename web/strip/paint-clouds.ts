// The lowest and highest of each bucket as a pale cloud round the line, so that a spike never vanishes at a wide zoom.
import { inks } from './inks.ts';
import { type Column, runsWhere, type StripData } from './strip-data.ts';
import { clipped, type Painter, type Surface } from './surface.ts';

function cloud(surface: Surface, data: StripData, min: Column, max: Column, toY: (value: number) => number): Path2D {
  const path = new Path2D();
  const isHeard = (index: number) => (min[index] ?? null) !== null && (max[index] ?? null) !== null;
  // A bucket is never thinner than a pixel and a half, or a spike in one of a thousand would not be seen.
  const halfThin = 0.75 * surface.ratio;
  for (const run of runsWhere(min.length, isHeard)) {
    const upper: [number, number][] = [];
    const lower: [number, number][] = [];
    for (let index = run.from; index < run.to; index++) {
      const left = surface.x(data.starts[index] ?? 0);
      const right = Math.max(left + 1, surface.x((data.starts[index] ?? 0) + data.bucketSeconds));
      const top = toY(max[index] ?? 0) - halfThin;
      const bottom = toY(min[index] ?? 0) + halfThin;
      upper.push([left, top], [right, top]);
      lower.push([left, bottom], [right, bottom]);
    }
    const outline = [...upper, ...lower.reverse()];
    outline.forEach(([x, y], index) => {
      if (index === 0) path.moveTo(x, y);
      else path.lineTo(x, y);
    });
    path.closePath();
  }
  return path;
}

/** Both clouds. */
export const paintClouds: Painter = (surface, { data }) => {
  const { ctx } = surface;
  const { humidity, temperature } = data.series;
  clipped(surface, () => {
    ctx.fillStyle = inks.humidityCloud;
    ctx.fill(cloud(surface, data, humidity.min, humidity.max, surface.humidityY));
    ctx.fillStyle = inks.temperatureCloud;
    ctx.fill(cloud(surface, data, temperature.min, temperature.max, surface.temperatureY));
  });
};
