// Whom alerts can reach: the verdict a person is given, and the facts the rules judge.
import { describe, expect, it } from 'vitest';
import { finding } from '../../../shared/finding.ts';
import type { Roster, RosterPerson } from '../../../shared/telling/crew.ts';
import { ownReach, reachNow, type TargetResult } from '../../../shared/telling/reach.ts';
import { HOUR_MS } from '../../../shared/units.ts';

/** A Sunday, noon. */
const NOON_MS = Date.UTC(2026, 2, 1, 12);
const ada = { id: 'ada', name: 'Ada Invented', role: 'crew', quietFrom: null, quietTo: null } as const;
const phone = { channel: 'web-push', targetId: 'p1', personId: 'ada' } as const;
const mail = { channel: 'email', targetId: 'email:ada', personId: 'ada' } as const;
const program = { channel: 'webhook', targetId: 'webhook:w', personId: null } as const;
const roster = (more: Partial<Roster> = {}): Roster => ({
  ...{ people: [ada], targets: [phone, mail], spans: [], zone: 'UTC' },
  ...more,
});
const soItIs = finding('pushInTrouble', 503);
const resultsOf = (...results: readonly [string, boolean][]) =>
  new Map<string, TargetResult>(
    results.map(([targetId, delivered]) => [targetId, { targetId, delivered, finding: soItIs, atMs: NOON_MS }]),
  );

it.each([
  { targets: [], results: resultsOf(), verdict: 'no-way', why: 'there is neither phone nor e-mail' },
  { targets: [program], results: resultsOf(['webhook:w', true]), verdict: 'no-way', why: 'a program is no person' },
  { targets: [phone], results: resultsOf(), verdict: 'untried', why: 'nothing was sent yet' },
  {
    targets: [phone, mail],
    results: resultsOf(['p1', true]),
    verdict: 'reached',
    why: 'one was taken over, none failed',
  },
  {
    targets: [phone, mail],
    results: resultsOf(['p1', true], ['email:ada', false]),
    verdict: 'partly',
    why: 'one fails',
  },
  {
    targets: [phone, mail],
    results: resultsOf(['p1', false], ['email:ada', false]),
    verdict: 'failing',
    why: 'all fail',
  },
])('is $verdict when $why', ({ targets, results, verdict }) => {
  expect(ownReach(ada, roster({ targets }), results, NOON_MS).verdict).toBe(verdict);
});

describe('duty', () => {
  const ask = (person: RosterPerson, spans: Roster['spans'], nowMs = NOON_MS) =>
    ownReach(person, roster({ spans }), resultsOf(), nowMs);
  const span = (weekday: number, from: string, to: string) => ({ personId: 'ada', weekday, from, to });
  const offDuty = { isOnDuty: false, dutyUntilMs: null, nextDutyMs: null };
  it.each([
    { spans: [], own: { ...offDuty, isOnDuty: true }, why: 'without a rota everybody is on duty always' },
    { spans: [{ ...span(7, '08:00', '16:00'), personId: 'else' }], own: offDuty, why: 'only others are in the rota' },
    {
      spans: [span(7, '08:00', '14:00'), span(7, '14:00', '16:00')],
      own: { isOnDuty: true, dutyUntilMs: NOON_MS + 4 * HOUR_MS, nextDutyMs: null },
      why: 'times that touch are one',
    },
    {
      spans: [span(7, '06:00', '10:00'), span(1, '06:00', '10:00')],
      own: { ...offDuty, nextDutyMs: NOON_MS + 18 * HOUR_MS },
      why: 'the next begins tomorrow',
    },
  ])('is told: $why', ({ spans, own }) => {
    expect(ask(ada, spans)).toMatchObject(own);
  });

  it('leaves the quiet hours to be told beside it', () => {
    const quiet = { ...ada, quietFrom: '11:00', quietTo: '13:00' };
    expect(ask(quiet, []).quietUntil).toBe('13:00');
    expect(ask(quiet, [], NOON_MS + HOUR_MS).quietUntil).toBeNull();
  });
});

it('gives the rules each way with its trouble, the programs, and the next gap', () => {
  const spans = [{ personId: 'ada', weekday: 7, from: '08:00', to: '16:00' }];
  const now = reachNow(roster({ targets: [phone, mail, program], spans }), resultsOf(['p1', false]), NOON_MS);
  expect(now).toEqual({
    people: [
      {
        ...{ personId: 'ada', name: 'Ada Invented', isOnDuty: true },
        ways: [
          { channel: 'web-push', works: false, trouble: soItIs },
          { channel: 'email', works: true, trouble: null },
        ],
      },
    ],
    hasProgram: true,
    duty: { isAnybodyOn: true, nextGapMs: NOON_MS + 4 * HOUR_MS },
  });
});
