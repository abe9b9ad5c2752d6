// The probes as people look for them: those that wait first, then by chamber, then the house. Pure.
import type { ProbeView } from '../shared/api/probes.ts';
import { words } from './late-strings.ts';

export interface ProbeGroup {
  readonly key: string;
  readonly title: string;
  readonly probes: readonly ProbeView[];
}

/** True for a probe that was heard and stands nowhere yet. */
export function isWaiting(probe: ProbeView): boolean {
  return probe.chamberId === null && probe.place === null && !probe.outOfService;
}

/** The probes in place, one group a chamber in the given order, then the house, then those in no chamber; empty groups are left out. */
export function groupProbes(
  probes: readonly ProbeView[],
  chambers: readonly (readonly [id: string, name: string])[],
): readonly ProbeGroup[] {
  const known = new Set(chambers.map(([id]) => id));
  const inPlace = probes.filter((probe) => !isWaiting(probe));
  const keyOf = ({ chamberId, place }: ProbeView) =>
    chamberId !== null && known.has(chamberId) ? `in ${chamberId}` : place === 'house' ? 'house' : 'elsewhere';
  const titles: readonly (readonly [string, string])[] = [
    ...chambers.map(([id, name]) => [`in ${id}`, name] as const),
    ['house', words.sensors.groupHouse],
    ['elsewhere', words.sensors.groupElsewhere],
  ];
  return titles
    .map(([key, title]) => ({ key, title, probes: inPlace.filter((probe) => keyOf(probe) === key) }))
    .filter((group) => group.probes.length > 0);
}
