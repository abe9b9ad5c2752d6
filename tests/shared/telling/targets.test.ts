import { expect, it } from 'vitest';
import { channelsSchema } from '../../../shared/api/channels.ts';
import { allTargets } from '../../../shared/telling/targets.ts';

const people = [
  { id: 'both', email: 'both@nursery.example', phoneNumber: '+31612345678' },
  { id: 'mail', email: 'mail@nursery.example', phoneNumber: null },
  { id: 'none', email: null, phoneNumber: null },
];
const phones = [{ id: 'red', personId: 'none' }];
const email = { host: 'mail.example', port: 587, security: 'starttls', from: 'alerts@nursery.example' };
const gateway = { id: 'sms', name: 'SMS', url: 'https://sms.example', audience: 'each-person' };

it.each([
  ['phones, whatever else there is', {}, ['red']],
  ['e-mail of everybody who has an address', { email }, ['red', 'email:both', 'email:mail']],
  ['a webhook of the site once', { webhooks: [{ ...gateway, audience: 'site' }] }, ['red', 'webhook:sms']],
  ['a webhook of each person with a number', { webhooks: [gateway] }, ['red', 'webhook:sms:both']],
  [
    'a webhook whose template asks for an address: whoever has one',
    { webhooks: [{ ...gateway, template: '{"to":"{{person.email}}"}' }] },
    ['red', 'webhook:sms:both', 'webhook:sms:mail'],
  ],
  [
    'a webhook whose template asks for nothing of the person: everybody',
    { webhooks: [{ ...gateway, template: '{"who":"{{person.name}}"}' }] },
    ['red', 'webhook:sms:both', 'webhook:sms:mail', 'webhook:sms:none'],
  ],
])('%s', (_why, channels, expected) => {
  const targets = allTargets(phones, people, channelsSchema.parse(channels));
  expect(targets.map(({ targetId }) => targetId)).toEqual(expected);
});
