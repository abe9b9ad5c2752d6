// Calibrating a probe on the sensors page, in a real browser: two salts, a refusal at its field, and the history afterwards.
import { expect, it } from 'vitest';
import { openBrowser, openPage, phone, signInOn } from '../support/browser.ts';
import { comeToRest, expectAccessible, expectNoSidewaysScroll, watchConsole } from '../support/look-at-page.ts';
import { openTent } from '../support/open-tent.ts';
import { MANAGER } from '../support/open-test-app.ts';

it('a probe is calibrated over two salts, and the page says what holds', async () => {
  const tent = await openTent();
  await tent.measure(25, 96);
  const page = await openPage(await openBrowser(), tent.app.url, phone);
  const faults = watchConsole(page);
  await page.goto('/');
  await signInOn(page, MANAGER);
  await page.goto('/sensors');
  await page.getByRole('button', { name: 'Calibration of n1 a' }).click();
  await page.getByText('Not calibrated: the values are those of the probe.').waitFor();
  await page.getByText('It sends 25.00 °C and 96.00 %RH now, uncorrected.').waitFor();
  await page.getByLabel('Correct by').selectOption('two-point');
  await page.getByLabel('Raw %RH over the first salt').fill('77,3');
  await page.getByLabel('Raw %RH over the second salt').fill('80');
  await comeToRest(page);
  await expectNoSidewaysScroll(page, 'calibration');
  await expectAccessible(page, 'calibration');
  await page.getByRole('button', { name: 'Save the calibration' }).click();
  await page.getByText(/The probe is more than 10 %RH off here/).waitFor();
  await page.getByLabel('Raw %RH over the second salt').fill('98.3');
  await page.getByRole('button', { name: 'Save the calibration' }).click();
  await page.getByText('77.3 read as 75.3 %RH, 98.3 read as 97.3 %RH').waitFor();
  expect((await tent.chamber()).climate.humidity).toBeCloseTo(94.89, 2);
  await page.goto(`/chambers/${tent.chamberId}`);
  await page.getByText(/dew point 24\.1 ± 0\.4 °C/).waitFor();
  // The browser itself reports the refused request.
  expect(faults.filter((fault) => !/400/.test(fault))).toEqual([]);
}, 60_000);
