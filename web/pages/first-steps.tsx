// From empty to the first batch: three steps, each of which shows by itself when it is done. Gone once a batch has been opened.
import type { ComponentChildren } from 'preact';
import { calls } from '../calls.ts';
import { chamberNames } from '../chamber-store.ts';
import { changes } from '../live.ts';
import { ShapeMark } from '../parts/shape-mark.tsx';
import { useLoad } from '../parts/use-load.ts';
import { isWaiting } from '../probe-groups.ts';
import { withHumidity, withTemperature } from '../quantities.ts';
import { chamberPath } from '../router.ts';
import { mayAct, maySetUp } from '../session.ts';
import { words } from '../strings.ts';
import { AddChamberForm } from './add-chamber.tsx';

interface StepProps {
  readonly title: string;
  readonly why: string;
  readonly isDone: boolean;
  readonly children?: ComponentChildren;
}

function Step({ title, why, isDone, children }: StepProps) {
  return (
    <li class={isDone ? 'step is-done' : 'step'}>
      <h3>
        {title}{' '}
        {isDone && (
          <span class="step-done">
            <ShapeMark shape="order" /> {words.firstSteps.done}
          </span>
        )}
      </h3>
      <p>{why}</p>
      {children}
    </li>
  );
}

function ProbeStep() {
  const { data: probes = [] } = useLoad(calls.probes, 'probes', [changes.probes]);
  const placed = probes.filter((probe) => probe.chamberId !== null);
  const waiting = probes.filter(isWaiting);
  const heard = placed[0]?.last ?? waiting[0]?.last ?? null;
  return (
    <Step title={words.firstSteps.probe} why={words.firstSteps.probeWhy} isDone={placed.length > 0}>
      <p class="heard" role="status">
        {waiting.length > 0
          ? words.firstSteps.probeHeard(waiting.length)
          : placed.length === 0 && words.firstSteps.probeNone}
        {heard !== null && `: ${words.sensors.hears(withTemperature(heard.temperature), withHumidity(heard.humidity))}`}
      </p>
      <a class="button" href="/sensors">
        {words.firstSteps.toSensors}
      </a>
    </Step>
  );
}

export function FirstSteps() {
  const { data: batches } = useLoad(calls.batches, 'first', [changes.batches]);
  const chambers = chamberNames.value;
  if (batches === undefined || batches.length > 0) return null;
  const first = chambers[0];
  if (!maySetUp.value && first === undefined) return <p class="quiet-line">{words.firstSteps.crewIntro}</p>;
  return (
    <section class="first-steps" aria-labelledby="first-steps">
      <h2 id="first-steps">{words.firstSteps.title}</h2>
      <p>{words.firstSteps.intro}</p>
      <ol>
        <Step title={words.firstSteps.chamber} why={words.firstSteps.chamberWhy} isDone={first !== undefined}>
          {first === undefined ? (
            <AddChamberForm />
          ) : (
            <p>{words.firstSteps.chamberDone(chambers.map(([, name]) => name).join(', '))}</p>
          )}
        </Step>
        <ProbeStep />
        <Step title={words.firstSteps.batch} why={words.firstSteps.batchWhy} isDone={false}>
          {first !== undefined && mayAct.value && (
            <a class="button" href={chamberPath(first[0])}>
              {words.batch.openTitle(first[1])}
            </a>
          )}
        </Step>
      </ol>
    </section>
  );
}
