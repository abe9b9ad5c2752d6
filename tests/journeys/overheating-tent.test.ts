// The journey that the program is made for: a closed tent gets too hot, people are told in time, one takes it, the tent cools, and the record
// says all of it.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { MINUTE_MS, SECOND_MS, utcText } from '../../shared/units.ts';
import { openBrowser, openPage, phone, signInOn } from '../support/browser.ts';
import { makeTestFolder } from '../support/open-test-app.ts';
import { CREW, openTentSite, STEP_MS, type TentSite } from '../support/tent-site.ts';

/** From the limit on: how long before the alarm, and how long after cooling before it is over. */
const ON_DELAY_MS = MINUTE_MS;
const CRITICAL_DELAY_MS = 30 * SECOND_MS;
const OFF_DELAY_MS = MINUTE_MS;

it('is told in time, taken on a phone, over when it has cooled, and on record', async () => {
  const site = await openTentSite();
  const browser = await openBrowser();
  const page = await openPage(browser, site.app.url, phone);
  await page.goto('/');
  await signInOn(page, CREW);

  await expectForetold(site);
  const raisedMs = await expectRaised(site);
  const escalatedMs = await expectEscalated(site);
  const acknowledgedMs = await acknowledgeOn(page, site);
  const returnedMs = await expectReturned(site);
  await page.getByText('The chamber is in order.').waitFor();
  await expectRecord(page, site, [
    ['occurred', raisedMs, ''],
    ['escalated', escalatedMs, ''],
    ['acknowledged', acknowledgedMs, CREW.name],
    ['returned', returnedMs, ''],
  ]);
});

/** Warms the tent toward 28 °C: that it will get there is told before it does. */
async function expectForetold(site: TentSite): Promise<void> {
  await site.ramp(26, 27.5);
  expect(await site.heat()).toBeUndefined();
  const words = ['Reaches 28 °C in about', 'Batch B-17'];
  await expectTold(site, 1, { kind: 'raised', title: '↑ Tent 1: heat ahead 26.3 °C', words, rule: 'heat-ahead' });
}

/** Warms it past 28 °C: nobody is told of heat before the delay has passed, everybody when it has. */
async function expectRaised(site: TentSite): Promise<number> {
  await site.ramp(27.5, 28);
  await site.waitUntil(site.clock.nowMs() + 5 * SECOND_MS);
  expect(await site.heat(), 'at the limit is not beyond it').toBeUndefined();
  await site.ramp(28, 28.1);
  const beyondMs = site.clock.nowMs();
  await site.ramp(28.1, 28.4);
  await site.waitUntil(beyondMs + ON_DELAY_MS - 1);
  expect(await site.heat()).toBeUndefined();
  expect(site.push.asked()).toBe(1);
  await site.waitUntil(beyondMs + ON_DELAY_MS);
  const since = utcText(beyondMs);
  expect(await site.heat()).toMatchObject({ state: 'unacknowledged', priority: 'high', since, value: 28.4, limit: 28 });
  await expectTold(site, 2, { kind: 'raised', title: '▲ Tent 1: hot 28.4 °C', words: ['Limit 28', 'Batch B-17'] });
  return beyondMs + ON_DELAY_MS;
}

/** Warms it past 29 °C: the same alarm gets worse and is told once more. */
async function expectEscalated(site: TentSite): Promise<number> {
  await site.ramp(28.4, 29.1);
  const beyondMs = site.clock.nowMs();
  await site.waitUntil(beyondMs + CRITICAL_DELAY_MS - 1);
  expect(await site.heat()).toMatchObject({ priority: 'high', level: 1 });
  await site.waitUntil(beyondMs + CRITICAL_DELAY_MS);
  expect(await site.heat()).toMatchObject({ state: 'unacknowledged', priority: 'critical', level: 2, limit: 29 });
  await expectTold(site, 3, {
    kind: 'escalated',
    title: '▲ Tent 1: far too hot 29.1 °C',
    words: ['Above 29', 'It got worse.'],
  });
  return beyondMs + CRITICAL_DELAY_MS;
}

