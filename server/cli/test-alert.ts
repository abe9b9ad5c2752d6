// `test-alert`: sends one test message through a channel and says honestly what became of it. The service may be running, and need not.
import type { Channels } from '../../shared/api/channels.ts';
import { sayWholeFinding } from '../../shared/finding.ts';
import { plainEnglish } from '../../shared/plain-english.ts';
import type { Target } from '../../shared/telling/notice.ts';
import { emailTarget, webhookTarget } from '../../shared/telling/target-ids.ts';
import { utcText } from '../../shared/units.ts';
import { readChannels } from '../notify/find-target.ts';
import { sendTest } from '../notify/send-test.ts';
import type { Person, Store } from '../store/store.ts';
import type { TrialResult } from '../trials.ts';
import { type Command, print, type Terminal } from './command.ts';
import { fileOf, noDatabase, readStored } from './open-stored.ts';
import { misuse, parseOptions, requireOption } from './parse-options.ts';
import { testParts } from './test-parts.ts';
import { tryHeartbeat, trySiren } from './try-site.ts';

const usage = `Usage: npm run takewell -- test-alert --channel email --person NAME [--json]
       npm run takewell -- test-alert --channel web-push --person NAME [--json]
       npm run takewell -- test-alert --channel webhook --webhook NAME [--person NAME] [--json]
       npm run takewell -- test-alert --channel siren [--json]
       npm run takewell -- test-alert --channel heartbeat [--json]

Sends one test message now, as the data folder says, and says what the other side answered. The service may be running.
web-push goes to every phone of the person. A webhook that is called for each person needs --person too.
The siren sounds for five seconds, by the service: it must be running, since it alone speaks on the siren's topic. An alarm meanwhile wins.
"Delivered" means that the mail server, push service or webhook has taken it over; only a person can say that it was seen, or that
the siren sounded.

Exit code: 0 all of it was delivered, 1 it was not, 2 used wrongly.
`;

export const testAlert: Command = {
  usage,
  async run(args, terminal) {
    const { options } = parseOptions(args, { channel: 'text', person: 'text', webhook: 'text', json: 'flag' });
    const tried = isOfSite(options.channel)
      ? [await trySite(options.channel, options, terminal)]
      : await tryTargets(options, terminal);
    const isReached = tried.length > 0 && tried.every(({ delivered }) => delivered);
    const lines = tried.map(
      ({ target, delivered, reason, at }) =>
        `${target}: ${delivered ? 'delivered' : 'NOT delivered'} at ${at}. ${reason}`,
    );
    const none = `${options.person} has no phone that takes alerts: open Takewell on the phone and switch them on.`;
    await print(terminal, options.json === true, { results: tried }, tried.length > 0 ? lines : [none]);
    return isReached ? 0 : 1;
  },
};

interface SaidResult {
  readonly channel: Target['channel'] | SiteChannel;
  /** The name of the phone, person or webhook; or what it is. */
  readonly target: string;
  readonly delivered: boolean;
  readonly reason: string;
  readonly at: string;
}

const siteChannels = ['siren', 'heartbeat'] as const;
type SiteChannel = (typeof siteChannels)[number];

function isOfSite(channel: string | undefined): channel is SiteChannel {
  return siteChannels.some((one) => one === channel);
}

async function trySite(channel: SiteChannel, { person, webhook }: Wanted, terminal: Terminal): Promise<SaidResult> {
  if (person !== undefined) throw misuse(`--person does not go with --channel ${channel}.`);
  if (webhook !== undefined) throw misuse('--webhook goes with --channel webhook only.');
  const result = channel === 'siren' ? await trySiren(terminal) : await tryHeartbeat(terminal);
  return say(channel, plainEnglish.words.trials[channel].name, result);
}

async function tryTargets(wanted: Wanted, terminal: Terminal): Promise<SaidResult[]> {
  const tried = await readStored(terminal, async (store) => {
    const targets = await findTargets(store, wanted);
    const parts = await testParts(store, terminal);
    const results: SaidResult[] = [];
    for (const { name, target } of targets) {
      const { finding, ...tried } = await sendTest(target, parts);
      results.push(say(target.channel, name, { ...tried, reason: sayWholeFinding(finding, plainEnglish.words) }));
    }
    return results;
  });
  if (tried === null) throw noDatabase(fileOf(terminal));
  return tried;
}

function say(channel: SaidResult['channel'], target: string, { delivered, reason, atMs }: TrialResult): SaidResult {
  return { channel, target, delivered, reason, at: utcText(atMs) };
}

interface Wanted {
  readonly channel: string | undefined;
  readonly person: string | undefined;
  readonly webhook: string | undefined;
}

interface NamedTarget {
  readonly name: string;
  readonly target: Target;
}

async function findTargets(store: Store, wanted: Wanted): Promise<NamedTarget[]> {
  const channel = requireOption(wanted.channel, 'channel');
  if (channel === 'webhook') return [await findWebhook(store, wanted)];
  if (wanted.webhook !== undefined) throw misuse('--webhook goes with --channel webhook only.');
  if (channel !== 'email' && channel !== 'web-push')
    throw misuse(`--channel must be email, webhook, web-push, siren or heartbeat; "${channel}" is none of them.`);
  const person = await findPerson(store, requireOption(wanted.person, 'person'));
  if (channel === 'email')
    return [{ name: person.name, target: { channel, targetId: emailTarget(person.id), personId: person.id } }];
  const phones = await store.phones.ofPerson(person.id);
  return phones.map(({ id, name }) => ({ name, target: { channel, targetId: id, personId: person.id } }));
}

async function findWebhook(store: Store, wanted: Wanted): Promise<NamedTarget> {
  const { webhooks } = await readChannels(store);
  const webhook = namedWebhook(webhooks, requireOption(wanted.webhook, 'webhook'));
  const isForSite = webhook.audience === 'site';
  if (isForSite && wanted.person !== undefined)
    throw misuse(`The webhook "${webhook.name}" is called once for the site: leave --person out.`);
  const personId = isForSite ? null : (await findPerson(store, requireOption(wanted.person, 'person'))).id;
  return {
    name: webhook.name,
    target: { channel: 'webhook', targetId: webhookTarget(webhook.id, personId), personId },
  };
}

function namedWebhook(webhooks: Channels['webhooks'], name: string) {
  const found = webhooks.filter((one) => one.name === name || one.id === name);
  const [first] = found;
  if (first !== undefined && found.length === 1) return first;
  if (first !== undefined) throw misuse(`${found.length} webhooks are called "${name}": give the id of one.`);
  const names = webhooks.map((one) => `"${one.name}"`).join(', ');
  throw misuse(`There is no webhook "${name}"; there ${names === '' ? 'is none at all' : `are ${names}`}.`);
}

async function findPerson(store: Store, name: string): Promise<Person> {
  const person = await store.people.byName(name);
  if (person === null) throw misuse(`There is nobody called "${name}".`);
  return person;
}
