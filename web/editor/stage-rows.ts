// The rows that the stages share where they stand beside each other, so that the same limit of all of them is on one line. Pure.
import type { Limit, LimitSet, StagePlan } from '../../shared/healing/profile.ts';
import type { LimitName, Quantity } from './edit-draft.ts';

export const rows = {
  ...{ name: 1, begin: 2, vpd: 13 },
  humidity: { title: 3, highHigh: 4, high: 5, low: 6, lowLow: 7 },
  temperature: { title: 8, highHigh: 9, high: 10, low: 11, lowLow: 12 },
} as const;

/** The place among the rows, for where the style makes columns of the stages. */
export function inRow(row: number | undefined): Record<string, number> {
  return row === undefined ? {} : { '--row': row };
}

const limitNames: Record<Quantity, readonly LimitName[]> = {
  humidity: ['high', 'low', 'lowLow'],
  temperature: ['highHigh', 'high', 'low', 'lowLow'],
};

/** The limits of a quantity, from the top down; of these stages together. */
export function limitNamesOf(quantity: Quantity, stages: readonly StagePlan[]): readonly LimitName[] {
  const has = (name: keyof LimitSet) => stages.some((plan) => plan[quantity][name] !== undefined);
  // Air cannot be wetter than saturated, so humidity has no outer high of its own; one that a file brought along stays.
  return quantity === 'humidity' && has('highHigh') ? ['highHigh', ...limitNames.humidity] : limitNames[quantity];
}

/** Whether a limit of the quantity is counted from the air of the house anywhere. */
export function isCountedFromHouse(quantity: Quantity, stages: readonly StagePlan[]): boolean {
  return stages.some((plan) =>
    Object.values(plan[quantity]).some((limit) => limit !== undefined && hasHouseEnd(limit)),
  );
}

function hasHouseEnd(limit: Limit): boolean {
  if (limit.shape === 'constant') return false;
  const ends = limit.shape === 'levels' ? limit.values : [limit.to];
  return ends.some((end) => typeof end !== 'number');
}
