// Which rules raise no alarm in a chamber, as it is said beside its state.
import { describe, expect, it } from 'vitest';
import type { ChamberRuleId } from '../../shared/alarms/alarm.ts';
import { outOfServiceWords } from '../../web/out-of-service-words.ts';

function taken(rule: ChamberRuleId) {
  return { rule, name: 'as the service calls it', by: 'Ada', at: '2026-03-04T12:00:00Z', reason: 'Fan is repaired' };
}

describe('rules that are out of service', () => {
  it.each([
    { rules: [], says: '', why: 'all watch' },
    { rules: ['dry'], says: 'No alarm here for: too dry.', why: 'one' },
    { rules: ['dry', 'silent-probe'], says: 'No alarm here for: too dry, a probe is silent.', why: 'several' },
  ] as const)('are named: $why', ({ rules, says }) => {
    expect(outOfServiceWords(rules.map(taken))).toBe(says);
  });
});
