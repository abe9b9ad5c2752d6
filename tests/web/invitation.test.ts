// Inviting somebody: the manager shows a code, the one who is invited opens it on a phone, chooses a password, and is in.
import { expect, it } from 'vitest';
import { openBrowser, openPage, phone, signInOn, wallScreen } from '../support/browser.ts';
import { expectAccessible, expectNoSidewaysScroll, keepPicture, watchConsole } from '../support/look-at-page.ts';
import { MANAGER, openTestApp } from '../support/open-test-app.ts';

it('leads from a manager’s page to a crew member who can sign in, and works once', async () => {
  const { app } = await openTestApp();
  const browser = await openBrowser();
  const office = await openPage(browser, app.url, wallScreen);
  await office.goto('/people');
  await signInOn(office, MANAGER);
  await office.getByRole('button', { name: 'Make an invitation' }).click();
  const form = office.getByRole('form', { name: 'Invite a person' });
  await form.getByLabel('Name').fill('New hand');
  await form.getByLabel('Role').selectOption('Crew');
  await form.getByRole('button', { name: 'Make an invitation' }).click();
  const address = await office.getByLabel('Invitation', { exact: true }).inputValue();
  await office.getByRole('img', { name: 'Invitation as a code for the camera of a phone' }).waitFor();
  await office.getByText(/New hand, crew, until/).waitFor();
  await keepPicture(office, 'invitation', wallScreen);
  await keepPicture(office, 'invitation', phone);
  await expectNoSidewaysScroll(office, 'an invitation');
  await expectAccessible(office, 'an invitation');

  const guest = await openPage(browser, app.url, phone);
  const faults = watchConsole(guest);
  const asked: string[] = [];
  guest.on('request', (request) => asked.push(`${request.url()} ${request.headers()['referer'] ?? ''}`));
  await guest.goto(address);
  await guest.getByText('as crew.').waitFor();
  await keepPicture(guest, 'join', phone);
  await expectNoSidewaysScroll(guest, 'join');
  await expectAccessible(guest, 'join');
  // What was typed stays when the service says no.
  await guest.getByLabel('Your name').fill(MANAGER.name);
  await guest.getByLabel('Your password').fill('a password of the guest');
  await guest.getByRole('button', { name: 'Join' }).click();
  await guest.getByText('somebody has this name already: add a surname').waitFor();
  expect(await guest.getByLabel('Your password').inputValue()).toBe('a password of the guest');
  await guest.getByLabel('Your name').fill('New hand');
  await guest.getByRole('button', { name: 'Join' }).click();
  await guest.getByRole('banner').getByRole('navigation').waitFor();
  const secret = new URL(address).hash.slice('#invitation='.length);
  expect(asked.filter((line) => line.includes(secret))).toEqual([]);
  expect(guest.url()).not.toContain(secret);
  expect((await app.store.people.byName('New hand'))?.role).toBe('crew');
  // The refused name is the one fault that the browser notes.
  expect(faults.filter((fault) => !fault.includes('409'))).toEqual([]);

  const late = await openPage(browser, app.url, phone);
  await late.goto(address);
  await late.getByText('This invitation was used, withdrawn or is older than two days').waitFor();
  await keepPicture(late, 'join-used', phone);
  await expectAccessible(late, 'a used invitation');
  await late.getByRole('link', { name: 'Sign in' }).click();
  await late.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor();
}, 60_000);
