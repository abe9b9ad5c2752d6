// The rota edited in a real browser, by pointer and by keyboard, and the quiet hours of the one who is signed in.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { DutyView } from '../../shared/api/duty.ts';
import type { Person } from '../../shared/api/session.ts';
import { openBrowser, openPage, phone, signInOn, wallScreen } from '../support/browser.ts';
import {
  comeToRest,
  expectAccessible,
  expectNoSidewaysScroll,
  keepPicture,
  watchConsole,
} from '../support/look-at-page.ts';
import { MANAGER, openTestApp } from '../support/open-test-app.ts';

/** Nothing is sent to it. */
const SUBSCRIPTION = { endpoint: 'https://push.example.org/1', keys: { p256dh: 'BA', auth: 'AA' } };

async function openPeople(screen = wallScreen, path = '/people') {
  const { app, api } = await openTestApp();
  for (const name of ['Ida Invented', 'Oskar Example'])
    await api.post('/people', { name, role: 'crew', password: 'a short sentence' });
  const page = await openPage(await openBrowser(), app.url, screen);
  const faults = watchConsole(page);
  await page.goto(path);
  await signInOn(page, MANAGER);
  const duty = async () => (await api.get<DutyView>('/duty')).body;
  return { page, faults, api, duty };
}

async function addByPointer(
  page: Page,
  name: string,
  days: readonly string[],
  from: string,
  to: string,
): Promise<void> {
  await page.getByRole('button', { name: 'Add times of duty' }).first().click();
  const form = page.getByRole('form', { name: 'Add times of duty' });
  await form.getByLabel('Who').selectOption({ label: name });
  for (const day of days) await form.getByLabel(day).check();
  await form.getByLabel('From').fill(from);
  await form.getByLabel('To', { exact: true }).fill(to);
  await form.getByRole('button', { name: 'Add times of duty' }).click();
}

it('a rota is put together, seen as a week with its gaps, and taken apart again', async () => {
  const { page, faults, api, duty } = await openPeople();
  await page.getByText('Alerts can reach nobody yet').waitFor();
  await api.post('/phones', { name: 'Phone', subscription: SUBSCRIPTION });
  await page.reload();
  await page.getByText('There is no rota: everybody who can be told is on duty always').waitFor();
  const workdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday'];
  await addByPointer(page, 'Ida Invented', workdays, '06:00', '14:00');
  await page.getByText('Ida Invented: Mon–Fri, 06:00–14:00', { exact: true }).waitFor();
  await addByPointer(page, 'Oskar Example', [...workdays, 'Saturday', 'Sunday'], '14:00', '06:00');
  await page.getByText('Oskar Example: every day, 14:00–06:00 the next day', { exact: true }).waitFor();
  await page.getByRole('heading', { name: 'Gaps in the next seven days' }).waitFor();
  expect((await duty()).spans).toHaveLength(12);
  for (const screen of [wallScreen, phone]) {
    await page.setViewportSize(screen);
    await comeToRest(page);
    await expectAccessible(page, 'people with a rota');
    await expectNoSidewaysScroll(page, 'people with a rota');
    await keepPicture(page, 'people-rota', screen);
  }
  await page.getByRole('button', { name: 'Remove Ida Invented: Mon–Fri' }).click();
  await expect.poll(async () => (await duty()).spans.length).toBe(7);
  expect(faults).toEqual([]);
});

it('a rota is put together with the keyboard alone, and says when no day was chosen', async () => {
  const { page, duty } = await openPeople();
  await page.getByRole('button', { name: 'Add times of duty' }).focus();
  await page.keyboard.press('Enter');
  const form = page.getByRole('form', { name: 'Add times of duty' });
  await form.getByLabel('Who').focus();
  await page.keyboard.press('Tab');
  const send = form.getByRole('button', { name: 'Add times of duty' });
  await send.focus();
  await page.keyboard.press('Enter');
  await form.getByText('Choose at least one day.').waitFor();
  expect((await duty()).spans).toEqual([]);
  await form.getByLabel('Monday').focus();
  await page.keyboard.press('Space');
  await send.focus();
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await duty()).spans).toMatchObject([{ weekday: 1, from: '06:00', to: '14:00' }]);
});

