// The wall screen: no sign-in, no buttons that act, type to be read from three metres. It steps through the chambers that need someone and
// shows all of them when it is calm. Read-only by the token it was opened with.
import { useComputed } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import { SECOND_MS } from '../../shared/units.ts';
import { freshWords } from '../age.ts';
import { allChambers, chamberIds } from '../chamber-store.ts';
import { nowMs, slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { connection, heardMs } from '../live.ts';
import { LostBanner } from '../parts/lost-banner.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { session, zone } from '../session.ts';
import { startLive } from '../stream-reader.ts';
import '../style/wall.css';
import { startWallAccess, type WallAccess, wallAccess } from '../wall-access.ts';
import { wallViews } from '../wall-steps.ts';
import { weekdayAndTime } from '../when.ts';
import { Headline } from './headline.tsx';
import { type Groups, groupChambers } from './overview-order.ts';
import { useWallScreen } from './use-wall-screen.ts';
import { WallChamber } from './wall-chamber.tsx';
import { WallList } from './wall-list.tsx';
import { WallService } from './wall-service.tsx';

const stepMs = 12 * SECOND_MS;
const rowsPerPage = 6;

function useGroups(): Groups {
  // As text, so that a new value that changes no order begins no round anew.
  const key = useComputed(() => JSON.stringify(groupChambers(allChambers.value, slowNowMs.value, zone.value)));
  return JSON.parse(key.value) as Groups;
}

/** Goes round by itself; a chamber that newly needs someone is shown at once. */
function useStep(worst: string | undefined) {
  const [step, setStep] = useState(0);
  const [isStaying, setStaying] = useState(false);
  useEffect(() => setStep(0), [worst]);
  useEffect(() => {
    if (isStaying) return;
    const timer = setInterval(() => setStep((count) => count + 1), stepMs);
    return () => clearInterval(timer);
  }, [isStaying, worst]);
  return { step, isStaying, setStaying, stepOn: () => setStep((count) => count + 1) };
}

function Chambers() {
  const groups = useGroups();
  const { step, isStaying, setStaying, stepOn } = useStep(groups.alarm[0]);
  const views = wallViews(groups, rowsPerPage);
  const view = views[step % views.length];
  return (
    <>
      <div class="wall-say">
        <Headline />
        {views.length > 1 && (
          <div class="wall-steps">
            <span>{words.wall.pageOf((step % views.length) + 1, views.length)}</span>
            <button type="button" onClick={stepOn}>
              {words.wall.step}
            </button>
            <button type="button" aria-pressed={isStaying} onClick={() => setStaying(!isStaying)}>
              {words.wall.stay}
            </button>
          </div>
        )}
      </div>
      {view?.kind === 'chamber' && <WallChamber key={view.id} id={view.id} />}
      {view?.kind === 'list' && <WallList ids={view.ids} />}
    </>
  );
}

function WallClock() {
  const now = nowMs.value;
  const heard = heardMs.value;
  return (
    <p class="live">
      <time>{weekdayAndTime(now, zone.value)}</time>
      {heard !== null && connection.value === 'live' && <span>{freshWords(now - heard)}</span>}
    </p>
  );
}

/** Why nothing can be shown; null when something can. */
function hindranceOf(access: WallAccess, count: number | undefined): string | null {
  if (access === 'refused') return `${words.wall.refused} ${words.wall.refusedWhat}`;
  if (count === undefined) return access === 'unreached' ? words.wall.unreached : words.wall.asking;
  return count === 0 ? words.wall.noChambers : null;
}

export function WallPage() {
  const { shift, isNight } = useWallScreen(zone.value);
  const access = wallAccess.value;
  useEffect(startWallAccess, []);
  // Without a connection what the offline shell has kept is shown, with its age.
  const isLetIn = access === 'open' || access === 'unreached';
  useEffect(() => (isLetIn ? startLive() : undefined), [isLetIn]);
  const hindrance = hindranceOf(access, chamberIds.value?.length);
  return (
    <div class="wall" data-shift={shift} data-night={isNight ? '' : undefined}>
      <header class="wall-head">
        <p class="brand">{words.product}</p>
        <p>{session.value?.siteName}</p>
        {session.value?.demo === true && <p class="demo">{words.demo}</p>}
        <WallClock />
      </header>
      {access !== 'refused' && <LostBanner />}
      {isLetIn && <WallService />}
      <main id="main">
        <PageHead title={words.wall.title} isHidden={true} />
        {hindrance === null ? <Chambers /> : <p class="wall-hindrance">{hindrance}</p>}
      </main>
    </div>
  );
}
