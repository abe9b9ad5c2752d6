// A real store in a folder of its own with one chamber, one person and what the alerts of a test need in it.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { openStore } from '../../server/store/open-store.ts';
import type { Phone, Store } from '../../server/store/store.ts';
import type { Alarm } from '../../shared/alarms/alarm.ts';
import type { AlarmChange } from '../../shared/alarms/watch-state.ts';
import { CHANNELS_SETTING, type Channels } from '../../shared/api/channels.ts';
import type { NoticeDraft, NoticeKind, Target } from '../../shared/telling/notice.ts';
import { sampleAlarm } from './notice-samples.ts';
import type { Subscription } from './push-endpoint.ts';

export interface Outbox {
  readonly store: Store;
  /** Of the database file. */
  readonly file: string;
  addPhone(subscription: Subscription): Promise<Phone>;
  setChannels(channels: Partial<Channels>): Promise<void>;
  /** Writes an alarm and its notices in one commit, as the watch does. */
  tell(
    alarm: Partial<Alarm>,
    kind: Exclude<NoticeKind, 'phone-lost'>,
    targets: readonly Target[],
    atMs: number,
  ): Promise<NoticeDraft[]>;
}

/** Opens it; the test that calls it closes and removes it when it ends. */
export async function openOutbox(nowMs: number): Promise<Outbox> {
  const folder = await mkdtemp(join(tmpdir(), 'takewell-outbox-'));
  const file = join(folder, 'takewell.sqlite');
  const store = openStore({ file, nowMs });
  onTestFinished(async () => {
    await store.close();
    await rm(folder, { recursive: true });
  });
  await store.chambers.add({ id: 'c2', name: 'Chamber 2', createdMs: nowMs });
  await store.people.add({ id: 'crew-1', name: 'Crew one', role: 'crew', passwordHash: 'none', createdMs: nowMs });
  let phones = 0;
  return {
    store,
    file,
    addPhone({ endpoint, keys }) {
      phones += 1;
      const id = `phone-${phones}`;
      return store.phones.put({
        ...{ id, personId: 'crew-1', name: id, endpoint, ...keys },
        pushKey: null,
        createdMs: nowMs + phones,
      });
    },
    setChannels: (channels) => store.settings.put(CHANNELS_SETTING, channels),
    async tell(change, kind, targets, atMs) {
      const alarm = { ...sampleAlarm, ...change };
      const notices = targets.map((target) => draftOf(alarm, kind, target, atMs));
      const effect = { type: 'alarm-changed', change: changeOf[kind], atMs, from: 'normal', alarm } as const;
      const step = { ...effect, person: null, note: '' };
      await store.commit({ watch: { entries: [], changes: [step], notices } });
      return notices;
    },
  };
}

const changeOf: Record<Exclude<NoticeKind, 'phone-lost'>, AlarmChange> = {
  flood: 'occurred',
  raised: 'occurred',
  outage: 'occurred',
  escalated: 'escalated',
  'asked-anew': 'occurred',
  'passed-on': 'peaked',
  repeated: 'peaked',
  taken: 'acknowledged',
  returned: 'returned',
};

function draftOf(alarm: Alarm, kind: NoticeKind, { channel, targetId, personId }: Target, atMs: number): NoticeDraft {
  const id = `${alarm.id}.${kind}.${atMs.toString(36)}.${targetId}`;
  const { id: alarmId, chamberId } = alarm;
  return {
    id,
    alarmId,
    chamberId,
    kind,
    channel,
    targetId,
    personId,
    decidedMs: atMs,
    urgent: alarm.priority !== 'medium',
  };
}
