// What changed between two versions of a plan.
import { describe, expect, it } from 'vitest';
import { compareProfiles } from '../../../shared/healing/compare-profiles.ts';
import type { ProfileDocument } from '../../../shared/healing/profile.ts';
import { standardProfiles } from '../../../shared/healing/standard-profiles.ts';

const before = standardProfiles[0]?.document as ProfileDocument;
const stageAt = (index: number) => before.stages[index] as ProfileDocument['stages'][number];
const constant = (value: number, basis = 'ours') => ({ shape: 'constant', value, basis }) as const;

function withStage(index: number, change: Partial<ProfileDocument['stages'][number]>): ProfileDocument {
  return { ...before, stages: before.stages.map((plan, at) => (at === index ? { ...plan, ...change } : plan)) };
}

describe('between two plans', () => {
  it('nothing changed when they say the same, in whatever order of fields', () => {
    const { name, ...rest } = structuredClone(before);
    expect(compareProfiles(before, { ...rest, name })).toEqual([]);
    expect(
      compareProfiles(before, { ...before, stages: before.stages.map((plan) => ({ ...plan, vpdKpa: plan.vpdKpa })) }),
    ).toEqual([]);
  });

  it('a limit changed its value', () => {
    const after = withStage(1, { temperature: { ...stageAt(1).temperature, high: constant(27) } });
    expect(compareProfiles(before, after)).toEqual([
      {
        ...{ what: 'limit', stage: 'closed', quantity: 'temperature', limit: 'high' },
        ...{ before: constant(28, 'common practice'), after: constant(27) },
      },
    ]);
  });

  it('an outer limit came or went', () => {
    const { lowLow: _, ...humidity } = stageAt(1).humidity;
    const after = withStage(1, { humidity });
    expect(compareProfiles(before, after)).toMatchObject([{ what: 'limit', limit: 'lowLow', after: null }]);
    expect(compareProfiles(after, before)).toMatchObject([{ what: 'limit', limit: 'lowLow', before: null }]);
  });

  it('only the source of a number changed', () => {
    const { temperature } = stageAt(1);
    const after = withStage(1, { temperature: { ...temperature, high: constant(28, 'our own trial') } });
    expect(compareProfiles(before, after)).toEqual([{ what: 'basis', stage: 'closed' }]);
    expect(compareProfiles(before, { ...before, grace: { ...before.grace, basis: 'tried' } })).toEqual([
      { what: 'basis', stage: null },
    ]);
  });

  it('a stage begins at another hour, or at no time of day', () => {
    const { notBefore: _, ...venting } = stageAt(2);
    const stages = before.stages.map((plan, at) => (at === 2 ? { ...venting, afterHours: 72 } : plan));
    expect(compareProfiles(before, { ...before, stages })).toEqual([
      {
        ...{ what: 'begins', stage: 'venting' },
        ...{ before: { afterHours: 96, notBefore: '07:00' }, after: { afterHours: 72, notBefore: null } },
      },
    ]);
  });

  it('a stage was left out, or put in', () => {
    const without = { ...before, stages: before.stages.slice(1) };
    expect(compareProfiles(before, without)).toEqual([{ what: 'stage-removed', stage: 'loading' }]);
    expect(compareProfiles(without, before)).toEqual([{ what: 'stage-added', stage: 'loading' }]);
  });

  it('drying power is watched from now on, the grace is slower, gaps are joined longer, the end is later', () => {
    const after = {
      ...withStage(1, { vpdKpa: { high: 0.4, basis: 'ours' } }),
      ...{ grace: { ...before.grace, humidityPerHour: 3 }, silenceMinutes: 20, endsAfterHours: 200 },
    };
    expect(compareProfiles(before, after)).toMatchObject([
      { what: 'vpd', stage: 'closed', before: null, after: 0.4 },
      { what: 'ends', before: { afterHours: 192 }, after: { afterHours: 200 } },
      { what: 'grace', quantity: 'humidity', before: 5, after: 3 },
      { what: 'silence', before: 15, after: 20 },
    ]);
  });

  it('a check is known by its id: its place in the list does not count, its parts do', () => {
    const [first, ...others] = before.checks as [ProfileDocument['checks'][number], ...ProfileDocument['checks']];
    expect(compareProfiles(before, { ...before, checks: [...others, first] })).toEqual([]);
    const moved = { ...before, checks: [{ ...first, overdueMinutes: 90 }, ...others] };
    expect(compareProfiles(before, moved)).toEqual([
      { what: 'check', question: first.question, part: 'overdueMinutes', before: 60, after: 90 },
    ]);
    expect(compareProfiles(before, { ...before, checks: others })).toEqual([
      { what: 'check-removed', question: first.question },
    ]);
  });

  it('is told from both sides: what one way added, the other way removed', () => {
    const [one, other] = [before, standardProfiles[2]?.document as ProfileDocument];
    const there = compareProfiles(one, other);
    const back = compareProfiles(other, one);
    expect(there.length).toBeGreaterThan(5);
    expect(back.length).toBe(there.length);
  });
});
