// The start of the interface: who is signed in decides what is shown, the address decides which page.
import { render } from 'preact';
import { useEffect } from 'preact/hooks';
import './style/base.css';
import './style/parts.css';
import './style/overview.css';
import './style/chamber.css';
import './style/ledgers.css';
import './style/learning.css';
import './style/print.css';
import { startClock } from './clock.ts';
import { fetchPagesWhen, route, startNavigation } from './navigation.ts';
import { isOutdated, watchVersion } from './new-version.ts';
import { AlarmsPage } from './pages/alarms-page.tsx';
import { BatchesPage } from './pages/batches-page.tsx';
import { ChamberPage } from './pages/chamber-page.tsx';
import { NothingPage } from './pages/nothing-page.tsx';
import { OverviewPage } from './pages/overview-page.tsx';
import { PeoplePage } from './pages/people-page.tsx';
import { ProfilesPage } from './pages/profiles-page.tsx';
import { SensorsPage } from './pages/sensors-page.tsx';
import { SetUpPage } from './pages/set-up-page.tsx';
import { SettingsPage } from './pages/settings-page.tsx';
import { SignInPage } from './pages/sign-in-page.tsx';
import { LatePage } from './parts/late-page.tsx';
import { LoadState } from './parts/load-state.tsx';
import { LostBanner } from './parts/lost-banner.tsx';
import { Masthead } from './parts/masthead.tsx';
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
      return <BatchesPage />;
    case 'profiles':
      return <ProfilesPage />;
    case 'sensors':
      return <SensorsPage />;
    case 'people':
      return <PeoplePage />;
    case 'settings':
      return <SettingsPage />;
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
      <Page />
    </>
  );
}

/** Pages that few people open once: they are not in the first load. */
const wall = () => import('./pages/wall-page.tsx').then(({ WallPage }) => WallPage);
const join = () => import('./pages/join-page.tsx').then(({ JoinPage }) => JoinPage);

function Content() {
  if (route.value.page === 'wall') return <LatePage key="wall" load={wall} />;
  if (session.value === undefined)
    return (
      <main class="plain">
        <LoadState problem={sessionProblem.value} reload={() => void loadSession()} />
      </main>
    );
  if (route.value.page === 'join') return <LatePage key="join" load={join} />;
  if (person.value !== null) return <SignedIn />;
  return route.value.page === 'set-up' ? <SetUpPage /> : <SignInPage />;
}

function App() {
  return (
    <>
      <Content />
      <Speaking />
    </>
  );
}

const host = document.getElementById('app');
if (host !== null) {
  watchSession();
  startClock();
  startNavigation();
  fetchPagesWhen(() => isOutdated.peek());
  watchVersion();
  void loadSession();
  render(<App />, host);
  startServiceWorker();
}
