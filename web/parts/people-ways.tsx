// The way between the pages about people and alerts: who is on duty, how I am told, how alerts leave the site.

import { words } from '../late-strings.ts';
import { route } from '../navigation.ts';
import { maySetUp } from '../session.ts';

const ways = [
  ['/people', 'people', words.people.title],
  ['/my-alerts', 'my-alerts', words.myAlerts.title],
  ['/channels', 'channels', words.channels.short],
] as const;

/** Channels are the manager's. */
export function PeopleWays() {
  const shown = ways.filter(([, page]) => page !== 'channels' || maySetUp.value);
  return (
    <nav class="ways-between" aria-label={words.people.ways}>
      <ul>
        {shown.map(([path, page, title]) => (
          <li key={page}>
            <a href={path} aria-current={route.value.page === page ? 'page' : undefined}>
              {title}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
