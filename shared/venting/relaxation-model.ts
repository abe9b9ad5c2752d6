// The exact course of dw/dt = −k·(w − house) + g·drive over one window: a start that fades, a source that fills up, and house air mixed in.
// It is linear in start and source; only the rate is not, which is what the fit rests on.

/** One stretch of a window, h, over which house air and drive are straight lines. `reading` = index of the reading at its end, or null. */
export interface ExchangeStep {
  readonly hours: number;
  readonly houseFrom: number;
  readonly houseTo: number;
  readonly driveFrom: number;
  readonly driveTo: number;
  readonly reading: number | null;
}

/** A window ready for fitting: readings at the start of the first step and at the end of those steps that name one. */
export interface WindowSeries {
  readonly steps: readonly ExchangeStep[];
  readonly values: readonly number[];
}

/** At each reading: w = start · `fading` + g · `filling` + `mixed`. */
export interface ModelColumns {
  readonly fading: readonly number[];
  readonly filling: readonly number[];
  readonly mixed: readonly number[];
}

/**
 * The columns for a rate k above 0, in 1/h. Exact while house air and drive are straight over each step: what follows a line from a to b over
 * Δ hours gains a·(1 − E) + (b − a)·(1 − u), with E = exp(−kΔ) and u = (1 − E)/(kΔ), and keeps E of what it had.
 */
export function modelColumns(series: WindowSeries, ratePerHour: number): ModelColumns {
  const columns = { fading: [1], filling: [0], mixed: [0] };
  let [fading, filling, mixed] = [1, 0, 0];
  for (const { hours, houseFrom, houseTo, driveFrom, driveTo, reading } of series.steps) {
    const lost = -Math.expm1(-ratePerHour * hours);
    const bent = 1 - lost / (ratePerHour * hours);
    fading *= 1 - lost;
    filling = filling * (1 - lost) + (driveFrom * lost + (driveTo - driveFrom) * bent) / ratePerHour;
    mixed = mixed * (1 - lost) + houseFrom * lost + (houseTo - houseFrom) * bent;
    if (reading === null) continue;
    columns.fading[reading] = fading;
    columns.filling[reading] = filling;
    columns.mixed[reading] = mixed;
  }
  return columns;
}