it('the order and the times of waiting are changed; times that do not rise are refused and kept in the form', async () => {
  const { page, duty } = await openPeople();
  await page.getByRole('button', { name: 'Earlier: Oskar Example' }).click();
  await expect.poll(async () => (await duty()).order.length).toBe(3);
  const names = (await duty()).people.map(({ name }) => name);
  expect(names.indexOf('Oskar Example')).toBe(0);
  const form = page.getByRole('form', { name: 'How long an alarm waits' });
  await form.getByLabel('Everyone after, minutes').fill('2');
  await form.getByRole('button', { name: 'Save times' }).click();
  await form.getByText('everyone is told after the next person, not before').waitFor();
  expect(await form.getByLabel('Everyone after, minutes').inputValue()).toBe('2');
  await form.getByLabel('Everyone after, minutes').fill('12');
  await form.getByRole('button', { name: 'Save times' }).click();
  await expect.poll(async () => (await duty()).everyoneAfterMinutes).toBe(12);
});

it('quiet hours need both ends, and are kept', async () => {
  const { page, api } = await openPeople(phone, '/my-alerts');
  const form = page.getByRole('form', { name: 'How I am told' });
  await form.getByLabel('E-mail address').fill('invented@example.org');
  await form.getByLabel('Quiet from').fill('22:00');
  await form.getByRole('button', { name: 'Save' }).click();
  await form.getByText('Quiet hours need a beginning and an end').waitFor();
  await form.getByLabel('Quiet to').fill('06:30');
  await form.getByRole('button', { name: 'Save' }).click();
  await page.getByText('Saved: this is how you are told').waitFor();
  const { body } = await api.get<{ items: object[] }>('/people');
  expect(body.items).toContainEqual(
    expect.objectContaining({ email: 'invented@example.org', quietFrom: '22:00', quietTo: '06:30' }),
  );
});

it.each([
  ['a phone', phone],
  ['the wall screen', wallScreen],
])(
  'on %s a manager enters how somebody else is told',
  async (_name, screen) => {
    const { page, faults, api } = await openPeople(screen);
    const ida = async () =>
      (await api.get<{ items: Person[] }>('/people')).body.items.find(({ name }) => name === 'Ida Invented');
    await page.getByRole('button', { name: 'How they are told: Ida Invented' }).click();
    const form = page.getByRole('form', { name: 'How they are told: Ida Invented' });
    await form.getByLabel('E-mail address').fill('ida@nursery.example');
    await form.getByLabel('Telephone number').fill('+31 6 1234 5678');
    await form.getByLabel('Quiet from').fill('22:00');
    // One end of the quiet hours alone is refused, and what was typed stays.
    await form.getByRole('button', { name: 'Save' }).click();
    await form.getByRole('alert').waitFor();
    await form.getByLabel('Quiet to').fill('05:30');
    await form.getByLabel('Language').selectOption('es');
    await form.getByLabel('Temperatures in').selectOption('°F');
    await comeToRest(page);
    await keepPicture(page, 'how-they-are-told', screen);
    await expectNoSidewaysScroll(page, 'how they are told');
    await expectAccessible(page, 'how they are told');
    await form.getByRole('button', { name: 'Save' }).click();
    await expect.poll(ida).toMatchObject({
      email: 'ida@nursery.example',
      phoneNumber: '+31612345678',
      quietFrom: '22:00',
      quietTo: '05:30',
    });
    expect(await ida()).toMatchObject({ language: 'es', temperatureUnit: '°F' });
    // The refusal is the one thing that the browser's console may name.
    expect(faults.filter((fault) => !fault.includes('400'))).toEqual([]);
  },
  120_000,
);
