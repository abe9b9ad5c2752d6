// The cone ahead of the hottest probe: wider where less is known. Drawn only where the service sends one.
import { inks } from './inks.ts';
import { clipped, type Painter } from './surface.ts';

export const paintForecast: Painter = (surface, { forecast }) => {
  if (forecast === null) return;
  const { ctx, ratio } = surface;
  const fromSec = Date.parse(forecast.from) / 1000;
  const places = (column: readonly number[]) =>
    column.map(
      (value, index) =>
        [surface.x(fromSec + (forecast.minutes[index] ?? 0) * 60), surface.temperatureY(value)] as const,
    );
  const [low, middle, high] = [places(forecast.low), places(forecast.middle), places(forecast.high)];
  const follow = (path: Path2D, line: readonly (readonly [number, number])[]) => {
    for (const [x, y] of line) path.lineTo(x, y);
  };
  clipped(surface, () => {
    const cone = new Path2D();
    follow(cone, [...high, ...low.reverse()]);
    cone.closePath();
    ctx.fillStyle = inks.temperatureCloud;
    ctx.fill(cone);
    ctx.strokeStyle = inks.temperature;
    ctx.lineWidth = 0.8 * ratio;
    ctx.stroke(cone);
    const centre = new Path2D();
    follow(centre, middle);
    ctx.lineWidth = 1.4 * ratio;
    ctx.setLineDash([2 * ratio, 3 * ratio]);
    ctx.stroke(centre);
    ctx.setLineDash([]);
  });
};
