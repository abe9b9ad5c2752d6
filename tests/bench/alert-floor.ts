// The floors of an alert: the same library broker, and a subscriber in its process that POSTs at once for a reading that is too hot, with a body as
// large as ours and on a connection of its own, as the service does: between two alerts of a night no connection stays open.
// The bare one decides, stores and encrypts nothing. The owing one also does what no alert may leave out: a durable commit of one row before, and
// the encryption for the phone (RFC 8291), its signature made beforehand as ours is.
import { createECDH, randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import http from 'node:http';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Aedes } from 'aedes';
import webPush from 'web-push';
import { openDatabase } from '../../server/store/open-database.ts';

export interface AlertFloor {
  readonly port: number;
  close(): Promise<void>;
}

/** Bytes of a push as the service sends it, before encryption. */
const BODY = 'x'.repeat(900);

/** Tells `url` of every reading of `hot` °C or more, and does nothing else. */
export function openBareFloor(url: string, hot: number): Promise<AlertFloor> {
  return openFloor(hot, () => postBare(url, {}, Buffer.from(BODY)));
}

/** The same with what every alert owes: stored before it is told, and readable by its phone alone. */
export async function openOwingFloor(url: string, hot: number): Promise<AlertFloor> {
  const folder = mkdtempSync(join(tmpdir(), 'takewell-bench-'));
  const db = openDatabase({ file: join(folder, 'floor.sqlite'), nowMs: 0 });
  const insert = db.prepare('INSERT INTO readings (probe, t, flags, delay) VALUES (1, ?, 17, 0)');
  const phone = makePhone();
  const pair = webPush.generateVAPIDKeys();
  const { origin } = new URL(url);
  const subject = 'mailto:takewell@nursery.example';
  const headers = webPush.getVapidHeaders(origin, subject, pair.publicKey, pair.privateKey, 'aes128gcm');
  let told = 0;
  const floor = await openFloor(hot, () => {
    told += 1;
    insert.run(told);
    const sealed = webPush.generateRequestDetails({ endpoint: url, keys: phone }, BODY, { headers: { ...headers } });
    postBare(url, asText(sealed.headers), sealed.body ?? Buffer.alloc(0));
  });
  return {
    port: floor.port,
    async close() {
      await floor.close();
      db.close();
      rmSync(folder, { recursive: true });
    },
  };
}

/** Keys as a browser makes them when it subscribes; nobody reads what comes. */
export function makePhone(): { readonly p256dh: string; readonly auth: string } {
  return {
    p256dh: createECDH('prime256v1').generateKeys('base64url'),
    auth: randomBytes(16).toString('base64url'),
  };
}

async function openFloor(hot: number, tell: () => void): Promise<AlertFloor> {
  const aedes = await Aedes.createBroker({});
  const server = createServer(aedes.handle);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const hear: Parameters<typeof aedes.subscribe>[1] = ({ payload }, done) => {
    if (JSON.parse(payload.toString()).temperature >= hot) tell();
    done();
  };
  await new Promise<void>((resolve) => aedes.subscribe('takewell/#', hear, resolve));
  return {
    port: (server.address() as AddressInfo).port,
    async close() {
      await new Promise<void>((resolve) => aedes.close(() => resolve()));
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

function asText(headers: object): Record<string, string> {
  return Object.fromEntries(Object.entries(headers).map(([name, value]) => [name, String(value)]));
}

function postBare(url: string, headers: Record<string, string>, body: Buffer): void {
  http.request(url, { method: 'POST', agent: false, headers }, (response) => response.resume()).end(body);
}
