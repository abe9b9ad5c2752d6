// The invitation to set up, on the overview until a first batch has been opened; the steps themselves are a page of their own.
import { calls } from '../calls.ts';
import { chamberNames } from '../chamber-store.ts';
import { changes } from '../live.ts';
import { useLoad } from '../parts/use-load.ts';
import { maySetUp } from '../session.ts';
import { words } from '../strings.ts';

export function FirstSteps() {
  const { data: batches } = useLoad(calls.batches, 'first', [changes.batches]);
  const hasChamber = chamberNames.value.length > 0;
  if (batches === undefined || batches.length > 0) return null;
  if (!maySetUp.value) return hasChamber ? null : <p class="quiet-line">{words.firstSteps.crewIntro}</p>;
  return (
    <section class="first-steps" aria-labelledby="first-steps">
      <h2 id="first-steps">{words.firstSteps.title}</h2>
      <p>{words.firstSteps.intro}</p>
      <p>
        <a class="button" href="/first-batch">
          {hasChamber ? words.firstSteps.goOn : words.firstSteps.begin}
        </a>
      </p>
    </section>
  );
}
