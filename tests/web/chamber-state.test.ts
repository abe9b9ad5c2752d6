// What the overview says of a chamber, and in which order chambers stand.
import { describe, expect, test } from 'vitest';
import type { AlarmView } from '../../shared/api/alarms.ts';
import type { ChamberView } from '../../shared/api/chambers.ts';
import { chamberState } from '../../web/chamber-state.ts';
import { groupChambers, matchesText } from '../../web/pages/overview-order.ts';
import { sampleAlarm, sampleBatch, sampleChamber, sampleCheck, sampleNow } from './chamber-samples.ts';
import { spaced } from './plain-text.ts';

const now = Date.parse(sampleNow);
const stateOf = (chamber: ChamberView) => chamberState(chamber, now, 'UTC');
const climate = (patch: Partial<ChamberView['climate']>) =>
  sampleChamber({ climate: { ...sampleChamber().climate, ...patch } });
const due = (status: 'to-come' | 'due' | 'overdue') =>
  sampleChamber({ nextDue: { ...sampleCheck, dueAt: sampleNow, status } });

describe('a chamber without a climate says why', () => {
  const nothing = {
    at: null,
    heardAt: null,
    temperature: null,
    humidity: null,
    hottest: null,
    coldest: null,
    driest: null,
  };
  test.each([
    ['none placed', { ...nothing, canopyProbes: 0 }, 'No probe is placed in this chamber'],
    ['one placed that has not spoken yet', nothing, 'No climate: no canopy probe has been heard yet'],
    ['one long silent', { ...nothing, heardAt: '2026-03-04T11:00:00Z' }, 'Climate not known: last heard 1 h ago'],
    [
      'heard, but only its humidity is healthy',
      { temperature: null, hottest: null, coldest: null },
      'No climate: no healthy probe heard since 11:59',
    ],
  ])('%s', (_, patch, sentence) => {
    expect(spaced(stateOf(climate(patch)).sentence)).toBe(sentence);
  });
});

describe('the state of a chamber is told by shape and urgency', () => {
  const loadingBatch = { ...sampleBatch, closedAt: null, endsAt: null, healingDay: 0, stage: 'loading' as const };
  const unheard = {
    ...{ at: '2026-03-04T11:10:00Z', temperature: null, humidity: null },
    ...{ hottest: null, coldest: null, driest: null },
  };
  test.each([
    ['all is well', sampleChamber(), 'order', 'fine'],
    ['an alarm nobody has', sampleChamber({ alarms: [sampleAlarm()] }), 'hot', 'alarm'],
    ['an alarm somebody has', sampleChamber({ alarms: [sampleAlarm({ state: 'acknowledged' })] }), 'hot', 'soon'],
    [
      'over, but nobody has seen it',
      sampleChamber({ alarms: [sampleAlarm({ state: 'returned-unacknowledged' })] }),
      'hot',
      'alarm',
    ],
    ['shelved: it no longer speaks', sampleChamber({ alarms: [sampleAlarm({ state: 'shelved' })] }), 'order', 'fine'],
    ['no healthy probe', climate(unheard), 'old', 'alarm'],
    ['closed and no probe placed', climate({ ...unheard, canopyProbes: 0 }), 'old', 'alarm'],
    [
      'no probe placed while the tent is being filled',
      sampleChamber({ ...climate({ ...unheard, canopyProbes: 0 }), batch: loadingBatch }),
      'old',
      'soon',
    ],
    ['a hold', sampleChamber({ batch: { ...sampleBatch, onHold: true } }), 'hold', 'fine'],
    ['the plan has ended', sampleChamber({ batch: { ...sampleBatch, endsAt: sampleNow } }), 'due', 'soon'],
    ['a value exactly as old as allowed', climate({ at: '2026-03-04T11:45:00Z' }), 'order', 'fine'],
    ['a value one second older never looks fresh', climate({ at: '2026-03-04T11:44:59Z' }), 'old', 'alarm'],
    ['a value old for a probe that is heard more often', climate({ silenceMinutes: 0.1 }), 'old', 'alarm'],
    ['a check missed', due('overdue'), 'overdue', 'soon'],
    ['heat ahead', sampleChamber({ alarms: [sampleAlarm({ rule: 'heat-ahead' })] }), 'warming', 'alarm'],
    ['a check due', due('due'), 'due', 'soon'],
    ['hottest probe exactly at the limit', climate({ hottest: 28 }), 'order', 'fine'],
    ['hottest probe above it, the median not', climate({ hottest: 28.1 }), 'watch', 'soon'],
    ['coldest probe exactly at the low limit', climate({ coldest: 20 }), 'order', 'fine'],
    ['coldest probe below it, the median not', climate({ coldest: 19.9 }), 'watch', 'soon'],
    ['driest probe below the limit', climate({ driest: 89 }), 'watch', 'soon'],
    ['humidity above a high limit of 100 watches nothing', climate({ humidity: 100.4 }), 'order', 'fine'],
    ['no batch', sampleChamber({ batch: null, limits: null, nextDue: null }), 'empty', 'fine'],
    ['no batch and no probe is no alarm', sampleChamber({ ...climate(unheard), batch: null }), 'empty', 'fine'],
  ] as const)('%s', (_, chamber, shape, urgency) => {
    expect(stateOf(chamber)).toMatchObject({ shape, urgency });
  });
});

