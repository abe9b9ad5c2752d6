// How the one who is signed in is told: whether alerts reach them now, their phones, address and quiet hours, language and units.

import { words } from '../late-strings.ts';
import { ActButton } from '../parts/act-button.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { PeopleWays } from '../parts/people-ways.tsx';
import { person, signOut } from '../session.ts';
import '../style/channels.css';
import { MyContact } from './my-contact.tsx';
import { MyLanguage } from './my-language.tsx';
import { MyPhones } from './my-phones.tsx';
import { MyReach } from './my-reach.tsx';

export function MyAlertsPage() {
  const me = person.value;
  if (me === null) return null;
  return (
    <main id="main" class="plain">
      <PageHead title={words.myAlerts.title}>
        <div class="signed-in">
          <p>{words.people.signedInAs(me.name, words.roles[me.role])}</p>
          <ActButton work={signOut}>{words.people.signOut}</ActButton>
        </div>
      </PageHead>
      <PeopleWays />
      <MyReach me={me} />
      <div class="columns is-three">
        <MyPhones />
        <MyContact me={me} />
        <MyLanguage />
      </div>
    </main>
  );
}
