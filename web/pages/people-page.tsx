// Who is told and who is on duty when, and everybody who can sign in.
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { PeopleWays } from '../parts/people-ways.tsx';
import { Section } from '../parts/section.tsx';
import { useLoad } from '../parts/use-load.ts';
import { maySetUp } from '../session.ts';
import { DutyPlan } from './duty-plan.tsx';
import { InvitePeople } from './invite-people.tsx';
import { PeopleList } from './people-list.tsx';

function People() {
  const people = useLoad(calls.people, 'people');
  return (
    <Section id="people" title={words.people.people}>
      {people.data === undefined ? (
        <LoadState {...people} />
      ) : (
        <PeopleList people={people.data} onChanged={people.reload} />
      )}
    </Section>
  );
}

export function PeoplePage() {
  return (
    <main id="main" class="plain">
      <PageHead title={words.people.title} />
      <PeopleWays />
      <DutyPlan />
      {maySetUp.value ? (
        <div class="columns is-uneven">
          <People />
          <InvitePeople />
        </div>
      ) : (
        <p class="quiet-line">{words.people.crewOnly}</p>
      )}
    </main>
  );
}
