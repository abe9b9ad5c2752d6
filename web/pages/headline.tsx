// How it stands, in one sentence: how many chambers need someone.
import { useComputed } from '@preact/signals';
import { allChambers, chamberIds } from '../chamber-store.ts';
import { slowNowMs } from '../clock.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { groupChambers } from './overview-order.ts';

/** Counts all chambers, whatever is searched for. */
export function Headline() {
  const counts = useComputed(() => {
    const { alarm, soon } = groupChambers(allChambers.value, slowNowMs.value, zone.value);
    return `${alarm.length} ${soon.length}`;
  });
  const [alarm = 0, soon = 0] = counts.value.split(' ').map(Number);
  const all = chamberIds.value?.length ?? 0;
  const text = soon === 0 ? words.overview.allGood(all) : words.overview.lookAt(soon);
  return <p class="headline">{alarm === 0 ? text : words.overview.needYou(alarm, all)}</p>;
}
