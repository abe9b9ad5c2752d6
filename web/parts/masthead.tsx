// The head of every page: name, the ways to the pages, the site's clock and how long ago the service was heard.
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { SECOND_MS, utcText } from '../../shared/units.ts';
import { freshWords, spanWords } from '../age.ts';
import { openAlarmCount } from '../chamber-store.ts';
import { nowMs } from '../clock.ts';
import { connection, heardMs } from '../live.ts';
import { route } from '../navigation.ts';
import type { PageName } from '../router.ts';
import { maySetUp, person, session, zone } from '../session.ts';
import { words } from '../strings.ts';
import { clockTime, shortDate, weekdayAndTime } from '../when.ts';

const near = [
  ['/', 'overview'],
  ['/alarms', 'alarms'],
  ['/batches', 'batches'],
] as const;
const far = [
  ['/profiles', 'profiles'],
  ['/sensors', 'sensors'],
  ['/people', 'people'],
] as const;
const managers = [['/settings', 'settings']] as const;

type NavName = (typeof near | typeof far | typeof managers)[number][1];

/** The pages that are not asked for every day. */
function farLinks(): readonly (readonly [path: string, name: NavName])[] {
  return maySetUp.value ? [...far, ...managers] : far;
}

/** Pages without a link of their own in the head, by the link that stands for them. */
const inside: Partial<Record<NavName, readonly PageName[]>> = {
  overview: ['chamber'],
  profiles: ['profile', 'profile-edit', 'profile-copy'],
  people: ['my-alerts', 'channels'],
};

function isHere(name: NavName, page: PageName): boolean {
  return page === name || inside[name]?.includes(page) === true;
}

function NavLink({ path, name }: { readonly path: string; readonly name: NavName }) {
  const count = name === 'alarms' ? openAlarmCount.value : 0;
  return (
    <a href={path} aria-current={isHere(name, route.value.page) ? 'page' : undefined}>
      {words.nav[name]}
      {count > 0 && (
        <>
          <b class="count" aria-hidden="true">
            {count}
          </b>
          <span class="unseen">{words.nav.open(count)}</span>
        </>
      )}
    </a>
  );
}

function liveWords(now: number, heard: number | null, isLost: boolean): string {
  if (heard === null) return isLost ? words.live.none : words.live.connecting;
  if (!isLost) return freshWords(now - heard);
  return now - heard < SECOND_MS ? words.live.none : words.live.lostShort(spanWords(now - heard));
}

/** The clock and the age of what is shown; alone in a component because it changes each second. */
function LiveLine() {
  const now = nowMs.value;
  const isLost = connection.value === 'lost';
  return (
    <p class={isLost ? 'live is-lost' : 'live'}>
      <time>{weekdayAndTime(now, zone.value)}</time>
      <span>{liveWords(now, heardMs.value, isLost)}</span>
    </p>
  );
}

/** Who is signed in, where one looks for that; on a phone it stands in the menu. */
function Me() {
  const name = person.value?.name ?? '';
  return (
    <a class="me" href="/my-alerts" aria-label={words.nav.mineOf(name)}>
      {name}
    </a>
  );
}

/** On paper: whose page this is and when it was printed, since paper grows old without saying so. */
function Printed() {
  const heard = heardMs.value;
  if (heard === null) return null;
  const site = session.value?.siteName ?? '';
  return (
    <p class="printed">
      {words.printed(site, `${shortDate(utcText(heard), zone.value)} ${clockTime(heard, zone.value)}`)}
    </p>
  );
}

/** Closes the menu when something outside it is pressed or gets the focus, and at Escape. */
function useCloseOutside(menu: RefObject<HTMLDetailsElement | null>): void {
  useEffect(() => {
    const close = ({ target }: Event) => {
      const { current } = menu;
      if (current?.open === true && target instanceof Node && !current.contains(target)) current.open = false;
    };
    const leave = ({ key }: KeyboardEvent) => {
      const { current } = menu;
      if (key !== 'Escape' || current?.open !== true) return;
      current.open = false;
      current.querySelector('summary')?.focus();
    };
    document.addEventListener('pointerdown', close);
    document.addEventListener('focusin', close);
    document.addEventListener('keydown', leave);
    return () => {
      document.removeEventListener('pointerdown', close);
      document.removeEventListener('focusin', close);
      document.removeEventListener('keydown', leave);
    };
  }, []);
}

function MoreMenu() {
  const menu = useRef<HTMLDetailsElement>(null);
  useCloseOutside(menu);
  const links = farLinks();
  const isFar = links.some(([, name]) => isHere(name, route.value.page));
  return (
    <details class="more" key={route.value.page} ref={menu}>
      <summary class={isFar ? 'is-here' : ''}>{words.nav.more}</summary>
      <div class="more-links">
        {links.map(([path, name]) => (
          <NavLink key={name} path={path} name={name} />
        ))}
        <a href="/my-alerts">{words.nav.mine}</a>
      </div>
    </details>
  );
}

export function Masthead() {
  return (
    <header class="masthead">
      <a class="skip" href="#main">
        {words.skipToMain}
      </a>
      <a class="brand" href="/">
        {words.product}
      </a>
      <nav aria-label={words.menu}>
        {near.map(([path, name]) => (
          <NavLink key={name} path={path} name={name} />
        ))}
        <div class="far">
          {farLinks().map(([path, name]) => (
            <NavLink key={name} path={path} name={name} />
          ))}
        </div>
        <MoreMenu />
      </nav>
      {session.value?.demo === true && <p class="demo">{words.demo}</p>}
      <LiveLine />
      <Me />
      <Printed />
    </header>
  );
}
