// Who disturbs the air of a chamber, and until when, as it is said beside it.
import { describe, expect, it } from 'vitest';
import { disturbanceOf } from '../../web/disturbance.ts';

const NOW_MS = Date.parse('2026-03-04T12:00:00Z');

function say(cause: 'working' | 'vent-step', until: string) {
  return disturbanceOf({ cause, by: 'Ada', until }, NOW_MS, 'UTC');
}

describe('air that is disturbed on purpose', () => {
  it('is not spoken of while nothing disturbs it', () => {
    expect(disturbanceOf(null, NOW_MS, 'UTC')).toBeNull();
  });

  it.each([
    { until: '2026-03-04T12:00:00Z', isSaid: false, why: 'over just now' },
    { until: '2026-03-04T12:00:01Z', isSaid: true, why: 'a second left' },
  ])('is said until it is over: $why', ({ until, isSaid }) => {
    expect(say('vent-step', until) !== null).toBe(isSaid);
  });

  it('names who works in the tent: the work ends ten minutes before the alarms come back', () => {
    expect(say('working', '2026-03-04T12:40:00Z')).toEqual({
      sentence:
        'Ada works in the tent until 12:30. Alarms of dry, wet and cold air are quiet until 12:40; heat still tells.',
      isAtWork: true,
    });
  });

  it.each([
    { until: '2026-03-04T12:10:31Z', isAtWork: true, why: 'more than half a minute of work left' },
    { until: '2026-03-04T12:10:30Z', isAtWork: false, why: 'just said to be done, by a clock that lags' },
    { until: '2026-03-04T12:05:00Z', isAtWork: false, why: 'the air recovers' },
  ])('can be said to be done while somebody works: $why', ({ until, isAtWork }) => {
    expect(say('working', until)?.isAtWork).toBe(isAtWork);
  });

  it('tells after the work that the air settles', () => {
    expect(say('working', '2026-03-04T12:10:00Z')?.sentence).toBe(
      'The air settles after work by Ada. Alarms of dry, wet and cold air are quiet until 12:10; heat still tells.',
    );
  });

  it('tells of a step of venting, which nobody needs to end', () => {
    expect(say('vent-step', '2026-03-04T12:20:00Z')).toEqual({
      sentence:
        'The air settles after the gap was set by Ada. Alarms of dry, wet and cold air are quiet until 12:20; heat still tells.',
      isAtWork: false,
    });
  });
});
