// From empty to the first batch, step by step, each checked live. Every step shows by itself where it stands; nothing has to be ticked off.
import { useEffect, useState } from 'preact/hooks';
import { SECOND_MS } from '../../shared/units.ts';
import '../style/guide.css';
import { calls } from '../calls.ts';
import { allChambers } from '../chamber-store.ts';
import { words } from '../late-strings.ts';
import { changes, loadEverything } from '../live.ts';
import { AddChamberForm } from '../pages/add-chamber.tsx';
import { ProbeItem } from '../pages/probe-item.tsx';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { useLoad } from '../parts/use-load.ts';
import { isWaiting } from '../probe-groups.ts';
import { maySetUp } from '../session.ts';
import { BatchStep, CloseStep, PlanStep } from './batch-steps.tsx';
import { NodeStep } from './node-step.tsx';
import { SiteStep } from './site-step.tsx';
import { Step, type StepState } from './step.tsx';

const askAgainMs = 3 * SECOND_MS;

/** Everything the steps look at, asked again and again: a refused message or a phone added elsewhere sends no event here. */
function useGuide() {
  const settings = useLoad(calls.settings, 'settings');
  const broker = useLoad(calls.broker, 'broker');
  const probes = useLoad(calls.probes, 'probes', [changes.probes]);
  const refused = useLoad(calls.refused, 'refused', [changes.probes]);
  const profiles = useLoad(calls.profiles, 'profiles');
  const batches = useLoad(calls.batches, 'batches', [changes.batches]);
  const phones = useLoad(calls.phones, 'phones');
  useEffect(() => {
    const again = setInterval(() => {
      for (const part of [probes, refused, phones]) part.reload();
    }, askAgainMs);
    return () => clearInterval(again);
  }, []);
  return { settings, broker, probes, refused, profiles, batches, phones };
}

/** Done steps are done; the first that is not is the one to do now. */
function statesOf(done: readonly boolean[]): readonly StepState[] {
  const now = done.indexOf(false);
  return done.map((isDone, index) => (isDone ? 'done' : index === now ? 'now' : 'later'));
}

export function FirstBatchPage() {
  return (
    <main id="main" class="plain guide">
      <PageHead title={words.firstSteps.title}>
        <p>{words.firstSteps.intro}</p>
      </PageHead>
      {maySetUp.value ? <Steps /> : <p class="quiet-line">{words.firstSteps.crewIntro}</p>}
    </main>
  );
}

/** The list of batches and the chamber's own state both change when a batch is opened. */
function afterOpening(reload: () => void): () => void {
  return () => {
    reload();
    void loadEverything();
  };
}

function Steps() {
  const parts = useGuide();
  const [profileId, setProfileId] = useState('');
  const [isSiteSaved, setSiteSaved] = useState(false);
  const [isPlanTaken, setPlanTaken] = useState(false);
  const { settings, broker, probes, profiles, batches } = parts;
  const missing = [settings, broker, probes, profiles, batches].filter(({ data }) => data === undefined);
  const askAgain = () => {
    for (const part of missing) part.reload();
  };
  if (missing.length > 0)
    return <LoadState problem={missing.find(({ problem }) => problem)?.problem} reload={askAgain} />;
  const chambers = allChambers.value;
  const chamber = chambers[0];
  const batch = batches.data?.[0];
  const waiting = (probes.data ?? []).filter(isWaiting);
  const placed = (probes.data ?? []).filter((probe) => probe.place === 'canopy' && probe.chamberId !== null);
  const isHeard = (probes.data ?? []).some(({ last }) => last !== null);
  // Its settings begin with usable ones: looking at them once, or being further than that, is enough.
  const isSited = isSiteSaved || chamber !== undefined;
  const done = [
    ...[isSited, chamber !== undefined, isHeard, placed.length > 0],
    ...[isPlanTaken || batch !== undefined, batch !== undefined, batch !== undefined && batch.closedAt !== null],
    (parts.phones.data?.items.length ?? 0) > 0,
  ];
  const [
    ,
    chamberState = 'later',
    nodeState,
    placeState = 'later',
    planState = 'later',
    batchState = 'later',
    closeState = 'later',
    tellState = 'later',
  ] = statesOf(done);
  const chosen = profileId === '' ? (profiles.data?.[0]?.id ?? '') : profileId;
  return (
    <ol class="guide-steps">
      <SiteStep settings={settings} isDone={isSited} onSaved={() => setSiteSaved(true)} />
      <Step title={words.guide.chamber} why={words.firstSteps.chamberWhy} state={chamberState}>
        {chamberState === 'now' && <AddChamberForm />}
        {chamber !== undefined && <p>{words.firstSteps.chamberDone(chambers.map(({ name }) => name).join(', '))}</p>}
      </Step>
      {broker.data !== undefined && (
        <NodeStep
          broker={broker.data}
          probes={probes.data ?? []}
          refused={parts.refused.data?.[0]}
          isNow={nodeState === 'now'}
        />
      )}
      <Step title={words.guide.place} why={words.guide.placeWhy} state={placeState}>
        {placeState === 'now' && (
          <ul class="probe-list">
            {waiting.map((probe) => (
              <ProbeItem key={probe.id} probe={probe} onChanged={probes.reload} />
            ))}
          </ul>
        )}
        {placed.length > 0 && <p>{words.guide.placeDone(placed.map(({ name }) => name).join(', '))}</p>}
      </Step>
      <PlanStep
        profiles={profiles.data ?? []}
        chosen={chosen}
        isChosen={done[4] === true && batch === undefined}
        state={planState}
        onChoose={setProfileId}
        onTake={() => setPlanTaken(true)}
      />
      <BatchStep
        chamber={chamber}
        batch={batch}
        profileId={chosen}
        state={batchState}
        onOpened={afterOpening(batches.reload)}
      />
      <CloseStep batch={batch} state={closeState} onClosed={batches.reload} />
      <Step title={words.guide.tell} why={words.guide.tellWhy} state={tellState}>
        {tellState !== 'later' && (
          <a class="button" href="/my-alerts">
            {words.guide.toPeople}
          </a>
        )}
      </Step>
    </ol>
  );
}
