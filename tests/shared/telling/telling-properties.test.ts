// What holds for any crew, any rota, any times and any restart: an alarm is never left without anybody who can be told.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Alarm } from '../../../shared/alarms/alarm.ts';
import { crewAt, type Roster } from '../../../shared/telling/crew.ts';
import type { NoticeDraft } from '../../../shared/telling/notice.ts';
import { tellingDue } from '../../../shared/telling/telling-due.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { ASKS_MS, askingAlarm, inputAt, person, phoneOf } from './site-of-people.ts';

const names = ['ann', 'bo', 'cy', 'dee'];
const clock = fc
  .tuple(fc.nat(23), fc.constantFrom(0, 30))
  .map(([h, m]) => [h, m].map((n) => String(n).padStart(2, '0')).join(':'));
const span = fc.record({
  personId: fc.constantFrom(...names),
  weekday: fc.integer({ min: 1, max: 7 }),
  from: clock,
  to: clock,
});
const roster: fc.Arbitrary<Roster> = fc.record({
  people: fc
    .subarray(names)
    .chain((ids) =>
      fc.tuple(
        ...ids.map((id) =>
          fc.option(clock).map((from) => person(id, { quietFrom: from, quietTo: from === null ? null : '06:00' })),
        ),
      ),
    ),
  targets: fc.subarray(names).map((ids) => ids.map((id) => phoneOf(id))),
  spans: fc.array(span, { maxLength: 8 }),
  zone: fc.constantFrom('UTC', 'Europe/Amsterdam', 'Australia/Lord_Howe'),
});
const minutes = fc
  .array(fc.integer({ min: 0, max: 300 }), { minLength: 1, maxLength: 40 })
  .map((all) => all.sort((a, b) => a - b));
const priority = fc.constantFrom('critical' as const, 'high' as const, 'medium' as const);

/** Decides at each of these minutes; each time from the alarm and what was written, as after a restart. */
function run(people: Roster, alarms: readonly Alarm[], at: readonly number[]): NoticeDraft[] {
  const written: NoticeDraft[] = [];
  for (const minute of at) {
    const nowMs = ASKS_MS + minute * MINUTE_MS;
    written.push(...tellingDue(inputAt(alarms, written, crewAt(people, nowMs), nowMs)).notices);
  }
  return written;
}

function isReachable({ people, targets }: Roster): boolean {
  return people.some(({ id }) => targets.some(({ personId }) => personId === id));
}

describe('whatever the crew', () => {
  it('a critical alarm is told to somebody at once if anybody can be told at all', () => {
    fc.assert(
      fc.property(roster, fc.nat(7 * 24 * 60), (people, minute) => {
        const sinceMs = ASKS_MS + minute * MINUTE_MS;
        const alarm = askingAlarm({ asking: { sinceMs, kind: 'raised' } });
        const { notices } = tellingDue(inputAt([alarm], [], crewAt(people, sinceMs), sinceMs));
        expect(notices.length > 0).toBe(isReachable(people));
      }),
    );
  });

  it('everybody who can be told knows of a critical alarm after a quarter of an hour, whenever one looked', () => {
    fc.assert(
      fc.property(roster, minutes, (people, at) => {
        const told = new Set(
          run(people, [askingAlarm()], [...at.filter((minute) => minute < 15), 15]).map(({ personId }) => personId),
        );
        const reached = people.people.filter(({ id }) => people.targets.some(({ personId }) => personId === id));
        expect(told).toEqual(new Set(reached.map(({ id }) => id)));
      }),
    );
  });

  it('deciding twice at an instant writes nothing twice', () => {
    fc.assert(
      fc.property(roster, priority, minutes, (people, rank, at) => {
        const once = run(people, [askingAlarm({ priority: rank })], at);
        const twice = run(
          people,
          [askingAlarm({ priority: rank })],
          at.flatMap((minute) => [minute, minute]),
        );
        expect(twice).toEqual(once);
        expect(new Set(once.map(({ id }) => id)).size).toBe(once.length);
      }),
    );
  });

  it('nobody is told of one alarm more than once in ten minutes', () => {
    fc.assert(
      fc.property(roster, minutes, (people, at) => {
        const byPerson = Map.groupBy(run(people, [askingAlarm()], at), ({ personId }) => personId);
        for (const own of byPerson.values())
          for (const [index, { decidedMs }] of own.entries()) {
            const before = own[index - 1];
            // A late look tells the repeat that is due; the next is due by the clock of the alarm.
            if (before !== undefined && before.kind !== 'repeated')
              expect(decidedMs - before.decidedMs).toBeGreaterThanOrEqual(10 * MINUTE_MS);
          }
      }),
    );
  });

  it('nobody is asked, and the siren is still, while somebody has it', () => {
    fc.assert(
      fc.property(roster, priority, minutes, (people, rank, at) => {
        const alarm = askingAlarm({
          priority: rank,
          state: 'acknowledged',
          acknowledgedMs: ASKS_MS,
          acknowledgedBy: 'ann',
        });
        expect(run(people, [alarm], at)).toEqual([]);
        const crew = crewAt(people, ASKS_MS + HOUR_MS);
        expect(tellingDue(inputAt([alarm], [], crew, ASKS_MS + HOUR_MS)).sirenFor).toEqual([]);
      }),
    );
  });

  it('a look left out changes who is told only by when', () => {
    fc.assert(
      fc.property(roster, minutes, fc.integer({ min: 0, max: 300 }), (people, at, last) => {
        const upTo = at.filter((minute) => minute <= last);
        const steady = { ...people, spans: [] };
        const people1 = new Set(run(steady, [askingAlarm()], [...upTo, last]).map(({ personId }) => personId));
        const people2 = new Set(run(steady, [askingAlarm()], [last]).map(({ personId }) => personId));
        expect(people1).toEqual(people2);
      }),
    );
  });
});
