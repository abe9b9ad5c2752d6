// Settings of the process: one schema, read from the environment in this file only. Types are inferred, defaults stand beside their field.
import { isIP } from 'node:net';
import { isAbsolute, resolve } from 'node:path';
import { z } from 'zod';
import { Problem } from '../shared/problem.ts';

const portHint = 'is a port number from 0 to 65535 (0 = any free)';
// Digits only: an empty text would else be read as 0, which is any free port.
const port = z
  .string()
  .regex(/^\d{1,5}$/, portHint)
  .transform(Number)
  .refine((number) => number <= 65_535, portHint);
const text = z.string().min(1, 'is empty: set it or leave it out');
const url = (protocols: RegExp, hint: string) => z.url({ protocol: protocols, error: hint });

const splitList = (list: string) => list.split(',').map((one) => one.trim());

/** An address, a range of them, or a name that the HTTP library knows for one. */
function isProxyAddress(text: string): boolean {
  if (['loopback', 'linklocal', 'uniquelocal'].includes(text)) return true;
  const [address = '', range, ...more] = text.split('/');
  const version = isIP(address);
  if (version === 0 || more.length > 0) return false;
  return range === undefined || (/^[1-9]\d{0,2}$/.test(range) && Number(range) <= (version === 4 ? 32 : 128));
}

const environmentSchema = z
  .strictObject({
    /** Where the database and keys live. */
    TAKEWELL_DATA_DIR: text.default('./data'),
    /** Loopback unless somebody decides to open it to the network. */
    TAKEWELL_HTTP_HOST: text.default('127.0.0.1'),
    TAKEWELL_HTTP_PORT: port.default(8420),
    /** The address people use; links in alerts and the security of cookies follow it. */
    TAKEWELL_PUBLIC_URL: url(/^https?$/, 'is a web address such as https://takewell.example').optional(),
    TAKEWELL_TLS_CERT: text.optional(),
    TAKEWELL_TLS_KEY: text.optional(),
    /** Addresses of the reverse proxy whose forwarded headers are believed, comma-separated. */
    TAKEWELL_TRUST_PROXY: text
      .refine(
        (list) => splitList(list).every(isProxyAddress),
        'lists addresses such as 192.0.2.1 or 192.0.2.0/24, separated by commas',
      )
      .optional(),
    TAKEWELL_MQTT_URL: url(/^(mqtts?|wss?)$/, 'is a broker address such as mqtt://192.0.2.7:1883').optional(),
    TAKEWELL_MQTT_HOST: text.default('127.0.0.1'),
    TAKEWELL_MQTT_PORT: port.default(1883),
    TAKEWELL_MQTT_TLS_CERT: text.optional(),
    TAKEWELL_MQTT_TLS_KEY: text.optional(),
    /** Unset = a SQLite file in the data folder. */
    TAKEWELL_STORE_URL: url(/^postgres(ql)?$/, 'is a database address such as postgresql://…').optional(),
    TAKEWELL_LOG_LEVEL: z
      .enum(['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent'], {
        error: 'is one of trace, debug, info, warn, error, fatal, silent',
      })
      .default('info'),
    /** The set-up code to expect instead of a random one. */
    TAKEWELL_SETUP_CODE: z.string().min(8, 'needs at least 8 characters').optional(),
  })
  .refine((one) => (one.TAKEWELL_TLS_CERT === undefined) === (one.TAKEWELL_TLS_KEY === undefined), {
    path: ['TAKEWELL_TLS_KEY'],
    error: 'goes together with TAKEWELL_TLS_CERT: set both or none',
  })
  .refine((one) => (one.TAKEWELL_MQTT_TLS_CERT === undefined) === (one.TAKEWELL_MQTT_TLS_KEY === undefined), {
    path: ['TAKEWELL_MQTT_TLS_KEY'],
    error: 'goes together with TAKEWELL_MQTT_TLS_CERT: set both or none',
  })
  .refine((one) => one.TAKEWELL_STORE_URL === undefined, {
    path: ['TAKEWELL_STORE_URL'],
    error: 'is not supported by this version yet: leave it out to use the SQLite file in the data folder',
  });

export interface Settings {
  /** Absolute. */
  readonly dataDir: string;
  readonly http: {
    readonly host: string;
    readonly port: number;
    readonly tls: { readonly cert: string; readonly key: string } | null;
    readonly trustProxy: readonly string[] | null;
  };
  /** Without a slash at the end; null = the address it listens on. */
  readonly publicUrl: string | null;
  readonly mqtt: {
    /** An outside broker; null = the embedded one. */
    readonly url: string | null;
    readonly host: string;
    readonly port: number;
    readonly tls: { readonly cert: string; readonly key: string } | null;
  };
  readonly logLevel: string;
  readonly setupCode: string | null;
}

/** Names of every setting, for the documentation test. */
export const settingNames: readonly string[] = Object.keys(environmentSchema.shape);

/** Reads `TAKEWELL_*` from an environment. Throws a Problem `bad-setting` with one line that names the first fault. */
export function readSettings(environment: Record<string, string | undefined>, cwd = process.cwd()): Settings {
  const own = Object.entries(environment).filter(
    ([name, value]) => name.startsWith('TAKEWELL_') && value !== undefined,
  );
  const parsed = environmentSchema.safeParse(Object.fromEntries(own));
  if (!parsed.success) throw Problem.forOperator('bad-setting', firstFault(parsed.error));
  return toSettings(parsed.data, cwd);
}

function firstFault(error: z.ZodError): string {
  const issue = error.issues[0];
  if (issue?.code === 'unrecognized_keys') return `The setting ${issue.keys[0]} is not known: check its spelling.`;
  return `The setting ${String(issue?.path[0])} ${issue?.message ?? 'is wrong'}.`;
}

function toSettings(env: z.infer<typeof environmentSchema>, cwd: string): Settings {
  const absolute = (path: string) => (isAbsolute(path) ? path : resolve(cwd, path));
  const pair = (cert: string | undefined, key: string | undefined) =>
    cert === undefined || key === undefined ? null : { cert: absolute(cert), key: absolute(key) };
  return {
    dataDir: absolute(env.TAKEWELL_DATA_DIR),
    http: {
      host: env.TAKEWELL_HTTP_HOST,
      port: env.TAKEWELL_HTTP_PORT,
      tls: pair(env.TAKEWELL_TLS_CERT, env.TAKEWELL_TLS_KEY),
      trustProxy: env.TAKEWELL_TRUST_PROXY === undefined ? null : splitList(env.TAKEWELL_TRUST_PROXY),
    },
    publicUrl: env.TAKEWELL_PUBLIC_URL?.replace(/\/+$/, '') ?? null,
    mqtt: {
      url: env.TAKEWELL_MQTT_URL ?? null,
      host: env.TAKEWELL_MQTT_HOST,
      port: env.TAKEWELL_MQTT_PORT,
      tls: pair(env.TAKEWELL_MQTT_TLS_CERT, env.TAKEWELL_MQTT_TLS_KEY),
    },
    logLevel: env.TAKEWELL_LOG_LEVEL,
    setupCode: env.TAKEWELL_SETUP_CODE ?? null,
  };
}

/** The SQLite file inside a data folder. */
export function databaseFile(dataDir: string): string {
  return resolve(dataDir, 'takewell.sqlite');
}
