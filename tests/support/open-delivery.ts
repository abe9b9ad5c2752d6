// Delivery as the service runs it, on a real store, with a clock that a test turns and pauses that chance does not change.
import { onTestFinished } from 'vitest';
import { createEmail } from '../../server/notify/channels/email.ts';
import { createWebPush } from '../../server/notify/channels/web-push.ts';
import { createWebhook } from '../../server/notify/channels/webhook.ts';
import { createDelivery, type Delivery } from '../../server/notify/deliver-notices.ts';
import type { DeliveryParts } from '../../server/notify/delivery-parts.ts';
import { openVapidKeys } from '../../server/notify/vapid-keys.ts';
import type { Store } from '../../server/store/store.ts';

export interface TestDelivery {
  readonly delivery: Delivery;
  /** What was logged, as `level: message`. */
  readonly logged: readonly string[];
}

export interface TestClock {
  ms: number;
}

/** Opens it on a store; the test that calls it closes it when it ends. `change` replaces parts. */
export async function openDelivery(
  store: Store,
  clock: TestClock,
  change: Partial<DeliveryParts> = {},
): Promise<TestDelivery> {
  const logged: string[] = [];
  const keep = (level: string) => (_details: object, message: string) => {
    logged.push(`${level}: ${message}`);
  };
  const vapid = await openVapidKeys(store.settings, () => 'mailto:takewell@nursery.example');
  const delivery = createDelivery({
    store,
    channels: {
      'web-push': createWebPush({ vapid, allowLocal: true }),
      email: createEmail(),
      webhook: createWebhook(),
    },
    clock: { nowMs: () => clock.ms },
    random: () => 0,
    log: { info: keep('info'), warn: keep('warn'), error: keep('error') },
    publicUrl: () => 'https://takewell.example',
    manner: () => ({ zone: 'Europe/Berlin', siteName: 'Test nursery', temperatureUnit: '°C' }),
    targetsOf: () => [],
    makeLink: () => null,
    ...change,
  });
  onTestFinished(delivery.close);
  return { delivery, logged };
}
