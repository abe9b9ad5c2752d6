// How often alarms came, beside the targets of IEC 62682, in rows and sentences.
import { describe, expect, it } from 'vitest';
import { alarmTargets } from '../../shared/alarms/alarm-statistics.ts';
import type { AlarmStatisticsView } from '../../shared/api/alarm-statistics.ts';
import { measuresOf, sourceLines, verdictOf } from '../../web/pages/alarm-statistics-words.ts';

const byPriority = { critical: 0, high: 0, medium: 0, low: 0 };
const source = { chamberId: 'c1', rule: 'dry', subjectId: null, alarms: 14 } as const;

function day(alarms: number, stale = 0) {
  return { date: '2026-03-04', alarms, byPriority, stale };
}

function statistics(patch: Partial<AlarmStatisticsView> = {}): AlarmStatisticsView {
  return {
    ...{ from: '2026-02-02T12:00:00Z', to: '2026-03-04T12:00:00Z', alarms: 36, hours: 720, perHour: 0.05 },
    ...{ busiestHour: 3, shares: { critical: 0.02, high: 0.05, medium: 0.15, low: 0.78 }, days: [day(2), day(9, 1)] },
    ...{ chattering: [], floods: 0, floodShare: 0, mostFrequent: [], targets: alarmTargets },
    ...patch,
  };
}

describe('the table', () => {
  it('holds each figure against its target; high stands with critical', () => {
    expect(measuresOf(statistics()).map(({ name, found, target }) => [name, found, target])).toEqual([
      ['Alarms a day', '1.2', '144 or fewer, 288 at most'],
      ['On the busiest day', '9', '–'],
      ['Low priority', '78 %', 'about 80 %'],
      ['Medium priority', '15 %', 'about 15 %'],
      ['High and critical', '7 %', 'about 5 %'],
      ['Standing for more than a day, on the worst day', '1', 'fewer than 5'],
      ['Chattering', '0', 'none'],
    ]);
  });

  it('has no shares where there was no alarm', () => {
    const rows = measuresOf(statistics({ alarms: 0, perHour: 0, shares: null, days: [] }));
    expect(rows.map(({ found }) => found)).toEqual(['0.0', '0', '0', '0']);
  });
});

describe('of a site that is only hours old', () => {
  const young = statistics({ hours: 0.5, alarms: 7, perHour: 14 });

  it('no rate is given and none is held against it', () => {
    expect(measuresOf(young)[0]).toMatchObject({ found: 'too early to say' });
    expect(verdictOf(young)).toBe('7 alarms in 1 hour. That is within the targets.');
  });

  it.each([
    { hours: 47, says: 'There was no alarm in the last 47 hours.' },
    { hours: 48, says: 'There was no alarm in the last 2 days.' },
    { hours: 720, says: 'There was no alarm in the last 30 days.' },
  ])('after $hours hours it says of how long it speaks', ({ hours, says }) => {
    expect(verdictOf(statistics({ hours, alarms: 0, perHour: 0, shares: null, days: [] }))).toBe(says);
  });
});

describe('the sentence', () => {
  const within = 'That is within the targets.';
  it.each([
    { patch: { alarms: 0, perHour: 0, shares: null, days: [] }, says: /^There was no alarm/, why: 'nothing came' },
    { patch: {}, says: new RegExp(`^36 alarms in 30 days\\. ${within}$`), why: 'few came' },
    { patch: { alarms: 1 }, says: /^1 alarm in 30 days\./, why: 'a single one' },
    { patch: { perHour: 6 }, says: new RegExp(within), why: 'as many as are acceptable' },
    { patch: { perHour: 6.1 }, says: /more than is good/, why: 'more than acceptable' },
    { patch: { perHour: 12 }, says: /more than is good/, why: 'as many as can be handled' },
    { patch: { perHour: 12.1 }, says: /more than anybody can answer/, why: 'more than can be handled' },
    { patch: { days: [day(1, 4)] }, says: new RegExp(within), why: 'four stood for a day' },
    { patch: { days: [day(1, 5)] }, says: /Too many stood/, why: 'five stood for a day' },
    { patch: { chattering: [source] }, says: /chatter/, why: 'one chatters' },
  ])('says what the figures come to: $why', ({ patch, says }) => {
    expect(verdictOf(statistics(patch))).toMatch(says);
  });

  it('does not say that nothing was there while old alarms stood', () => {
    expect(verdictOf(statistics({ alarms: 0, perHour: 0, shares: null, days: [day(0, 5)] }))).toMatch(/Too many stood/);
  });
});

describe('what chatters or comes most often', () => {
  it.each([
    { name: 'Tent 1', says: 'Tent 1: too dry (14 alarms)', why: 'by the name of its chamber' },
    { name: null, says: 'A chamber that is gone: too dry (14 alarms)', why: 'though its chamber is gone' },
  ])('is named $why', ({ name, says }) => {
    expect(sourceLines([source], () => name)).toEqual([says]);
  });
});
