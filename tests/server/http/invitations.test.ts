// Invitations: a link makes one person, once, within two days, with the role its maker chose and no other.
import { describe, expect, it } from 'vitest';
import type { CreatedInvitation, InvitationView } from '../../../shared/api/invitations.ts';
import type { Session } from '../../../shared/api/session.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { createApiClient } from '../../support/api-client.ts';
import { MANAGER, openTestApp } from '../../support/open-test-app.ts';
import { createTestClock } from '../../support/test-clock.ts';

interface Refusal {
  readonly detail: string;
  readonly faults?: readonly { readonly where: string }[];
}
interface Made {
  readonly id: string;
  readonly name: string;
  readonly role: string;
}
const PASSWORD = 'a password of the invited';
const OLD = 'This invitation was used, withdrawn or is older than two days: ask for a new one.';

async function openInviting(role = 'crew') {
  const clock = createTestClock(Date.parse('2026-04-08T10:00:00Z'));
  const { app, api } = await openTestApp({ clock });
  const { body } = await api.post<CreatedInvitation>('/invitations', { name: 'New hand', role });
  const guest = createApiClient(app.url);
  const accept = (more: object = {}) =>
    guest.post<Made & Refusal>('/invitations/accept', {
      secret: body.secret,
      name: 'New hand',
      password: PASSWORD,
      ...more,
    });
  const waiting = async () => (await api.get<{ items: InvitationView[] }>('/invitations')).body.items;
  return { app, api, clock, guest, invitation: body, accept, waiting };
}

describe('an invitation', () => {
  it('makes a person with the role that was chosen, who can sign in at once', async () => {
    const { guest, invitation, accept, waiting } = await openInviting();
    expect(invitation).toMatchObject({ name: 'New hand', role: 'crew', expiresAt: '2026-04-10T10:00:00Z' });
    expect((await guest.post<InvitationView>('/invitations/look', { secret: invitation.secret })).body).toMatchObject({
      name: 'New hand',
      role: 'crew',
    });
    expect(await accept({ name: 'Newcomer', role: 'manager' })).toMatchObject({
      status: 201,
      body: { name: 'Newcomer', role: 'crew' },
    });
    await guest.post('/session', { name: 'Newcomer', password: PASSWORD });
    expect((await guest.get<Session>('/session')).body.person).toMatchObject({ name: 'Newcomer', role: 'crew' });
    expect(await waiting()).toEqual([]);
  });

  it('works once, also for two who try at the same moment', async () => {
    const { app, accept } = await openInviting();
    const answers = await Promise.all([accept({ name: 'Ann' }), accept({ name: 'Bea' })]);
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 404]);
    expect((await accept({ name: 'Cleo' })).body.detail).toBe(OLD);
    expect((await app.store.people.list()).length).toBe(2);
  });

  it.each([
    { age: '48 hours less a minute', ms: 48 * HOUR_MS - MINUTE_MS, status: 201, why: 'it still holds' },
    { age: '48 hours', ms: 48 * HOUR_MS, status: 404, why: 'it has run out' },
  ])('after $age: $why', async ({ ms, status }) => {
    const { clock, accept } = await openInviting();
    clock.advance(ms);
    expect((await accept()).status).toBe(status);
  });

  it('that was withdrawn is of no use, and is said to be gone when withdrawn again', async () => {
    const { api, invitation, accept } = await openInviting();
    expect((await api.delete(`/invitations/${invitation.id}`)).status).toBe(204);
    expect((await accept()).body.detail).toBe(OLD);
    expect((await api.delete(`/invitations/${invitation.id}`)).status).toBe(404);
  });

  it('goes with the manager who made it', async () => {
    const { app, api, waiting } = await openInviting();
    await api.post('/people', { name: 'Second', role: 'manager', password: PASSWORD });
    const second = createApiClient(app.url);
    await second.post('/session', { name: 'Second', password: PASSWORD });
    const { body } = await second.post<CreatedInvitation>('/invitations', { role: 'manager' });
    const people = (await api.get<{ items: Made[] }>('/people')).body.items;
    await api.delete(`/people/${people.find(({ name }) => name === 'Second')?.id}`);
    expect((await waiting()).map(({ id }) => id)).not.toContain(body.id);
    const guest = createApiClient(app.url);
    expect((await guest.post<Refusal>('/invitations/look', { secret: body.secret })).body.detail).toBe(OLD);
  });

  it('is kept when the name is taken or the password too short, so that it can be tried again', async () => {
    const { accept, waiting } = await openInviting();
    expect(await accept({ name: MANAGER.name.toUpperCase() })).toMatchObject({
      status: 409,
      body: { faults: [{ where: 'name' }] },
    });
    expect((await accept({ password: 'short' })).status).toBe(400);
    expect(await waiting()).toHaveLength(1);
    expect((await accept()).status).toBe(201);
  });

  it('never lists its secret, and keeps it as a hash only', async () => {
    const { app, api, invitation } = await openInviting();
    expect((await api.text('/invitations')).body).not.toContain(invitation.secret);
    expect(await app.store.invitations.bySecret(invitation.secret, 0)).toBeNull();
  });

  it('is slow to guess at', async () => {
    const { guest } = await openInviting();
    const tries = Array.from({ length: 11 }, () => guest.post('/invitations/look', { secret: 'a guess' }));
    expect((await Promise.all(tries)).filter(({ status }) => status === 429).length).toBeGreaterThan(0);
  });
});
