// The invented nursery: whole at every hour of the day, consistent with its tents, and plainly invented.
import { describe, expect, it } from 'vitest';
import { planCrew } from '../../../server/demo/crew.ts';
import { answerDemoChecks } from '../../../server/demo/demo-checks.ts';
import { describeDemoNursery } from '../../../server/demo/demo-scenario.ts';
import { createLocalClock } from '../../../server/demo/local-time.ts';
import { ventingGapAt } from '../../../server/demo/venting-gaps.ts';
import { newBatchSchema } from '../../../shared/api/batches.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';

const days = [
  '2026-01-15',
  '2026-03-08',
  '2026-03-09',
  '2026-03-29',
  '2026-03-31',
  '2026-07-15',
  '2026-10-25',
  '2026-11-01',
];
const instants = days.flatMap((day) =>
  Array.from({ length: 24 }, (_, hour) => Date.parse(`${day}T00:20:00Z`) + hour * HOUR_MS),
);

describe('describeDemoNursery', () => {
  it('has healing days 2, 4, 6 and 7 at every hour, summer and winter, around changes of the clocks', () => {
    for (const nowMs of instants) {
      const healingDays = describeDemoNursery(nowMs).chambers.map(
        ({ batch }) => Math.floor((nowMs - batch.closedMs) / DAY_MS) + 1,
      );
      expect(healingDays, new Date(nowMs).toISOString()).toEqual([2, 4, 6, 7]);
    }
  });

  it('is closed in an afternoon and begins near noon, local time', () => {
    for (const nowMs of instants) {
      const { zone, chambers } = describeDemoNursery(nowMs);
      const localHour = (timeMs: number): number => createLocalClock(zone)(timeMs).hour;
      expect(localHour(nowMs)).toBeGreaterThanOrEqual(11);
      expect(localHour(nowMs)).toBeLessThan(13.5);
      for (const { batch } of chambers) expect(Math.floor(localHour(batch.closedMs) / 2)).toBe(7);
    }
  });

  const nowMs = Date.parse('2026-04-08T10:00:00Z');
  const nursery = describeDemoNursery(nowMs);

  it('says of itself that it is invented', () => {
    expect(nursery.name).toContain('invented');
    expect(nursery.note).toContain('made up');
    for (const person of nursery.people) expect(person.name).toMatch(/^Demo /);
  });

  it('lets exactly one tent overheat, within minutes', () => {
    const hot = nursery.chambers.map(({ scenario }) => (scenario.kind === 'overheat' ? nowMs - scenario.fromMs : null));
    expect(hot.slice(1)).toEqual([null, null, null]);
    expect(hot[0]).toBeGreaterThanOrEqual(0);
    expect(hot[0]).toBeLessThan(10 * MINUTE_MS);
  });

  it('has batches that the service would accept', () => {
    for (const { batch } of nursery.chambers) {
      const { openedMs, closedMs, ...rest } = batch;
      expect(newBatchSchema.safeParse({ ...rest, chamberId: 'c', profileId: 'p' }).success).toBe(true);
      expect(openedMs).toBeLessThan(closedMs);
    }
  });

  it('gives every probe an address of its own on its node', () => {
    const all = nursery.chambers.flatMap(({ node, probes }) => probes.map(({ address }) => `${node}/${address}`));
    all.push(`${nursery.house.node}/${nursery.house.probe.address}`);
    expect(new Set(all).size).toBe(all.length);
    for (const { probes } of nursery.chambers) expect(probes.filter(({ place }) => place === 'canopy')).toHaveLength(2);
  });

  it('has a log in order of time, with nothing from the future, by people it knows', () => {
    const names = nursery.people.map(({ name }) => name);
    for (const { log } of nursery.chambers) {
      const times = log.map((entry) => entry.atMs);
      expect(times).toEqual([...times].sort((a, b) => a - b));
      expect(Math.max(...times)).toBeLessThanOrEqual(nowMs);
      for (const entry of log) expect(names).toContain(entry.person);
    }
  });

  it.each([
    { index: 2, steps: 4, why: 'on its second day of venting' },
    { index: 3, steps: 8, why: 'fully open since this morning' },
  ])('has a log whose gaps are those that the tent is really given: tent $index, $why', ({ index, steps }) => {
    const { batch, log } = nursery.chambers[index] ?? failEmpty();
    const { ventingMs } = planCrew(batch.closedMs, nursery.zone);
    const vented = log.filter((entry) => entry.kind === 'gap' && entry.atMs >= ventingMs);
    expect(vented).toHaveLength(steps);
    for (const entry of vented) expect(entry.gapPercent).toBe(ventingGapAt(entry.atMs, ventingMs));
    for (const entry of log) expect(entry.gapPercent === null).toBe(entry.kind !== 'gap');
  });

  it('is the same nursery for the same instant', () => {
    expect(describeDemoNursery(nowMs)).toEqual(nursery);
  });
});

describe('answerDemoChecks', () => {
  const untilMs = 10 * HOUR_MS;
  it.each([
    { minutesAgo: 300, answered: true, why: 'long due' },
    { minutesAgo: 20, answered: true, why: 'just answered' },
    { minutesAgo: 19, answered: false, why: 'just due: still open' },
    { minutesAgo: -60, answered: false, why: 'to come' },
  ])('answers a check due $minutesAgo min ago: $answered ($why)', ({ minutesAgo, answered }) => {
    const due = { id: 'film-wet', checkId: 'film-wet.1', dueMs: untilMs - minutesAgo * MINUTE_MS };
    const answers = answerDemoChecks([due], untilMs, ['Demo crew A']);
    expect(answers).toEqual(
      answered
        ? [{ ...due, answer: 'yes', answeredMs: due.dueMs + 20 * MINUTE_MS, note: '', person: 'Demo crew A' }]
        : [],
    );
  });
});

function failEmpty(): never {
  throw new Error('the nursery has no tents');
}
