// The production service as a process of its own, with nothing changed but its clock and how often the watch goes round: delays of minutes
// would make a test of fifty kills last for hours. Prints one line of JSON when it is ready.
import { flushCompileCache } from 'node:module';
import { openApp } from '../../server/app.ts';
import { openLog } from '../../server/log.ts';
import { stopOnSignals } from '../../server/process.ts';
import { readSettings } from '../../server/settings.ts';
import { createFastClock } from './fast-clock.ts';

const [startMs = Number.NaN, realMs = Number.NaN, speed = Number.NaN] = process.argv.slice(2).map(Number);
const settings = readSettings(process.env);
const log = openLog(settings.logLevel);
const app = await openApp({ settings, log, clock: createFastClock({ startMs, realMs, speed }), roundMs: 100 });
stopOnSignals(app, log);
// As the real one does: most of these processes are killed.
flushCompileCache();
process.stdout.write(`${JSON.stringify({ url: app.url, mqttPort: app.mqttPort })}\n`);
