// One flag out of many: the gravest finding wins.
import { FLAG, type Flag } from '../reading.ts';

/** From least to most telling: 9 < 2 < 1 < 3 < 4 (as ioos_qc aggregates). */
const precedence: Readonly<Record<Flag, number>> = {
  [FLAG.missing]: 0,
  [FLAG.notEvaluated]: 1,
  [FLAG.pass]: 2,
  [FLAG.suspect]: 3,
  [FLAG.fail]: 4,
};

/** The flag of highest precedence; no flags at all → missing. */
export function aggregateFlags(flags: readonly Flag[]): Flag {
  let worst: Flag = FLAG.missing;
  for (const flag of flags) if (precedence[flag] > precedence[worst]) worst = flag;
  return worst;
}
