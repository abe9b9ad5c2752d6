// What the service can tell of itself: broker, store, disk, and whom it can reach. Asked once a round; nothing here decides.
import { statfs } from 'node:fs/promises';
import type { DiskNow, ReachNow } from '../../shared/alarms/service/service-scene.ts';
import type { Finding } from '../../shared/finding.ts';

export interface ServiceSenses {
  /** Why no message can come in; null = they can. */
  brokerTrouble(): Finding | null;
  /** Why readings cannot be stored; null = they can. */
  storeTrouble(): Finding | null;
  freePercent(): Promise<number | null>;
  /** null = not looked at. */
  reach(): Promise<ReachNow | null>;
}

/** Free room of the disk that a folder is on, %; null when it cannot be told. */
export async function freePercentOf(folder: string): Promise<number | null> {
  try {
    const { bavail, blocks } = await statfs(folder);
    // To a tenth: an alarm is written when it gets worse, not with every file of the machine.
    return blocks === 0 ? null : Math.round((1000 * bavail) / blocks) / 10;
  } catch (error) {
    // A folder that is gone is health's to tell: the store is in trouble then.
    if (error instanceof Error && 'code' in error) return null;
    throw error;
  }
}

export async function diskNow(senses: ServiceSenses): Promise<DiskNow> {
  return { freePercent: await senses.freePercent(), storeTrouble: senses.storeTrouble() };
}
