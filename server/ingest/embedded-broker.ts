// The broker inside the process. A QoS 1 message is acknowledged only after the intake has stored it: aedes waits for the answer of
// `authorizePublish`, and for nothing later. A refused payload is answered without error, or the node's connection would be closed.
import type { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import { createServer, type Server, type Socket } from 'node:net';
import { createServer as createTlsServer } from 'node:tls';
import { Aedes, type AuthenticateError, type Client } from 'aedes';
import type { Logger } from 'pino';
import { finding } from '../../shared/finding.ts';
import { Problem } from '../../shared/problem.ts';
import { parseReadingTopic } from '../../shared/readings/reading-topic.ts';
import type { Clock } from '../clock.ts';
import type { Settings } from '../settings.ts';
import { type Broker, isOwnOutput, SERVICE_STATUS_TOPIC } from './broker.ts';
import { createFrameGuard } from './frame-guard.ts';
import type { Intake } from './intake.ts';

export interface EmbeddedBrokerParts {
  readonly settings: Settings['mqtt'];
  readonly intake: Intake;
  readonly clock: Clock;
  readonly log: Logger;
  /** Checks a node's own name and password. */
  readonly checkNode: (name: string, password: string) => Promise<boolean>;
}

/** Larger packets close the connection; payloads up to here are refused on record by the decoder. */
const MOST_PACKET_BYTES = 16 * 1024 * 1024;
const NOT_AUTHORISED = 5;

/** Starts listening. Throws a Problem `port-in-use` or `bad-setting`. */
export async function openEmbeddedBroker(parts: EmbeddedBrokerParts): Promise<Broker> {
  const { settings, log } = parts;
  const isOpen = isLoopback(settings.host);
  const names = new WeakMap<Client, string>();
  /** Of topics that are asked about: the connections that a message of now is handed to. */
  const handedTo = new Map<string, Set<string>>();
  const aedes = await Aedes.createBroker({
    connectTimeout: 10_000,
    keepaliveLimit: 300,
    drainTimeout: 20_000,
    authenticate: (client, name, password, done) => {
      if (isOpen) return done(null, true);
      names.set(client, name ?? '');
      signIn(parts, name, password).then(
        (fault) => done(fault, fault === null),
        (error: unknown) => done(refusal(String(error)), false),
      );
    },
    authorizePublish: (client, packet, done) => {
      const topic = packet.topic;
      const fault = isOpen || client === null ? findPublishFault(topic) : findForeignTopic(topic, names.get(client));
      if (fault !== null) {
        log.warn({ topic, client: client?.id }, fault);
        return done(new Error(fault));
      }
      const payload = typeof packet.payload === 'string' ? Buffer.from(packet.payload) : packet.payload;
      parts.intake
        .push({ topic, payload, arrivalMs: parts.clock.nowMs(), retained: false })
        .then(() => done(null), done)
        .catch((error: unknown) =>
          log.error({ err: error, topic }, 'the broker failed on a message that was answered'),
        );
    },
    authorizeSubscribe: (_client, subscription, done) => {
      const isAllowed = isOpen || isOwnOutput(subscription.topic);
      // MQTT 3.1.1 §3.9.3: a null subscription is answered with the failure code and the connection stays.
      done(null, isAllowed ? subscription : null);
    },
    authorizeForward: (client, packet) => {
      handedTo.get(packet.topic)?.add(client.id);
      return packet;
    },
  });
  aedes.on('clientError', (client, error) => log.info({ client: client.id, err: error }, 'a node was disconnected'));
  const emitter: EventEmitter = aedes;
  // Its types leave this event out; without a listener it would end the process.
  emitter.on('error', (error: unknown) => log.error({ err: error }, 'the embedded broker is in trouble'));
  aedes.on('connectionError', (_client, error) => log.info({ err: error }, 'a connection was refused'));
  const closeAedes = () => new Promise<void>((resolve) => aedes.close(() => resolve()));
  const sockets = new Set<Socket>();
  const take = (socket: Socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
    guardSocket(socket, log);
    aedes.handle(socket);
  };
  const { server, port } = await startListening(settings, take).catch(async (error: unknown) => {
    // Its timers would keep a process alive that cannot start.
    await closeAedes();
    throw error;
  });
  // Such as no file handle left for one more connection: those that are open go on.
  server.on('error', (error) => log.error({ err: error }, 'a node could not be let in'));
  const publish = (topic: string, payload: string) =>
    new Promise<void>((resolve, reject) => {
      const packet = { cmd: 'publish', topic, payload, qos: 1, retain: true, dup: false } as const;
      aedes.publish(packet, (error) => (error ? reject(error) : resolve()));
    });
  await publish(SERVICE_STATUS_TOPIC, 'online');
  return {
    port,
    trouble: () => (server.listening ? null : finding('ownBrokerShut')),
    publish,
    async hold({ topic, payload, afterwards }) {
      const clients = new Set<string>();
      handedTo.set(topic, clients);
      await publish(topic, payload).finally(() => handedTo.delete(topic));
      // It keeps its retained messages in memory: with the process they are gone, and the next start says them anew.
      return {
        followers: clients.size,
        lost: new Promise(() => undefined),
        letGo: async (isTakenOver) => (isTakenOver ? undefined : publish(topic, afterwards)),
      };
    },
    // Nodes publish straight into this process: every topic is heard already.
    follow: async () => undefined,
    async close() {
      await publish(SERVICE_STATUS_TOPIC, 'offline');
      const closed = new Promise<void>((resolve) => server.close(() => resolve()));
      await closeAedes();
      for (const socket of sockets) socket.destroy();
      await closed;
    },
  };
}

/** True for addresses that only this machine can reach. */
export function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || host.startsWith('127.');
}

