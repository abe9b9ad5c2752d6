// The demo starts beside whatever runs already, and keeps its invented readings to itself.
import { createServer } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import { readDemoSettings } from '../../../server/demo/demo-settings.ts';

/** Somebody else's program on a port of this machine. */
async function takePort(): Promise<number> {
  const server = createServer();
  onTestFinished(() => new Promise<void>((resolve) => server.close(() => resolve())));
  return new Promise((resolve) => {
    server.listen(0, '127.0.0.1', () => resolve((server.address() as { port: number }).port));
  });
}

describe('readDemoSettings', () => {
  it('uses its own folder, whatever folder the environment names', async () => {
    const settings = await readDemoSettings({ TAKEWELL_DATA_DIR: '/var/lib/takewell' }, '/tmp/throw-away');
    expect(settings.dataDir).toBe('/tmp/throw-away');
  });

  it('publishes to its own broker only, even where an outside one is set', async () => {
    const settings = await readDemoSettings({ TAKEWELL_MQTT_URL: 'mqtt://192.0.2.7:1883' }, '/tmp/throw-away');
    expect(settings.mqtt.url).toBeNull();
  });

  it('leaves a chosen port as it is, taken or not: the service says that it is in use', async () => {
    const port = await takePort();
    const chosen = { TAKEWELL_HTTP_PORT: String(port), TAKEWELL_MQTT_PORT: String(port) };
    const settings = await readDemoSettings(chosen, '/tmp/throw-away');
    expect([settings.http.port, settings.mqtt.port]).toEqual([port, port]);
  });

  it('takes any free port instead of a usual one that is taken, and the usual one when it is free', async () => {
    const usual = { http: 8420, mqtt: 1883 };
    const free = await readDemoSettings({}, '/tmp/throw-away');
    for (const part of ['http', 'mqtt'] as const) {
      const server = createServer();
      const isOurs = await new Promise<boolean>((resolve) => {
        server.once('error', () => resolve(false));
        server.listen(usual[part], '127.0.0.1', () => resolve(true));
      });
      const beside = await readDemoSettings({}, '/tmp/throw-away');
      if (isOurs) await new Promise<void>((resolve) => server.close(() => resolve()));
      expect(beside[part].port).toBe(0);
      expect([0, usual[part]]).toContain(free[part].port);
    }
  });

  it('refuses a setting that the service would refuse', async () => {
    await expect(readDemoSettings({ TAKEWELL_HTTP_PORT: 'many' }, '/tmp/throw-away')).rejects.toThrow(
      'TAKEWELL_HTTP_PORT',
    );
  });
});
