// How long an acknowledgement holds while the condition stands: both sides of each limit, and a clock that is set back.
import { describe, expect, it } from 'vitest';
import type { Alarm } from '../../../shared/alarms/alarm.ts';
import { expireAcknowledgements } from '../../../shared/alarms/ask-anew.ts';
import { calmEntry } from '../../../shared/alarms/watch-state.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { sampleAlarm } from '../../support/notice-samples.ts';
import { acknowledge, runHotWatch, told } from './run-watch.ts';

const TAKEN_MS = Date.UTC(2026, 2, 1, 12);

function laterBy(ms: number, change: Partial<Alarm>): string[] {
  const taken = { state: 'acknowledged', acknowledgedMs: TAKEN_MS, acknowledgedBy: 'Ann' } as const;
  const alarm: Alarm = { ...sampleAlarm, ...taken, ...change };
  const state = { chamberId: 'c2', entries: { heat: { ...calmEntry('heat', { probeId: null }), alarm } } };
  return expireAcknowledgements(state, TAKEN_MS + ms).effects.flatMap((effect) =>
    effect.type === 'alarm-changed' ? [`${effect.change}: ${effect.from} → ${effect.alarm.state}, ${effect.note}`] : [],
  );
}

const ASKS = ['asked-anew: acknowledged → unacknowledged, Ann had it'];

describe('an acknowledgement', () => {
  it.each([
    { priority: 'critical', ms: 30 * MINUTE_MS - 1, asks: [], why: 'half an hour to bring it down' },
    { priority: 'critical', ms: 30 * MINUTE_MS, asks: ASKS, why: 'it stands still' },
    { priority: 'high', ms: 2 * HOUR_MS - 1, asks: [], why: 'two hours' },
    { priority: 'high', ms: 2 * HOUR_MS, asks: ASKS, why: 'it stands still' },
    { priority: 'medium', ms: 48 * HOUR_MS, asks: [], why: 'it is told once' },
    { priority: 'low', ms: 48 * HOUR_MS, asks: [], why: 'it waits on the screen' },
    { priority: 'critical', ms: -MINUTE_MS, asks: [], why: 'a clock may be set back a little' },
    { priority: 'critical', ms: -2 * MINUTE_MS, asks: ASKS, why: 'nobody knows any more how long ago it was' },
  ] as const)('of a $priority alarm after $ms ms asks anew: $asks, for $why', ({ priority, ms, asks }) => {
    expect(laterBy(ms, { priority })).toEqual(asks);
  });

  it('is none of an alarm that asks; a clock set back behind that lets it ask from now', () => {
    const asking = { sinceMs: TAKEN_MS, kind: 'raised' } as const;
    const open = { state: 'unacknowledged', acknowledgedMs: null, acknowledgedBy: null, asking } as const;
    expect(laterBy(9 * HOUR_MS, open)).toEqual([]);
    expect(laterBy(-2 * MINUTE_MS, open)).toEqual([
      'asked-anew: unacknowledged → unacknowledged, the clock was set back',
    ]);
  });
});

it('runs out in the watch while it is hot still, and not once it is over', () => {
  const watch = runHotWatch();
  watch.take(acknowledge(watch.hot, MINUTE_MS));
  expect(told(watch.heat(28.6, 2 * HOUR_MS, 2 * HOUR_MS + 50_000))).not.toContain(
    'heat asked-anew: acknowledged → unacknowledged',
  );
  expect(told(watch.heat(28.6, 2 * HOUR_MS + MINUTE_MS, 2 * HOUR_MS + MINUTE_MS))).toContain(
    'heat asked-anew: acknowledged → unacknowledged',
  );
  expect(watch.alarm('heat')).toMatchObject({ asking: { kind: 'asked-anew' }, acknowledgedBy: null });
});
