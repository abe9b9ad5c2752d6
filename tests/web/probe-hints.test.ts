// What is said beside a probe of its battery and of wet air: as words, and on the sensors page in a real browser.
import { describe, expect, it } from 'vitest';
import type { BatteryView } from '../../shared/api/probes.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS, utcText } from '../../shared/units.ts';
import { batteryWords, wetAirWords } from '../../web/probe-hints.ts';
import { openBrowser, openPage, phone, type Screen, signInOn, wallScreen } from '../support/browser.ts';
import { look, watchConsole } from '../support/look-at-page.ts';
import { openTent, TENT_MS } from '../support/open-tent.ts';
import { MANAGER } from '../support/open-test-app.ts';
import { storedReading } from '../support/open-test-store.ts';

describe('wet air is said from 240 hours on', () => {
  it.each<[number | null, RegExp | null, string]>([
    [null, null, 'not counted yet'],
    [0, null, 'none'],
    [239.99, null, 'just before'],
    [
      240,
      /^Long in wet air \(240 h above 90 %RH in 30 days; our own mark is 240 h\): its humidity may read high\./,
      'the mark',
    ],
    [311.9, /\(311 h above 90 %RH in 30 days;/, 'whole hours, never more than there were'],
  ])('%s hours (%s)', (hoursAbove90Rh, said) => {
    const text = wetAirWords({ hoursAbove90Rh });
    if (said === null) expect(text).toBeNull();
    else expect(text).toMatch(said);
  });
});

describe('a battery is called low below 20 %', () => {
  const told = (level: number, unit: BatteryView['unit'], ageMs = 0): BatteryView => ({
    ...{ level, unit },
    at: utcText(TENT_MS - ageMs),
  });
  it.each<[why: string, battery: BatteryView | null, said: string | null]>([
    ['nothing was told', null, null],
    ['just not low', told(20, 'percent'), 'battery 20 %'],
    ['low', told(19, 'percent'), 'battery low: 19 %, change or charge it'],
    ['volts are no percent, and so never low', told(3.7, 'volts'), 'battery 3.70 V'],
    ['a unit is not guessed', told(3.7, 'unclear'), 'battery 3.70, in a unit that the node does not tell'],
    ['told yesterday, as by a node that tells once a day', told(80, 'percent', DAY_MS), 'battery 80 %'],
    ['an old value says so', told(80, 'percent', 3 * DAY_MS), 'battery 80 %, told 3 days ago'],
    [
      'a battery that was low long ago may have ended since',
      told(9, 'percent', 40 * DAY_MS),
      'battery low: 9 %, change or charge it, told 40 days ago',
    ],
  ])('%s', (_, battery, said) => {
    expect(batteryWords(battery, TENT_MS)).toBe(said);
  });
});

it.each<[string, Screen]>([
  ['a phone', phone],
  ['the wall screen', wallScreen],
])(
  'on %s, a probe that was long in wet air says so, and each probe how its battery is',
  async (_name, screen) => {
    const tent = await openTent({ startMs: TENT_MS - 260 * HOUR_MS });
    const readings = Array.from({ length: 250 * 6 }, (_, index) =>
      storedReading({ timeMs: TENT_MS + (index * 10 - 250 * 60) * MINUTE_MS, humidity: 97 }),
    );
    await tent.app.store.commit({ readings });
    tent.clock.set(TENT_MS);
    const payload = new TextEncoder().encode(
      '[{"temperature":23,"humidity":96,"probe":"a","battery":14},{"temperature":21,"humidity":55,"probe":"b","battery":14}]',
    );
    await tent.app.intake.push({ topic: 'takewell/v1/n1/readings', payload, arrivalMs: TENT_MS, retained: false });
    const page = await openPage(await openBrowser(), tent.app.url, screen);
    const faults = watchConsole(page);
    await page.goto('/');
    await signInOn(page, MANAGER);
    await page.goto('/sensors');
    const probe = (name: string) => page.locator('.probe', { has: page.getByRole('heading', { name }) });
    await probe('n1 a')
      .getByText(/^Long in wet air \(250 h above 90 %RH in 30 days;/)
      .waitFor();
    await probe('n1 a').getByText('battery low: 14 %, change or charge it').waitFor();
    await probe('n1 b').getByText('battery low: 14 %, change or charge it').waitFor();
    expect(
      await probe('n1 b')
        .getByText(/wet air/)
        .count(),
    ).toBe(0);
    await look(page, 'probe-hints', screen);
    expect(faults).toEqual([]);
  },
  60_000,
);
