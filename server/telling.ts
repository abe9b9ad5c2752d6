// Who may be told, and through what, kept in memory because every decision asks for it.
import { CHANNELS_SETTING, type Channels, channelsSchema, noChannels } from '../shared/api/channels.ts';
import type { Target } from '../shared/telling/notice.ts';
import { allTargets } from '../shared/telling/targets.ts';
import type { Store } from './store/store.ts';

export interface Targets {
  all(): readonly Target[];
  channels(): Channels;
  changeChannels(channels: Channels): Promise<void>;
  refresh(): Promise<void>;
}

export async function openTargets(store: Store): Promise<Targets> {
  let channels = noChannels;
  let targets: readonly Target[] = [];
  const refresh = async () => {
    const stored = await store.settings.get(CHANNELS_SETTING);
    channels = stored === undefined ? noChannels : channelsSchema.parse(stored);
    targets = allTargets(await store.phones.all(), await store.people.list(), channels);
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
