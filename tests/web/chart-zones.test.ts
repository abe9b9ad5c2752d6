// The axis of time in a real browser: the site's clock, not the phone's, and right where the site's clock is moved.
import { describe, expect, it } from 'vitest';
import { HOUR_MS, MINUTE_MS } from '../../shared/units.ts';
import { openBrowser, openPage, signInOn } from '../support/browser.ts';
import { drawnText, keepDrawnText } from '../support/drawn-text.ts';
import { comeToRest } from '../support/look-at-page.ts';
import { openBatch, openTent } from '../support/open-tent.ts';
import { MANAGER } from '../support/open-test-app.ts';

const screen = { width: 768, height: 1024 };

/** The clock times under a chart of the six hours round `nowMs`, as a phone in another zone draws them. */
async function timesOn(zone: string, phoneZone: string, nowMs: number): Promise<readonly string[]> {
  const tent = await openTent({ startMs: nowMs - 6 * HOUR_MS });
  const settings = { siteName: 'Test nursery', zone, altitudeM: 0, temperatureUnit: '°C', mappings: [] };
  await tent.api.put('/settings', settings);
  await openBatch(tent);
  for (let minute = 0; minute < 360; minute += 10) {
    await tent.measure(23 + minute / 300);
    tent.clock.advance(10 * MINUTE_MS);
  }
  const page = await openPage(await openBrowser(), tent.app.url, screen, { timezoneId: phoneZone });
  await keepDrawnText(page);
  await page.goto('/');
  await signInOn(page, MANAGER);
  await page.goto(`/chambers/${tent.chamberId}`);
  await comeToRest(page);
  await page.locator('.chart-canvas canvas').waitFor();
  return (await drawnText(page, '.chart-canvas')).filter((text) =>
    /^\d\d:\d\d$|^[A-Z][a-z]{2} \d+$|^\d+ [A-Z]/.test(text),
  );
}

describe('the axis of time', () => {
  it.each([
    {
      why: 'Amsterdam puts its clock forward at 02:00, the phone is in New York',
      zone: 'Europe/Amsterdam',
      phone: 'America/New_York',
      now: '2026-03-29T03:00:00Z',
      times: ['Sun 29', '01:00', '03:00', '04:00', '05:00'],
    },
    {
      why: 'Amsterdam puts it back at 03:00: 02:00 comes twice',
      zone: 'Europe/Amsterdam',
      phone: 'Asia/Tokyo',
      now: '2026-10-25T03:00:00Z',
      times: ['01:00', '02:00', '02:00', '03:00', '04:00'],
    },
    {
      why: 'Lord Howe Island puts it forward by half an hour at 02:00, and the phone moves its own clock on another day',
      zone: 'Australia/Lord_Howe',
      phone: 'Europe/Amsterdam',
      now: '2026-10-03T18:00:00Z',
      times: ['01:00', '03:00', '04:00', '05:00'],
    },
    {
      why: 'a quarter of an hour in Kathmandu',
      zone: 'Asia/Kathmandu',
      phone: 'UTC',
      now: '2026-03-02T06:00:00Z',
      times: ['07:00', '08:00', '09:00', '10:00', '11:00', '12:00'],
    },
  ])(
    '$why',
    async ({ zone, phone, now, times }) => {
      const drawn = await timesOn(zone, phone, Date.parse(now));
      expect(drawn.filter((text) => times.includes(text))).toEqual(times);
      expect(
        drawn.filter((text) => /^\d\d:(?!00)/.test(text)),
        'no tick off the hour',
      ).toEqual([]);
    },
    90_000,
  );
});
