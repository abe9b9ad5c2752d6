// Who may be told, and through what: the phones people have signed up, and the site’s webhook. Kept in memory because every decision asks for it.

import { CHANNELS_SETTING, type Channels, channelsSchema } from '../shared/api/telling.ts';
import type { Target } from '../shared/telling/notice.ts';
import type { Store } from './store/store.ts';

/** The one webhook of the site, as a target of notices. */
const WEBHOOK_TARGET = 'webhook';

export interface Targets {
  all(): readonly Target[];
  channels(): Channels;
  changeChannels(channels: Channels): Promise<void>;
  refresh(): Promise<void>;
}

export async function openTargets(store: Store): Promise<Targets> {
  let channels: Channels = { webhook: null };
  let targets: readonly Target[] = [];
  const refresh = async () => {
    const stored = await store.settings.get(CHANNELS_SETTING);
    channels = stored === undefined ? { webhook: null } : channelsSchema.parse(stored);
    const phones = (await store.phones.all()).map(
      ({ id, personId }): Target => ({ channel: 'web-push', targetId: id, personId }),
    );
    targets =
      channels.webhook === null
        ? phones
        : [...phones, { channel: 'webhook', targetId: WEBHOOK_TARGET, personId: null }];
  };
  await refresh();
  return {
    all: () => targets,
    channels: () => channels,
    async changeChannels(next) {
      await store.settings.put(CHANNELS_SETTING, next);
      await refresh();
    },
    refresh,
  };
}