/** Somebody of the crew sees it on the phone and takes it with one tap. */
async function acknowledgeOn(page: Page, site: TentSite): Promise<number> {
  await site.stay(29.2, 4);
  const acknowledgedMs = site.clock.nowMs();
  await page.getByRole('button', { name: /^Acknowledge/ }).click();
  await page.getByText(`Acknowledged by ${CREW.name}`).first().waitFor();
  const acknowledgedAt = utcText(acknowledgedMs);
  expect(await site.heat()).toMatchObject({ state: 'acknowledged', acknowledgedBy: CREW.name, acknowledgedAt });
  // Whose phone it is has not taken it: the others are told who has.
  const words = [`${CREW.name} has it, since `];
  await expectTold(site, 4, { kind: 'taken', title: `▲ Tent 1: ${CREW.name} has it`, words });
  return acknowledgedMs;
}

/** Cools it: just under the limit it is not over, nor at once below the deadband; then it is, and that is told once. */
async function expectReturned(site: TentSite): Promise<number> {
  await site.ramp(29.2, 27.6);
  await site.stay(27.6, (2 * OFF_DELAY_MS) / STEP_MS);
  expect(await site.heat(), 'inside the deadband').toMatchObject({ state: 'acknowledged', level: 1 });
  await site.ramp(27.6, 27.5);
  const insideMs = site.clock.nowMs();
  await site.ramp(27.5, 27.2);
  await site.waitUntil(insideMs + OFF_DELAY_MS - 1);
  expect(await site.heat()).toMatchObject({ state: 'acknowledged' });
  await site.waitUntil(insideMs + OFF_DELAY_MS);
  expect(await site.heat()).toBeUndefined();
  await expectTold(site, 5, { kind: 'returned', title: '▲ Tent 1: heat is over', words: ['29.2 °C at worst'] });
  await site.stay(27, 8);
  await site.app.deliver();
  expect([site.push.asked(), site.webhook.calls.length]).toEqual([5, 5]);
  return insideMs + OFF_DELAY_MS;
}

interface Told {
  readonly kind: string;
  readonly title: string;
  readonly words: readonly string[];
  readonly rule?: string;
}

/** Phone and webhook have got this as their notice number `count`, readable and rightly signed. */
async function expectTold(
  { app, push, webhook }: TentSite,
  count: number,
  { kind, title, words, rule = 'heat' }: Told,
): Promise<void> {
  await Promise.all([app.deliver(), push.whenAsked(count), webhook.whenCalled(count)]);
  expect(push.faults).toEqual([]);
  expect(push.received).toHaveLength(count);
  const shown = push.received.at(-1);
  expect(shown?.title).toBe(title);
  for (const word of words) expect(shown?.body).toContain(word);
  const call = webhook.calls.at(-1);
  expect(webhook.calls).toHaveLength(count);
  expect(call?.isSignatureRight).toBe(true);
  expect(call?.message).toMatchObject({ kind, chamber: { name: 'Tent 1' }, alarm: { rule } });
}

/** The record, downloaded by the link on the tent's page, has every reading and the alarm's steps with their times and who did them. */
async function expectRecord(
  page: Page,
  site: TentSite,
  steps: readonly (readonly [string, number, string])[],
): Promise<void> {
  await page.getByRole('link', { name: 'Tent 1' }).first().click();
  const downloading = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Record as CSV' }).click();
  const file = join(await makeTestFolder(), 'record.csv');
  await (await downloading).saveAs(file);
  const text = await readFile(file, 'utf8');
  const rows = parse(text, { columns: true, bom: true }) as Record<string, string>[];
  const readings = rows.filter(({ section }) => section === 'reading');
  const hotter = readings.filter(({ probe }) => probe?.includes('canopy-1'));
  expect(readings).toHaveLength(2 * site.measured.length);
  expect(hotter.map((row) => ({ at: row['time_utc'], temperature: Number(row['temperature_c']) }))).toEqual(
    site.measured,
  );
  expect(new Set(readings.map((row) => row['temperature_flag']))).toEqual(new Set(['1']));
  const alarm = rows.filter(({ section, what }) => section === 'alarm' && what === 'heat');
  const wanted = new Set(steps.map(([state]) => state));
  const found = alarm.filter(({ state }) => wanted.has(state ?? ''));
  expect(found.map((row) => [row['state'], row['time_utc'], row['person']])).toEqual(
    steps.map(([state, ms, person]) => [state, utcText(ms), person]),
  );
}
