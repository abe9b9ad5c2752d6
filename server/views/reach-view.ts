// Whether alerts can reach a person, as it is sent to them: with the names of their phones and of webhooks.
import type { Channels } from '../../shared/api/channels.ts';
import type { ReachView } from '../../shared/api/reach.ts';
import { sayFinding } from '../../shared/finding.ts';
import type { OwnReach, OwnWay } from '../../shared/telling/reach.ts';
import { webhookIdOf } from '../../shared/telling/target-ids.ts';
import type { SharedWords } from '../../shared/words/shared-words.ts';
import type { Phone } from '../store/store.ts';
import { timeText } from './alarm-view.ts';

interface Named {
  readonly phones: readonly Phone[];
  readonly webhooks: Channels['webhooks'];
}

/** In the words of whoever asks. */
export function viewReach(reach: OwnReach, named: Named, words: SharedWords): ReachView {
  const { verdict, isOnDuty, quietUntil } = reach;
  return {
    ...{ verdict, isOnDuty, quietUntil },
    dutyUntil: timeText(reach.dutyUntilMs),
    nextDutyAt: timeText(reach.nextDutyMs),
    ways: reach.ways.map((way) => viewWay(way, named, words)),
  };
}

function viewWay(
  { channel, targetId, works, last }: OwnWay,
  { phones, webhooks }: Named,
  words: SharedWords,
): ReachView['ways'][number] {
  const phone = phones.find(({ id }) => id === targetId);
  const webhook = channel === 'webhook' ? webhooks.find(({ id }) => id === webhookIdOf(targetId)) : undefined;
  return {
    ...{ channel, works, name: phone?.name ?? webhook?.name ?? '' },
    lastResult: last === null ? null : sayFinding(last.finding, words),
    lastResultAt: timeText(last?.atMs ?? null),
    confirmedAt: timeText(phone?.confirmedMs ?? null),
  };
}
