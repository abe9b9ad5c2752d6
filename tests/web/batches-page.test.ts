// Batches from the list of batches: opening one, finishing one with the take counted, laying two over each other.
import { describe, expect, it } from 'vitest';
import type { BatchView } from '../../shared/api/batches.ts';
import { openBrowser, openPage, phone, signInOn, tablet, wallScreen } from '../support/browser.ts';
import { look, watchConsole } from '../support/look-at-page.ts';
import { MANAGER, openTestApp } from '../support/open-test-app.ts';

/** Two chambers, each with a canopy probe, and nothing in them. */
async function openTwoTents() {
  const { app, api } = await openTestApp();
  for (const name of ['Tent 1', 'Tent 2']) {
    const chamberId = (await api.post<{ id: string }>('/chambers', { name })).body.id;
    await api.post('/probes', { nodeId: name.replace(' ', '-'), address: 'a', chamberId, place: 'canopy' });
  }
  return { app, api };
}

describe.each([
  { name: 'a phone', screen: phone },
  { name: 'a tablet', screen: tablet },
  { name: 'the wall screen', screen: wallScreen },
])('on $name', ({ screen }) => {
  it('two batches are opened and finished with their take, and stand beside each other', async () => {
    const { app, api } = await openTwoTents();
    const page = await openPage(await openBrowser(), app.url, screen);
    const faults = watchConsole(page);
    await page.goto('/batches');
    await signInOn(page, MANAGER);
    for (const [chamber, code] of [
      ['Tent 1', 'B-1'],
      ['Tent 2', 'B-2'],
    ] as const) {
      const disclosure = page.getByRole('button', { name: 'Open a batch' }).first();
      await disclosure.click();
      await page.getByLabel('In which chamber').selectOption({ label: chamber });
      const form = page.getByRole('form', { name: 'Open a batch' });
      await form.getByLabel('Batch code').fill(code);
      await form.getByLabel('Plants').fill('200');
      await form.getByLabel('Is the tent closed already?').selectOption('now');
      if (code === 'B-1') await look(page, 'batches-open', screen);
      await form.getByRole('button', { name: 'Open a batch' }).click();
      await page.getByRole('rowheader', { name: code }).waitFor();
    }
    for (const [code, taken] of [
      ['B-1', '190'],
      ['B-2', '150'],
    ] as const) {
      await page.getByRole('button', { name: 'Finish a batch' }).first().click();
      const form = page.getByRole('form', { name: 'Count the take' });
      const which = form.getByLabel('Which batch');
      await which.selectOption((await which.getByRole('option', { name: code }).getAttribute('value')) ?? '');
      await form.getByLabel('Plants taken').fill('900');
      await form.getByRole('button', { name: 'Finish the batch' }).click();
      // More than there were: said at the field, and what was typed stays.
      await form.locator('.fault').getByText('200').waitFor();
      expect(await form.getByLabel('Plants taken').inputValue()).toBe('900');
      if (code === 'B-1') await look(page, 'batches-finish-refused', screen);
      await form.getByLabel('Plants taken').fill(taken);
      await form.getByRole('button', { name: 'Finish the batch' }).click();
      await page.getByRole('row').filter({ hasText: code }).getByText(taken).first().waitFor();
    }
    const { items } = (await api.get<{ items: BatchView[] }>('/batches')).body;
    expect(items.map(({ code, takenPlants }) => [code, takenPlants]).sort()).toEqual([
      ['B-1', 190],
      ['B-2', 150],
    ]);
    for (const code of ['B-1', 'B-2']) await page.getByLabel(`Compare batch ${code}`).check();
    await page
      .getByRole('img', { name: /B-1, B-2$/ })
      .first()
      .waitFor();
    await look(page, 'batches-compared', screen);
    expect(faults.filter((fault) => !fault.includes('400'))).toEqual([]);
  }, 120_000);
});
