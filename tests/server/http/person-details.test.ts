// How a person is reached and spoken to: each changes their own, a manager those of all, and nothing half is kept.
import { describe, expect, it } from 'vitest';
import type { Person } from '../../../shared/api/session.ts';
import { createApiClient } from '../../support/api-client.ts';
import { openTestApp } from '../../support/open-test-app.ts';

const CREW = { name: 'Crew one', role: 'crew', password: 'a password for the crew' } as const;

async function openWithCrew() {
  const { app, api } = await openTestApp();
  const { body } = await api.post<Person>('/people', CREW);
  const crew = createApiClient(app.url);
  await crew.post('/session', { name: CREW.name, password: CREW.password });
  return { api, crew, id: body.id };
}

describe('the details of a person', () => {
  it('are unknown at first, are changed by the person alone, and stay what they are where they are not named', async () => {
    const { crew } = await openWithCrew();
    const nothing = { email: null, phoneNumber: null, language: null, temperatureUnit: null, quietFrom: null };
    expect((await crew.get('/session')).body).toMatchObject({ person: nothing });
    const own = { email: 'crew@example.org', language: 'nl', temperatureUnit: '°F' };
    expect((await crew.patch('/people/me', own)).body).toMatchObject(own);
    const hours = { quietFrom: '22:00', quietTo: '06:30' };
    expect((await crew.patch('/people/me', hours)).body).toMatchObject({ ...own, ...hours });
    expect((await crew.get('/session')).body).toMatchObject({ person: { ...own, ...hours } });
  });

  it('are changed by a manager without signing the person out; a new password signs out', async () => {
    const { api, crew, id } = await openWithCrew();
    expect((await api.patch(`/people/${id}`, { phoneNumber: '+31600000000' })).status).toBe(200);
    expect((await crew.get('/session')).body).toMatchObject({ person: { phoneNumber: '+31600000000' } });
    expect((await api.patch(`/people/${id}`, { password: 'another password, longer' })).status).toBe(200);
    expect((await crew.get('/session')).body).toMatchObject({ person: null });
  });

  it.each([
    ['one end of the quiet hours only', { quietFrom: '22:00' }, 'enter both'],
    ['a time of day that is none', { quietFrom: '24:00', quietTo: '06:00' }, 'write it as 22:30'],
    ['a number without its country', { phoneNumber: '0612345678' }, 'the code of the country'],
    ['a language that is not spoken', { language: 'fr' }, 'language'],
    ['an address that is none', { email: 'nowhere' }, 'email'],
  ])('refuse %s with a sentence and keep what was', async (_what, details, words) => {
    const { crew } = await openWithCrew();
    const before = await crew.get('/session');
    const answer = await crew.patch<{ detail: string }>('/people/me', details);
    expect(answer.status).toBe(400);
    expect(answer.body.detail).toContain(words);
    expect((await crew.get('/session')).body).toEqual(before.body);
  });
});
