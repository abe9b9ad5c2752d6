// The interface: who is signed in decides what is shown, the address decides which page. Loaded by main.ts once the words are there.
import { render } from 'preact';
import { useEffect } from 'preact/hooks';
import { startClock } from './clock.ts';
import { keepFocus } from './keep-focus.ts';
import { fetchPagesWhen, route, startNavigation } from './navigation.ts';
import { isOutdated, watchVersion } from './new-version.ts';
import { AlarmsPage } from './pages/alarms-page.tsx';
import { ChamberPage } from './pages/chamber-page.tsx';
import { NothingPage } from './pages/nothing-page.tsx';
import { OverviewPage } from './pages/overview-page.tsx';
import { SignInPage } from './pages/sign-in-page.tsx';
import { LatePage } from './parts/late-page.tsx';
import { LoadState } from './parts/load-state.tsx';
import { LostBanner } from './parts/lost-banner.tsx';
import { Masthead } from './parts/masthead.tsx';
import { ServiceBanner } from './parts/service-banner.tsx';
import { Speaking } from './parts/speaking.tsx';
import { VersionNote } from './parts/version-note.tsx';
import { startServiceWorker } from './service-worker-client.ts';
import { loadSession, person, session, sessionProblem, watchSession } from './session.ts';
import { startLive } from './stream-reader.ts';

function Page() {
  const { page, id, alarmId } = route.value;
  switch (page) {
    case 'chamber':
      return <ChamberPage key={id} id={id} alarmId={alarmId} />;
    case 'alarms':
      return <AlarmsPage />;
    case 'batches':
    case 'profiles':
    case 'sensors':
    case 'first-batch':
    case 'people':
    case 'my-alerts':
    case 'channels':
    case 'settings':
      return <LatePage key={page} name={page} />;
    case 'profile':
    case 'profile-edit':
    case 'profile-copy':
      return <LatePage key={`${page} ${id}`} name={page} />;
    case 'nothing':
      return <NothingPage />;
    default:
      return <OverviewPage />;
  }
}

function SignedIn() {
  useEffect(startLive, []);
  return (
    <>
      <Masthead />
      <LostBanner />
      <VersionNote />
      <ServiceBanner />
      <Page />
    </>
  );
}

function Content() {
  if (route.value.page === 'wall') return <LatePage key="wall" name="wall" />;
  if (session.value === undefined)
    return (
      <main class="plain">
        <LoadState problem={sessionProblem.value} reload={() => void loadSession()} />
      </main>
    );
  if (route.value.page === 'join') return <LatePage key="join" name="join" />;
  if (person.value !== null) return <SignedIn />;
  return route.value.page === 'set-up' ? <LatePage name="set-up" /> : <SignInPage />;
}

function App() {
  return (
    <>
      <Content />
      <Speaking />
    </>
  );
}

/** Draws the interface into `host` and starts what runs beside it. */
export function startApp(host: HTMLElement): void {
  watchSession();
  startClock();
  startNavigation();
  keepFocus();
  fetchPagesWhen(() => isOutdated.peek());
  watchVersion();
  void loadSession();
  render(<App />, host);
  startServiceWorker();
}
