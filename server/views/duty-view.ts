// The rota as it is sent to people: with names, who can be told through what now, and the gaps of the days to come.
import type { DutyView } from '../../shared/api/duty.ts';
import { onDutyAt, rotaGaps } from '../../shared/telling/duty.ts';
import { isQuiet } from '../../shared/telling/quiet-hours.ts';
import { DAY_MS, utcText } from '../../shared/units.ts';
import type { DutyBook } from '../duty-book.ts';

/** How far ahead gaps are looked for. */
const AHEAD_MS = 7 * DAY_MS;

export function viewDuty(book: DutyBook, nowMs: number): DutyView {
  const { people, targets, spans, zone } = book.roster();
  const viaOf = (id: string) => [
    ...new Set(targets.filter((one) => one.personId === id).map(({ channel }) => channel)),
  ];
  const onDuty = onDutyAt(spans, zone, nowMs);
  const stretch = { fromMs: nowMs, toMs: nowMs + AHEAD_MS };
  return {
    ...book.escalation(),
    spans: [...spans],
    people: people.map((person) => ({
      ...{ id: person.id, name: person.name, role: person.role },
      via: viaOf(person.id),
      isOnDuty: spans.length === 0 || onDuty.includes(person.id),
      isQuiet: isQuiet(person, zone, nowMs),
    })),
    gaps: rotaGaps(spans, (id) => viaOf(id).length > 0, zone, stretch).map(({ fromMs, toMs, reason }) => ({
      from: utcText(fromMs),
      to: utcText(toMs),
      reason,
    })),
  };
}
