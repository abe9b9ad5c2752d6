// Who is on duty and in which order people are asked: rota, plan, people and targets together, in memory because every decision asks for them.
import { type Duty, type DutyPlan, dutyPlanSchema } from '../shared/api/duty.ts';
import { type Crew, crewAt, type Roster } from '../shared/telling/crew.ts';
import { standardEscalation } from '../shared/telling/escalation.ts';
import type { Target } from '../shared/telling/notice.ts';
import type { Site } from './site.ts';
import type { Person, Store } from './store/store.ts';

export interface DutyBook {
  crewAt(nowMs: number): Crew;
  roster(): Roster;
  escalation(): DutyPlan;
  change(duty: Duty): Promise<void>;
  /** Reads people, rota and plan anew. */
  refresh(): Promise<void>;
}

const standardPlan: DutyPlan = { ...standardEscalation, order: [] };

export async function openDutyBook(store: Store, site: Site, targets: () => readonly Target[]): Promise<DutyBook> {
  let plan = standardPlan;
  let kept: Pick<Roster, 'people' | 'spans'> = { people: [], spans: [] };
  const refresh = async () => {
    const [people, stored] = [await store.people.list(), await store.duty.read()];
    plan = stored.plan === undefined ? standardPlan : dutyPlanSchema.parse(stored.plan);
    kept = { people: inOrder(people, plan.order), spans: stored.spans };
  };
  await refresh();
  const roster = (): Roster => ({ ...kept, targets: targets(), zone: site.current().zone });
  return {
    crewAt: (nowMs) => crewAt(roster(), nowMs),
    roster,
    escalation: () => plan,
    async change({ spans, ...next }) {
      await store.duty.write(spans, next);
      await refresh();
    },
    refresh,
  };
}

/** People in the manager's order; who is not in it comes last, by name. */
function inOrder(people: readonly Person[], order: readonly string[]): Person[] {
  const placeOf = ({ id }: Person) => (order.includes(id) ? order.indexOf(id) : order.length);
  return [...people].sort((a, b) => placeOf(a) - placeOf(b) || a.name.localeCompare(b.name));
}
