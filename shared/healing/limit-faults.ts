// What a shape cannot say of the limits: that they keep their order through the whole stage and lie where air can be.
import { limitPieces, type Piece, valueOfPiece } from './limit-course.ts';
import type { LimitName, PlanFault } from './plan-fault.ts';
import type { Limit, LimitEnd, LimitSet } from './profile.ts';
import type { StagePart } from './profile-parts.ts';

type Quantity = 'temperature' | 'humidity';

/** Beyond these a number is a slip of the hand that would keep an alarm silent. */
const reach: Readonly<Record<Quantity, { least: number; most: number }>> = {
  temperature: { least: -20, most: 60 },
  humidity: { least: 0, most: 100 },
};

const names: readonly LimitName[] = ['lowLow', 'low', 'high', 'highHigh'];

/** Faults of the limits of one stage, house ends taken at their fallback. */
export function limitFaults(stage: StagePart): PlanFault[] {
  return (['temperature', 'humidity'] as const).flatMap((quantity) => {
    const limits = stage[quantity];
    if (limits === null) return [];
    const where = `${stage.where}/${quantity}`;
    return [
      ...names.flatMap((name) => reachFaults(limits[name], `${where}/${name}`, quantity)),
      ...orderFaults(limits, where, quantity),
    ];
  });
}

function reachFaults(limit: Limit | undefined, where: string, quantity: Quantity): PlanFault[] {
  const { least, most } = reach[quantity];
  const strays = limit === undefined ? [] : numbersOf(limit).filter((value) => value < least || value > most);
  return strays.map((value) => ({ where, kind: 'out-of-reach', quantity, value, least, most }));
}

/** `low` and `high` are always there, so that neighbours cover all. */
const neighbours: readonly (readonly [LimitName, LimitName])[] = [
  ['lowLow', 'low'],
  ['low', 'high'],
  ['high', 'highHigh'],
];

function orderFaults(limits: LimitSet, where: string, quantity: Quantity): PlanFault[] {
  return neighbours.flatMap(([lower, upper]) => {
    const [below, above] = [limits[lower], limits[upper]];
    return below === undefined || above === undefined
      ? []
      : pairFaults({ lower, upper, below, above, where, quantity });
  });
}

interface Pair {
  readonly lower: LimitName;
  readonly upper: LimitName;
  readonly below: Limit;
  readonly above: Limit;
  readonly where: string;
  readonly quantity: Quantity;
}

function pairFaults({ lower, upper, below, above, where, quantity }: Pair): PlanFault[] {
  const place = `${where}/${lower}`;
  const crossing = firstCrossing(below, above);
  if (crossing !== null) {
    const percent = Math.round(crossing.share * 100);
    const { below: lowValue, above: highValue } = crossing;
    return [{ where: place, kind: 'crossing', lower, upper, quantity, below: lowValue, above: highValue, percent }];
  }
  const [lowerOffset, upperOffset] = [lastOffset(below), lastOffset(above)];
  if (lowerOffset === null || upperOffset === null || lowerOffset <= upperOffset) return [];
  const by = lowerOffset - upperOffset;
  return [{ where: place, kind: 'house-crossing', lower, upper, quantity, by }];
}

/** A stage of length 1, walked from border to border of the pieces: between them both limits are straight. */
function firstCrossing(below: Limit, above: Limit): { share: number; below: number; above: number } | null {
  const span = { stage: 'closed', startMs: 0, endMs: 1 } as const;
  const [lower, upper] = [limitPieces(below, span, fallbackOf), limitPieces(above, span, fallbackOf)];
  const borders = [...new Set([...lower, ...upper].flatMap((piece) => [piece.fromMs, piece.toMs]))].sort(
    (a, b) => a - b,
  );
  for (const [index, from] of borders.slice(0, -1).entries()) {
    const to = borders[index + 1] ?? from;
    for (const share of [from, to]) {
      const [belowValue, aboveValue] = [valueBetween(lower, from, share), valueBetween(upper, from, share)];
      if (belowValue > aboveValue) return { share, below: rounded(belowValue), above: rounded(aboveValue) };
    }
  }
  return null;
}

/** The value at `at` on the piece that covers what follows `from`. */
function valueBetween(pieces: readonly Piece[], from: number, at: number): number {
  const piece = pieces.findLast(({ fromMs }) => fromMs <= from);
  return piece === undefined ? Number.NaN : valueOfPiece(piece, at);
}

function endsOf(limit: Limit): readonly LimitEnd[] {
  if (limit.shape === 'constant') return [limit.value];
  return limit.shape === 'levels' ? limit.values : [limit.to];
}

function numbersOf(limit: Limit): number[] {
  const starts = limit.shape === 'ramp' || limit.shape === 'stairs' ? [limit.from] : [];
  return [...starts, ...endsOf(limit).map(fallbackOf)];
}

function lastOffset(limit: Limit): number | null {
  const end = endsOf(limit).at(-1);
  return end === undefined || typeof end === 'number' ? null : end.houseOffset;
}

function fallbackOf(end: LimitEnd): number {
  return typeof end === 'number' ? end : end.fallback;
}

function rounded(value: number): number {
  return Math.round(value * 100) / 100;
}