describe('the worst that is true heads a chamber', () => {
  const heat = (state: AlarmView['state']) => sampleAlarm({ id: 'heat', priority: 'critical', state });
  const dry = sampleAlarm({ id: 'dry', rule: 'dry', priority: 'high' });
  const probe = sampleAlarm({ id: 'probe', rule: 'silent-probe', priority: 'low' });
  const silent = (state: AlarmView['state']) =>
    sampleAlarm({ id: 'silent', rule: 'silent-chamber', priority: 'high', state });
  const wet = sampleAlarm({ id: 'wet', rule: 'wet', priority: 'medium' });
  const old = { at: '2026-03-04T11:00:00Z' };
  test.each<[string, Partial<ChamberView['climate']>, AlarmView[], string | null]>([
    ['of two that nobody has, the more urgent', {}, [dry, heat('unacknowledged')], 'heat'],
    ['one that nobody has before a worse one that somebody has', {}, [heat('acknowledged'), dry], 'dry'],
    ['but not one of low priority', {}, [probe, heat('acknowledged')], 'heat'],
    ['one of low priority before one that is over', {}, [probe, heat('returned-unacknowledged')], 'probe'],
    ['blind, while only a probe is told of: a silence that began anew', old, [probe], null],
    ['blind, while the silence is told of', old, [probe, silent('unacknowledged')], 'silent'],
    ['blind, and somebody is at it', old, [probe, silent('acknowledged')], 'silent'],
    ['blind, and the silence was shelved', old, [probe, silent('shelved')], null],
    ['blind before what is only too wet', old, [wet], null],
    ['heat before blindness: it is not over because nothing is heard', old, [heat('unacknowledged')], 'heat'],
  ])('%s', (_, patch, alarms, head) => {
    const state = stateOf(sampleChamber({ ...climate(patch), alarms }));
    expect(state.alarm?.id ?? null).toBe(head);
    expect(state.shape === 'old').toBe(head === null);
  });
});

test('a check that was missed is told with its time and can be answered', () => {
  expect(stateOf(due('overdue'))).toMatchObject({
    sentence: 'Check missed: Is the film wet? (due 12:00)',
    asked: { checkId: 'look.1', ifNo: 'Mist the film.' },
  });
  expect(stateOf(due('due')).sentence).toBe('Check due: Is the film wet? (since 12:00)');
  expect(stateOf(due('to-come')).asked).toBeNull();
});

test('cold just now is told by the coldest probe', () => {
  expect(spaced(stateOf(climate({ coldest: 18.4 })).sentence)).toBe('Below the plan just now: 18.4 °C, limit 20');
});

describe('the order of the overview', () => {
  const named = (id: string, patch: Partial<ChamberView>) => sampleChamber({ id, name: `Chamber ${id}`, ...patch });
  const chambers = [
    named('10', {}),
    named('2', {}),
    named('3', { alarms: [sampleAlarm({ priority: 'high' })] }),
    named('4', { nextDue: { ...sampleCheck, dueAt: sampleNow, status: 'due' } }),
    named('5', { alarms: [sampleAlarm({ priority: 'critical' })] }),
    named('6', { alarms: [sampleAlarm({ priority: 'critical', state: 'acknowledged' })] }),
  ];
  test('is worst first, then by number in the name', () => {
    expect(groupChambers(chambers, now, 'UTC')).toEqual({
      alarm: ['5', '3'],
      soon: ['6', '4'],
      fine: ['2', '10'],
    });
  });
});

test('a chamber is found by its name, its batch and what was grafted', () => {
  const chamber = sampleChamber();
  for (const text of ['chamber 1', ' B-1 ', 's-21', 'R-7', '']) expect(matchesText(chamber, text)).toBe(true);
  expect(matchesText(chamber, 'B-2')).toBe(false);
});
