// How alerts leave the site: mail server, webhooks, siren, heartbeat. For managers.

import { words } from '../late-strings.ts';
import { PageHead } from '../parts/page-head.tsx';
import { PeopleWays } from '../parts/people-ways.tsx';
import { maySetUp } from '../session.ts';
import '../style/channels.css';
import { SiteChannels } from './site-channels.tsx';

export function ChannelsPage() {
  return (
    <main id="main" class="plain">
      <PageHead title={words.channels.title} />
      <PeopleWays />
      {maySetUp.value ? (
        <div class="columns is-three">
          <SiteChannels />
        </div>
      ) : (
        <p class="quiet-line">{words.people.crewOnly}</p>
      )}
    </main>
  );
}
