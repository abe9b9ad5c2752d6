// One flag out of many: the gravest finding wins.
import { FLAG, type Flag } from '../reading.ts';

/** From least to most telling: 9 < 2 < 1 < 3 < 4 (as ioos_qc aggregates). */
const precedence: readonly Flag[] = [FLAG.missing, FLAG.notEvaluated, FLAG.pass, FLAG.suspect, FLAG.fail];

/** The flag of highest precedence; no flags at all → missing. */
export function aggregateFlags(flags: readonly Flag[]): Flag {
  return flags.reduce<Flag>(
    (worst, flag) => (precedence.indexOf(flag) > precedence.indexOf(worst) ? flag : worst),
    FLAG.missing,
  );
}
