// What is said of a value outside the plan that becomes no alarm, because its rule is quiet.
import { describe, expect, it } from 'vitest';
import type { ChamberView } from '../../shared/api/chambers.ts';
import { chamberState } from '../../web/chamber-state.ts';
import { words } from '../../web/strings.ts';
import { takenWords } from '../../web/taken-words.ts';
import { sampleAlarm, sampleChamber, sampleNow } from './chamber-samples.ts';

const NOW_MS = Date.parse(sampleNow);
const { climate } = sampleChamber();
const dry = { ...climate, driest: 80 };
const hot = { ...climate, hottest: 28.4 };
const { watchAdvice, watchQuiet, watchShelved } = words.state;

function at(until: string): Pick<ChamberView, 'suppression'> {
  return { suppression: { cause: 'working', by: 'Ada', until } };
}

function out(rule: 'dry' | 'wet'): Pick<ChamberView, 'outOfService'> {
  return { outOfService: [{ rule, name: '', by: 'Ada', at: sampleNow, reason: 'Repairs' }] };
}

describe('a value outside the plan', () => {
  it.each([
    { patch: { climate: dry }, advice: watchAdvice, why: 'its rule watches' },
    { patch: { climate: dry, ...at('2026-03-04T12:00:01Z') }, advice: watchQuiet, why: 'dry, while somebody works' },
    { patch: { climate: dry, ...at(sampleNow) }, advice: watchAdvice, why: 'dry, when the work is over' },
    { patch: { climate: hot, ...at('2026-03-04T12:20:00Z') }, advice: watchAdvice, why: 'hot: heat is never quiet' },
    { patch: { climate: dry, ...out('dry') }, advice: watchQuiet, why: 'its own rule is out of service' },
    { patch: { climate: dry, ...out('wet') }, advice: watchAdvice, why: 'another rule is out of service' },
    {
      patch: { climate: dry, alarms: [sampleAlarm({ rule: 'dry', state: 'shelved' })] },
      advice: watchShelved,
      why: 'an alarm is shelved',
    },
  ])('says what comes of it: $why', ({ patch, advice }) => {
    expect(chamberState(sampleChamber(patch), NOW_MS, 'UTC')).toMatchObject({ shape: 'watch', advice });
  });
});

describe('an alarm that is set aside', () => {
  it.each([
    { state: 'suppressed', says: 'quiet while the air is disturbed' },
    { state: 'out-of-service', says: 'quiet: its rule is out of service here' },
    { state: 'unacknowledged', says: 'nobody has it' },
  ] as const)('in the state $state is told as “$says”', ({ state, says }) => {
    expect(takenWords(sampleAlarm({ state }), (time) => time)).toBe(says);
  });

  it.each([
    { chamberId: 'c1', says: 'back in the plan since 12:10; acknowledge to close it' },
    { chamberId: null, says: 'over since 12:10; acknowledge to close it' },
  ])('once over it says what it waits for: $says', ({ chamberId, says }) => {
    const over = { chamberId, state: 'returned-unacknowledged', returnedAt: '12:10' } as const;
    expect(takenWords(sampleAlarm(over), (time) => time)).toBe(says);
  });
});
