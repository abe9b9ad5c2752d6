// Which mark stands for which event on the strip. Pure.
import type { ChartEvent } from '../../shared/api/chambers.ts';

export type MarkShape =
  | 'full'
  | 'crossed'
  | 'ring'
  | 'diamond'
  | 'open-diamond'
  | 'drop'
  | 'gap'
  | 'down'
  | 'up'
  | 'stroke';

export interface Mark {
  readonly atSec: number;
  readonly shape: MarkShape;
  /** Checks stand in the upper row, what was logged in the lower. */
  readonly row: 'check' | 'log';
}

const checkShapes: Record<string, MarkShape> = {
  yes: 'full',
  no: 'crossed',
  due: 'open-diamond',
  overdue: 'diamond',
  'to-come': 'ring',
};

const logShapes: Record<string, MarkShape> = { mist: 'drop', gap: 'gap', limp: 'down', erect: 'up' };

/** The mark of a check or log event; null for every other event. A check answered is logged too and is not marked twice. */
export function markOf(event: ChartEvent): Mark | null {
  const atSec = Date.parse(event.at) / 1000;
  if (event.kind === 'check') return { atSec, row: 'check', shape: checkShapes[event.what] ?? 'ring' };
  if (event.kind !== 'log' || event.what === 'check') return null;
  return { atSec, row: 'log', shape: logShapes[event.what] ?? 'stroke' };
}
