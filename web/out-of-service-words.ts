// Which rules raise no alarm in a chamber, in one line. Pure.
import type { ChamberView } from '../shared/api/chambers.ts';
import { words } from './strings.ts';

/** The rules that are out of service by name; '' when all of them watch. */
export function outOfServiceWords(outOfService: ChamberView['outOfService']): string {
  if (outOfService.length === 0) return '';
  return words.service.here(outOfService.map(({ rule }) => words.rules[rule]));
}
