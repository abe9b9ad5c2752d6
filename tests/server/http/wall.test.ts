// The cookie of a wall screen: made from a read-only token, sees everything, changes nothing, ends with its token.
import { describe, expect, it } from 'vitest';
import { createApiClient } from '../../support/api-client.ts';
import { openTestApp } from '../../support/open-test-app.ts';
import { readStream } from '../../support/read-stream.ts';

async function openWall(scope = 'read') {
  const { app, api } = await openTestApp();
  const { body } = await api.post<{ id: string; token: string }>('/tokens', { name: 'Packing shed', scope });
  const hung = createApiClient(app.url, { authorization: `Bearer ${body.token}` });
  const answer = await hung.post<{ name?: string; detail?: string }>('/wall');
  // From here on the browser has the cookie alone.
  const screen = createApiClient(app.url, { cookie: answer.headers.get('set-cookie')?.split(';')[0] ?? '' });
  return { app, api, token: body, answer, screen };
}

describe('a wall screen', () => {
  it('sees with its cookie what a viewer sees, the stream too', async () => {
    const { app, answer, screen } = await openWall();
    expect(answer).toMatchObject({ status: 200, body: { name: 'Packing shed' } });
    expect((await screen.get('/chambers')).status).toBe(200);
    const cookie = answer.headers.get('set-cookie')?.split(';')[0] ?? '';
    expect(await (await readStream(app.url, { cookie })).next('hello')).toMatchObject({
      event: 'hello',
    });
  });

  it('changes nothing', async () => {
    const { screen } = await openWall();
    for (const path of ['/chambers', '/people', '/alarms/none/acknowledge', '/tokens'])
      expect((await screen.post(path, { name: 'x' })).status, path).toBe(403);
  });

  it('keeps its cookie from scripts and from other sites, and out of every address', async () => {
    const { answer } = await openWall();
    const cookie = answer.headers.get('set-cookie') ?? '';
    for (const part of ['HttpOnly', 'SameSite=Strict', 'Path=/api/v1', 'Max-Age=34560000'])
      expect(cookie).toContain(part);
  });

  it('renews its cookie by the cookie alone', async () => {
    const { screen } = await openWall();
    expect((await screen.post('/wall')).headers.get('set-cookie')).toContain('Max-Age=34560000');
  });

  it('sees nothing more once its token is withdrawn', async () => {
    const { api, screen, token } = await openWall();
    await api.delete(`/tokens/${token.id}`);
    expect((await screen.get('/chambers')).status).toBe(401);
    expect((await screen.post('/wall')).status).toBe(401);
  });

  it('is not made from a token that may change things', async () => {
    const { answer } = await openWall('full');
    expect(answer.status).toBe(400);
    expect(answer.body.detail).toContain('needs a read-only token');
    expect(answer.headers.get('set-cookie')).toBeNull();
  });
});
