// Whom alerts can reach now, from who is there, through what, and what became of the last message to each.
import type { PersonReach, ReachNow } from '../alarms/service/service-scene.ts';
import type { Finding } from '../finding.ts';
import { DAY_MS } from '../units.ts';
import type { Roster, RosterPerson } from './crew.ts';
import { dutyGaps, dutyPeriods, onDutyAt } from './duty.ts';
import type { NoticeChannel, Target } from './notice.ts';
import { isQuiet } from './quiet-hours.ts';

/** What became of the last message to a target. */
export interface TargetResult {
  readonly targetId: string;
  readonly delivered: boolean;
  /** By whom it was taken over, or why not. */
  readonly finding: Finding;
  readonly atMs: number;
}

export type TargetResults = ReadonlyMap<string, TargetResult>;

/** How far ahead duty is looked for: a weekly rota comes round within it. */
const AHEAD_MS = 8 * DAY_MS;

/** For the rules: a way works while the last message to it was taken over, or none was sent yet. */
export function reachNow(roster: Roster, results: TargetResults, nowMs: number): ReachNow {
  const { people, targets, spans, zone } = roster;
  const onDuty = onDutyAt(spans, zone, nowMs);
  const [gap] = dutyGaps(spans, zone, { fromMs: nowMs, toMs: nowMs + 2 * DAY_MS });
  return {
    people: people.map(({ id, name }): PersonReach => {
      const ways = targets.filter(({ personId }) => personId === id).map((target) => wayOf(target, results));
      return { ...{ personId: id, name, ways }, isOnDuty: spans.length === 0 || onDuty.includes(id) };
    }),
    hasProgram: targets.some(({ personId }) => personId === null),
    duty: spans.length === 0 ? null : { isAnybodyOn: onDuty.length > 0, nextGapMs: gap?.fromMs ?? null },
  };
}

function wayOf({ channel, targetId }: Target, results: TargetResults): PersonReach['ways'][number] {
  const last = results.get(targetId);
  const works = last?.delivered ?? true;
  return { channel, works, trouble: works ? null : (last?.finding ?? null) };
}

/** `untried`: there are ways, and nothing was sent through any yet. `partly`: one works and one fails. */
export const reachVerdicts = ['reached', 'untried', 'partly', 'failing', 'no-way'] as const;
export type ReachVerdict = (typeof reachVerdicts)[number];

export interface OwnWay {
  readonly channel: NoticeChannel;
  readonly targetId: string;
  readonly works: boolean;
  readonly last: TargetResult | null;
}

/** What one person is told about reaching them. */
export interface OwnReach {
  readonly verdict: ReachVerdict;
  readonly ways: readonly OwnWay[];
  readonly isOnDuty: boolean;
  /** When the duty of now ends; null = off duty, or on duty always. */
  readonly dutyUntilMs: number | null;
  /** When the next duty begins; null = on duty now, or never. */
  readonly nextDutyMs: number | null;
  /** Local time at which the quiet hours of now end, `HH:MM`; null = it is not quiet. */
  readonly quietUntil: string | null;
}

export function ownReach(person: RosterPerson, roster: Roster, results: TargetResults, nowMs: number): OwnReach {
  const { targets, spans, zone } = roster;
  const ways = targets
    .filter(({ personId }) => personId === person.id)
    .map(({ channel, targetId }): OwnWay => {
      const last = results.get(targetId) ?? null;
      return { channel, targetId, works: last?.delivered ?? true, last };
    });
  return {
    ...{ verdict: verdictOf(ways), ways },
    ...ownDuty(person.id, { spans, zone }, nowMs),
    quietUntil: isQuiet(person, zone, nowMs) ? person.quietTo : null,
  };
}

function verdictOf(ways: readonly OwnWay[]): ReachVerdict {
  if (ways.length === 0) return 'no-way';
  if (ways.every(({ works }) => !works)) return 'failing';
  if (ways.some(({ works }) => !works)) return 'partly';
  return ways.every(({ last }) => last === null) ? 'untried' : 'reached';
}

function ownDuty(
  personId: string,
  { spans, zone }: Pick<Roster, 'spans' | 'zone'>,
  nowMs: number,
): Pick<OwnReach, 'isOnDuty' | 'dutyUntilMs' | 'nextDutyMs'> {
  if (spans.length === 0) return { isOnDuty: true, dutyUntilMs: null, nextDutyMs: null };
  const own = dutyPeriods(
    spans.filter((span) => span.personId === personId),
    zone,
    { fromMs: nowMs, toMs: nowMs + AHEAD_MS },
  );
  let untilMs = nowMs;
  // Duties that touch are one duty.
  for (const { fromMs, toMs } of own) if (fromMs <= untilMs) untilMs = Math.max(untilMs, toMs);
  const isOnDuty = untilMs > nowMs;
  return { isOnDuty, dutyUntilMs: isOnDuty ? untilMs : null, nextDutyMs: isOnDuty ? null : (own[0]?.fromMs ?? null) };
}
