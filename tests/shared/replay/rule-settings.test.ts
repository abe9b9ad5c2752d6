// Other settings of the rules for a replay: what they change, and every fault with its place.
import { describe, expect, it } from 'vitest';
import { chamberRules } from '../../../shared/alarms/rules/index.ts';
import { sayFaults } from '../../../shared/problem.ts';
import { readRuleSettings } from '../../../shared/replay/rule-settings.ts';
import { english } from '../../../shared/words/en/english.ts';

const faultsOf = (candidate: unknown) =>
  sayFaults(readRuleSettings(candidate).faults, english).map(({ where, reason }) => `${where} ${reason}`);

describe('settings', () => {
  it('that are empty leave every rule as it is', () => {
    expect(readRuleSettings({}).rules?.map(({ judge, ...rule }) => rule)).toEqual(
      chamberRules.map(({ judge, ...rule }) => rule),
    );
  });

  it('change what they name and nothing else', () => {
    const { rules } = readRuleSettings({
      heat: { onDelaySeconds: 300, deadband: 1 },
      dry: { outerOnDelaySeconds: 0, offDelaySeconds: 60 },
      wet: { off: true },
      cold: { off: false },
    });
    const of = (id: string) => rules?.find((rule) => rule.id === id);
    expect(of('heat')).toMatchObject({ onDelayMs: [300_000, 30_000], offDelayMs: 60_000, deadband: 1 });
    expect(of('dry')).toMatchObject({ onDelayMs: [300_000, 0], offDelayMs: 60_000, deadband: 2 });
    expect(of('wet')).toBeUndefined();
    expect(rules).toHaveLength(chamberRules.length - 1);
  });

  it.each([
    { candidate: [], says: /^ must be an object with rules/, why: 'a list' },
    { candidate: { haet: {} }, says: /^\/haet is no rule: the rules are heat, cold/, why: 'a rule there is not' },
    { candidate: { heat: 5 }, says: /^\/heat must be an object/, why: 'a number for a rule' },
    { candidate: { heat: { delay: 5 } }, says: /^\/heat\/delay is not a known field/, why: 'a field there is not' },
    {
      candidate: { heat: { onDelaySeconds: -1 } },
      says: /^\/heat\/onDelaySeconds .*at least 0/,
      why: 'less than none',
    },
    { candidate: { heat: { onDelaySeconds: 86_401 } }, says: /at most 86400/, why: 'more than a day' },
    { candidate: { heat: { deadband: '1' } }, says: /^\/heat\/deadband must be a number/, why: 'text' },
    { candidate: { heat: { offDelaySeconds: Number.NaN } }, says: /must be a number, not NaN/, why: 'NaN' },
    {
      candidate: { 'silent-probe': { deadband: 1 } },
      says: /deadband is not for this rule/,
      why: 'no value to come back',
    },
    { candidate: { heat: { off: 'yes' } }, says: /^\/heat\/off must be/, why: 'no truth value' },
  ])('are refused with the place and what to do: $why', ({ candidate, says }) => {
    expect(readRuleSettings(candidate).rules).toBeNull();
    expect(faultsOf(candidate)).toEqual([expect.stringMatching(says)]);
  });

  it('name every fault, never only the first', () => {
    expect(faultsOf({ haet: {}, dry: { deadband: -1, off: 1 }, 'silent-chamber': { deadband: 1 } })).toHaveLength(4);
  });
});
