// A chamber that was removed after its batch is brought back on the page of settings; where its name is taken meanwhile, under another.
import { expect, it } from 'vitest';
import { openBrowser, openPage, phone, signInOn, wallScreen } from '../support/browser.ts';
import { look, watchConsole } from '../support/look-at-page.ts';
import { openBatch, openTent } from '../support/open-tent.ts';
import { MANAGER } from '../support/open-test-app.ts';

it('is brought back, and keeps what was typed while its name is taken', async () => {
  const tent = await openTent();
  const batch = await openBatch(tent);
  await tent.api.post(`/batches/${batch.id}/finish`, { takenPlants: 90 });
  expect((await tent.api.delete(`/chambers/${tent.chamberId}`)).status).toBe(204);
  await tent.api.post('/chambers', { name: 'Tent 1' });
  const page = await openPage(await openBrowser(), tent.app.url, phone);
  const faults = watchConsole(page);
  await page.goto('/settings');
  await signInOn(page, MANAGER);
  const retired = page.getByRole('region', { name: 'Retired chambers' });
  await retired.getByText(/^Tent 1, since /).waitFor();
  await retired.getByRole('button', { name: 'Bring back Tent 1' }).click();
  const form = retired.getByRole('form', { name: 'Bring back Tent 1' });
  await form.getByRole('button', { name: 'Bring back' }).click();
  await form.getByRole('alert').waitFor();
  expect(await form.getByLabel('Name').inputValue()).toBe('Tent 1');
  for (const screen of [wallScreen, phone]) {
    await page.setViewportSize(screen);
    await look(page, 'retired', screen);
  }
  await form.getByLabel('Name').fill('Tent 2');
  await form.getByRole('button', { name: 'Bring back' }).click();
  await retired.getByText('No chamber is retired.').waitFor();
  await page.goto('/');
  await page.getByRole('article', { name: 'Tent 2' }).waitFor();
  expect(faults.filter((fault) => !fault.includes('409'))).toEqual([]);
}, 60_000);
