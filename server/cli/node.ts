// `node`: a simulated sensor node, for trying a site before the first real one hangs in a tent. Its air is invented and says so by its name.
import { setTimeout as wait } from 'node:timers/promises';
import mqtt from 'mqtt';
import { Problem } from '../../shared/problem.ts';
import { SECOND_MS } from '../../shared/units.ts';
import { type Command, print } from './command.ts';
import { misuse, parseOptions, readNumber } from './parse-options.ts';

const usage = `Usage: npm run takewell -- node [--id simulated-1] [--broker mqtt://127.0.0.1:1883] [--every 5] [--times N] [--json]

Publishes invented readings of one probe, as a sensor node in a healing tent would, until it is stopped with Ctrl+C.

  --id        name of the node (simulated-1 when not given)
  --broker    address of the broker (mqtt://127.0.0.1:1883 when not given); its password, where it wants one, in TAKEWELL_NODE_PASSWORD
  --every     seconds between two readings, 1 to 600 (5 when not given)
  --times     ends after so many readings
  --json      one JSON value at the end
`;

/** Near-saturated air at the middle of a healing climate, drifting a little so that no test takes it for a dead sensor. */
function readingOf(number: number): { temperature: number; humidity: number; battery: number } {
  const turn = Math.sin(number / 7);
  return { temperature: 23.5 + Math.round(8 * turn) / 10, humidity: 96 - Math.round(10 * turn) / 10, battery: 87 };
}

function brokerOf(text: string): string {
  if (!/^(mqtts?|wss?):\/\/[^\s/]+/.test(text)) throw misuse(`--broker must be an address like mqtt://192.0.2.7:1883.`);
  return text;
}

async function connect(url: string, id: string, password: string | undefined): Promise<mqtt.MqttClient> {
  try {
    return await mqtt.connectAsync(
      url,
      { clientId: id, username: id, ...(password === undefined ? {} : { password }), connectTimeout: 5 * SECOND_MS },
      false,
    );
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw Problem.forOperator('unavailable', `The broker at ${url} does not let the node in: ${why}.`, { cause });
  }
}

export const node: Command = {
  usage,
  async run(args, terminal) {
    const kinds = { id: 'text', broker: 'text', every: 'text', times: 'text', json: 'flag' } as const;
    const { options } = parseOptions(args, kinds);
    const id = options.id ?? 'simulated-1';
    const everyS = readNumber(options.every ?? '5', 'every', { min: 1, max: 600 });
    const times = options.times === undefined ? null : readNumber(options.times, 'times', { min: 1, max: 1e6 });
    const client = await connect(
      brokerOf(options.broker ?? 'mqtt://127.0.0.1:1883'),
      id,
      terminal.env['TAKEWELL_NODE_PASSWORD'],
    );
    let sent = 0;
    while (times === null || sent < times) {
      const payload = JSON.stringify({ probe: 'canopy-1', ...readingOf(sent) });
      await client.publishAsync(`takewell/v1/${id}/readings`, payload, { qos: 1 });
      sent += 1;
      if (times === null || sent < times) await wait(everyS * SECOND_MS);
    }
    await client.endAsync();
    await print(terminal, options.json === true, { node: id, sent }, [`${id}: ${sent} readings stored`]);
    return 0;
  },
};