async function signIn(parts: EmbeddedBrokerParts, name: string | undefined, password: Buffer | undefined) {
  const isKnown =
    name !== undefined && password !== undefined && (await parts.checkNode(name, password.toString('utf8')));
  return isKnown ? null : refusal('Name or password of the node is wrong.');
}

function findPublishFault(topic: string): string | null {
  // Overriding the hook drops the library's own guard of this branch.
  if (topic.startsWith('$SYS/')) return '$SYS/ belongs to the broker.';
  return isOwnOutput(topic) ? 'Only Takewell publishes here.' : null;
}

/** On a network a node may speak for itself only. */
function findForeignTopic(topic: string, name: string | undefined): string | null {
  const fault = findPublishFault(topic);
  if (fault !== null) return fault;
  const parsed = parseReadingTopic(topic);
  const isOwnTopic = (parsed.kind === 'readings' || parsed.kind === 'status') && parsed.node === name;
  return isOwnTopic ? null : `Node ${name ?? '?'} may publish only under its own name.`;
}

function refusal(reason: string): AuthenticateError {
  return Object.assign(new Error(reason), { returnCode: NOT_AUTHORISED });
}

function guardSocket(socket: Socket, log: Logger): void {
  const guard = createFrameGuard(MOST_PACKET_BYTES);
  const read = socket.read.bind(socket);
  socket.setNoDelay(true);
  socket.on('error', (error) => log.debug({ err: error }, 'a node’s connection broke'));
  // The library reads by `read(null)`: the guard looks at each chunk before it does.
  socket.read = (size?: number) => {
    const chunk: unknown = read(size);
    if (!(chunk instanceof Uint8Array) || guard.accept(chunk)) return chunk;
    log.warn({ from: socket.remoteAddress }, `a packet above ${MOST_PACKET_BYTES} bytes closed its connection`);
    socket.destroy();
    return null;
  };
}

function createListener(settings: Settings['mqtt'], onSocket: (socket: Socket) => void): Server {
  if (settings.tls === null) return createServer(onSocket);
  try {
    const cert = readFileSync(settings.tls.cert);
    const key = readFileSync(settings.tls.key);
    return createTlsServer({ cert, key }, onSocket);
  } catch (cause) {
    throw Problem.forOperator(
      'bad-setting',
      'The setting TAKEWELL_MQTT_TLS_CERT or _KEY names a file that cannot be used.',
      {
        cause,
      },
    );
  }
}

async function startListening(settings: Settings['mqtt'], onSocket: (socket: Socket) => void) {
  const server = createListener(settings, onSocket);
  return { server, port: await listen(server, settings) };
}

function listen(server: Server, { host, port }: Settings['mqtt']): Promise<number> {
  return new Promise((resolve, reject) => {
    const fail = (cause: NodeJS.ErrnoException) => {
      const isTaken = cause.code === 'EADDRINUSE';
      reject(
        isTaken
          ? Problem.forOperator(
              'port-in-use',
              `Port ${port} for MQTT is in use: stop the other program, or set TAKEWELL_MQTT_PORT.`,
              { cause },
            )
          : Problem.forOperator(
              'bad-setting',
              `The setting TAKEWELL_MQTT_HOST ${host} cannot be listened on (${cause.code}).`,
              { cause },
            ),
      );
    };
    server.once('error', fail);
    server.listen(port, host, () => {
      server.off('error', fail);
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : port);
    });
  });
}
