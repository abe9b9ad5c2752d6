// Who is told and who is on duty, people, the contact and phones of the one who is signed in, and the channels.
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { ActButton } from '../parts/act-button.tsx';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { useLoad } from '../parts/use-load.ts';
import { maySetUp, person, signOut } from '../session.ts';
import '../style/channels.css';
import { DutyPlan } from './duty-plan.tsx';
import { InvitePeople } from './invite-people.tsx';

import { MyContact } from './my-contact.tsx';
import { MyLanguage } from './my-language.tsx';

import { MyPhones } from './my-phones.tsx';
import { MyReach } from './my-reach.tsx';
import { PeopleList } from './people-list.tsx';
import { SiteChannels } from './site-channels.tsx';

function People() {
  const people = useLoad(calls.people, 'people');
  return (
    <section aria-labelledby="people">
      <h2 id="people">{words.people.people}</h2>
      {people.data === undefined ? (
        <LoadState {...people} />
      ) : (
        <PeopleList people={people.data} onChanged={people.reload} />
      )}
    </section>
  );
}

export function PeoplePage() {
  const me = person.value;
  return (
    <main id="main" class="plain">
      <PageHead title={words.people.title}>
        {me !== null && (
          <div class="signed-in">
            <p>{words.people.signedInAs(me.name, words.roles[me.role])}</p>
            <ActButton work={signOut}>{words.people.signOut}</ActButton>
          </div>
        )}
      </PageHead>
      {me !== null && <MyReach me={me} />}
      {maySetUp.value ? (
        <div class="columns is-uneven">
          <div class="stack">
            <DutyPlan />
            <People />
            <InvitePeople />
          </div>
          <div class="stack">
            {me !== null && <MyContact me={me} />}
            <MyLanguage />
            <MyPhones />
            <SiteChannels />
          </div>
        </div>
      ) : (
        <>
          <DutyPlan />
          {me !== null && <MyContact me={me} />}
          <MyLanguage />
          <MyPhones />
          <p class="quiet-line">{words.people.crewOnly}</p>
        </>
      )}
    </main>
  );
}
