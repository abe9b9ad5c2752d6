// The order of the overview: worst first, in three groups. Pure.
import type { ChamberView } from '../../shared/api/chambers.ts';
import { chamberState, type Urgency } from '../chamber-state.ts';
import { words } from '../strings.ts';

export type Groups = Record<Urgency, readonly string[]>;

const byName = new Intl.Collator(words.locale, { numeric: true });

/** The ids of the chambers in the three groups, each worst first, then by name. */
export function groupChambers(chambers: readonly ChamberView[], nowMs: number, zone: string): Groups {
  const ranked = chambers
    .map((chamber) => ({ chamber, state: chamberState(chamber, nowMs, zone) }))
    .sort((one, other) => one.state.rank - other.state.rank || byName.compare(one.chamber.name, other.chamber.name));
  const group = (urgency: Urgency) =>
    ranked.filter(({ state }) => state.urgency === urgency).map(({ chamber }) => chamber.id);
  return { alarm: group('alarm'), soon: group('soon'), fine: group('fine') };
}

/** True when the chamber's name or its batch holds the text. */
export function matchesText(chamber: ChamberView, text: string): boolean {
  const wanted = text.trim().toLowerCase();
  const { batch } = chamber;
  const all = [chamber.name, batch?.code, batch?.scion, batch?.rootstock].join(' ').toLowerCase();
  return all.includes(wanted);
}
