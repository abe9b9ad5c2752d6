// The settings of a demo run: those of the environment, but on a throw-away folder and on its own broker. It must never publish invented
// readings to a broker that real nurseries listen to.
import { createServer } from 'node:net';
import { readSettings, type Settings } from '../settings.ts';

type Environment = Record<string, string | undefined>;

/**
 * Settings for the demo. A port that nobody chose and another program uses is replaced by any free one; a chosen one stays and fails
 * as it would for the service. Throws a Problem `bad-setting`.
 */
export async function readDemoSettings(environment: Environment, dataDir: string): Promise<Settings> {
  const { TAKEWELL_MQTT_URL: _outside, ...own } = environment;
  const settings = readSettings({ TAKEWELL_LOG_LEVEL: 'warn', ...own, TAKEWELL_DATA_DIR: dataDir });
  const { http, mqtt } = settings;
  return {
    ...settings,
    http: { ...http, port: await choosePort(own, 'TAKEWELL_HTTP_PORT', http) },
    mqtt: { ...mqtt, port: await choosePort(own, 'TAKEWELL_MQTT_PORT', mqtt) },
  };
}

interface Listening {
  readonly host: string;
  readonly port: number;
}

async function choosePort(environment: Environment, name: string, { host, port }: Listening): Promise<number> {
  if (environment[name] !== undefined) return port;
  return (await isTaken(host, port)) ? 0 : port;
}

function isTaken(host: string, port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const trial = createServer();
    // Any other fault is for the service to name when it listens itself.
    trial.once('error', (error: NodeJS.ErrnoException) => resolve(error.code === 'EADDRINUSE'));
    trial.listen(port, host, () => trial.close(() => resolve(false)));
  });
}
