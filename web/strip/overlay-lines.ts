// How the lines of batches laid over each other are told apart, and their values by half days. Pure.
import type { OverlayView } from '../../shared/api/learning.ts';

export interface LineStyle {
  readonly ink: string;
  /** Lengths of stroke and gap in CSS pixels; empty = drawn through. */
  readonly dash: readonly number[];
}

/** Told apart by dash first and ink second; eight, as many as may be laid over each other. */
export const lineStyles: readonly LineStyle[] = [
  { ink: '#14576a', dash: [] },
  { ink: '#8a4315', dash: [8, 4] },
  { ink: '#1d2a25', dash: [2, 3] },
  { ink: '#6b4a86', dash: [10, 3, 2, 3] },
  { ink: '#7a6a00', dash: [4, 4] },
  { ink: '#9a2f5b', dash: [14, 4] },
  { ink: '#2c6e49', dash: [2, 3, 2, 8] },
  { ink: '#4a5568', dash: [6, 2, 2, 2, 2, 2] },
];

/** The style of the n-th line. */
export function lineStyle(index: number): LineStyle {
  return lineStyles[index % lineStyles.length] ?? { ink: '#1d2a25', dash: [] };
}

export interface OverlayRow {
  readonly fromHour: number;
  /** One a batch, in their order; null where nothing is known. */
  readonly batches: readonly { readonly humidity: number | null; readonly temperature: number | null }[];
}

function meanOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
}

/** Means of `hours` each, as far as the grid reaches; gaps stay null. */
export function overlayRows(view: Pick<OverlayView, 'hours' | 'batches'>, hours: number): readonly OverlayRow[] {
  const count = Math.floor((view.hours.at(-1) ?? -1) / hours) + 1;
  return Array.from({ length: count }, (_, row) => {
    const fromHour = row * hours;
    const isInside = (_value: unknown, cell: number) => {
      const hour = view.hours[cell] ?? -1;
      return hour >= fromHour && hour < fromHour + hours;
    };
    const batches = view.batches.map(({ humidity, temperature }) => ({
      humidity: meanOf(humidity.filter(isInside)),
      temperature: meanOf(temperature.filter(isInside)),
    }));
    return { fromHour, batches };
  });
}
