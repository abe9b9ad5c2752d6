// A night of venting: the crew opens a simulated tent in steps and logs them, asks what to open to next, does it, and the air comes to where it
// was said to come. The tent's physics is richer than the fit's.
import { expect, test } from 'vitest';
import { MINUTE_MS, utcText } from '../../shared/units.ts';
import { openAfterSteps, ventedTent } from '../support/venting-site.ts';

test('what is proposed is where the air comes to, within the stated ±, and it says what that rests on', async () => {
  const site = await openAfterSteps();
  const asked = await site.venting();
  expect(asked).toMatchObject({ phase: 'under-way', gapPercent: 42, step: { low: 55, high: 64 }, askErect: null });
  expect(asked.fit?.levels.map(({ gapPercent }) => gapPercent)).toEqual([30, 42]);
  for (const { ratePerHour, standardError, windows } of asked.fit?.levels ?? []) {
    expect(standardError).toBeGreaterThan(0);
    expect(standardError).toBeLessThan(ratePerHour / 4);
    expect(windows).toBe(1);
  }
  const { proposal } = asked;
  if (proposal === null) throw new Error(`no proposal: ${asked.reason}`);
  expect(proposal.gapPercent).toBeGreaterThan(42);
  expect(proposal.expectedHumidity - proposal.plusMinus).toBeGreaterThanOrEqual(55);
  expect(proposal.plusMinus).toBeLessThan(6);
  expect(proposal.settlesInMinutes).toBeGreaterThan(0);

  const opened = { atMs: site.askedMs + 2 * MINUTE_MS, gapPercent: proposal.gapPercent };
  await site.log(opened.atMs, 'gap', opened.gapPercent);
  const settledMs = opened.atMs + (proposal.settlesInMinutes + 20) * MINUTE_MS;
  const came = await site.measure([...ventedTent.gaps, opened], Math.ceil(settledMs / MINUTE_MS) * MINUTE_MS);
  expect(Math.abs(came - proposal.expectedHumidity)).toBeLessThanOrEqual(proposal.plusMinus);

  const after = await site.venting();
  expect(after.askErect).toEqual({ gapPercent: proposal.gapPercent, since: utcText(opened.atMs) });
  await site.log(site.clock.nowMs(), 'limp');
  const limp = await site.venting();
  expect(limp).toMatchObject({
    proposal: null,
    why: 'limp',
    limp: { acts: ['close', 'mist', 'hold'], backToPercent: 42 },
  });
});
