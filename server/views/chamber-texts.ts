// The chambers as JSON, each put together once a second at most while nothing of it changes: when the service comes back, every screen asks at once.
import { type ChamberView, chamberSchema } from '../../shared/api/chambers.ts';
import { SECOND_MS } from '../../shared/units.ts';
import type { Site } from '../site.ts';
import type { ProbeState } from '../watch/probe-book.ts';
import type { Watch } from '../watch/watch.ts';
import type { WatchedChamber } from '../watch/watched-chamber.ts';

interface Kept {
  /** What the text was made from; each of them is replaced, never changed. */
  readonly from: readonly unknown[];
  readonly text: string;
}

interface Parts {
  readonly watch: Watch;
  readonly site: Site;
  readonly view: (chamber: WatchedChamber, nowMs: number) => ChamberView;
}

/** Answers with the text of all chambers, in the watch's order. What nobody has changed may be of up to a second ago. */
export function createChamberTexts({ watch, site, view }: Parts): (nowMs: number) => string {
  const kept = new WeakMap<WatchedChamber, Kept>();
  const textOf = (chamber: WatchedChamber, nowMs: number, house: readonly ProbeState[]) => {
    const second = Math.floor(nowMs / SECOND_MS);
    const own = watch.probes.inChamber(chamber.chamber.id);
    const from = [second, site.current(), watch.house(), ...probesOfAlarms(chamber, watch), ...own, ...house];
    const known = kept.get(chamber);
    if (known !== undefined && isSame(known.from, from)) return known.text;
    // Parsed as every answer is: nothing leaves that the contract does not name.
    const text = JSON.stringify(chamberSchema.parse(view(chamber, nowMs)));
    kept.set(chamber, { from, text });
    return text;
  };
  return (nowMs) => {
    const house = watch.probes.inHouse();
    const texts = watch.chambers().map((chamber) => textOf(chamber, nowMs, house));
    return `{"items":[${texts.join(',')}],"nextCursor":null}`;
  };
}

/** They are named in the alarms, wherever they stand by now. */
function probesOfAlarms({ watch: { entries } }: WatchedChamber, { probes }: Watch): readonly unknown[] {
  return Object.values(entries).flatMap(({ alarm }) => (alarm?.probeId ? [probes.byId(alarm.probeId)] : []));
}

function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((value, index) => value === other[index]);
}
