// The deliverer as a process of its own, to be killed: on the store of a test, with e-mail alone, at the moment it is given. Says when it is awake.
import { openLog } from '../../server/log.ts';
import { createEmail } from '../../server/notify/channels/email.ts';
import { createWebPush } from '../../server/notify/channels/web-push.ts';
import { createWebhook } from '../../server/notify/channels/webhook.ts';
import { createDelivery } from '../../server/notify/deliver-notices.ts';
import { openVapidKeys } from '../../server/notify/vapid-keys.ts';
import { openStore } from '../../server/store/open-store.ts';

const [file = '', atMs = Number.NaN] = [process.argv[2], Number(process.argv[3])];
const store = openStore({ file, nowMs: atMs });
const vapid = await openVapidKeys(store.settings, () => 'mailto:takewell@nursery.example');
const delivery = createDelivery({
  store,
  log: openLog('error'),
  channels: {
    'web-push': createWebPush({ vapid, allowLocal: true }),
    email: createEmail(),
    webhook: createWebhook(),
  },
  clock: { nowMs: () => atMs },
  random: () => 0,
  publicUrl: () => 'https://takewell.example',
  manner: () => ({ zone: 'Europe/Berlin', siteName: 'Test nursery', temperatureUnit: '°C' }),
  targetsOf: () => [],
  makeLink: () => null,
});
delivery.wake();
process.stdout.write('awake\n');
