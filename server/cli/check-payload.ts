// `check-payload`: what admission would do with a message on a topic. It stores nothing and publishes nothing.
import { plainEnglish } from '../../shared/plain-english.ts';
import type { IncomingReading, Refusal } from '../../shared/readings/reading.ts';
import { sayRefusal } from '../../shared/readings/say-refusal.ts';
import { utcText } from '../../shared/units.ts';
import { type ArrivedMessage, type DecodedMessage, decodeMessage } from '../ingest/arrived-message.ts';
import { openSite } from '../site.ts';
import { type Command, print, type Terminal } from './command.ts';
import { readStored } from './open-stored.ts';
import { parseOptions, readTime, requireOption } from './parse-options.ts';
import { readInput } from './read-input.ts';

const usage = `Usage: npm run takewell -- check-payload --topic TOPIC FILE [--now TIME] [--json]

Says which readings of a message would be admitted and what would be refused, and why. Exit code 1 if anything is refused.

  FILE      the payload; - reads it from standard input
  --topic   the MQTT topic it comes on, for example takewell/v1/tent-2/readings;
            other topics are read by the mappings in the settings
  --now     when it arrives, RFC 3339 (now when not given)
  --json    one JSON value
`;

export const checkPayload: Command = {
  usage,
  async run(args, terminal) {
    const { options, words } = parseOptions(args, { topic: 'text', now: 'text', json: 'flag' }, ['FILE']);
    const topic = requireOption(options.topic, 'topic');
    const arrivalMs = options.now === undefined ? terminal.nowMs : readTime(options.now, 'now');
    const payload = await readInput(words[0] ?? '-', terminal);
    const decoded = await decode({ topic, payload, arrivalMs }, terminal);
    const readings = decoded.admitted.map(describeReading);
    const refused = decoded.refused.map(describeRefusal);
    const lines = [
      ...readings.map((one) => `admitted  ${one.time}  ${describeProbe(one)}  ${describeValues(one)}`),
      ...refused.map(({ reason, where }) => `refused   ${where === '' ? 'the whole message' : where}: ${reason}`),
    ];
    await print(terminal, options.json === true, { admitted: readings, refused }, lines);
    return refused.length === 0 ? 0 : 1;
  },
};

/** The same decoding as the service's, with its mappings when the data folder has some. */
async function decode(message: Omit<ArrivedMessage, 'retained'>, terminal: Terminal): Promise<DecodedMessage> {
  const site = await readStored(terminal, openSite);
  return decodeMessage({ ...message, retained: false }, site?.current().mappings ?? []);
}

function describeReading({ node, probe, timeMs, temperature, humidity }: IncomingReading) {
  return { node, probe, time: utcText(timeMs), temperature, humidity };
}

function describeRefusal({ reason, where }: Refusal) {
  return { reason: sayRefusal(reason, plainEnglish.words), where };
}

type DescribedReading = ReturnType<typeof describeReading>;

function describeProbe({ node, probe }: DescribedReading): string {
  return probe === '' ? node : `${node} ${probe}`;
}

function describeValues({ temperature, humidity }: DescribedReading): string {
  return `${temperature ?? '–'} °C  ${humidity ?? '–'} %RH`;
}
