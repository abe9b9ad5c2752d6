// What stands in the place of something that is not there yet: loading, or the problem with a way to try again.
import { words } from '../strings.ts';
import type { Loaded } from './use-load.ts';

export function LoadState({ problem, reload }: Pick<Loaded<unknown>, 'problem' | 'reload'>) {
  if (problem === undefined) return <p class="quiet-line">{words.problems.loading}</p>;
  return (
    <div class="problem" role="alert">
      <p>{problem.message}</p>
      <button type="button" class="plain" onClick={reload}>
        {words.problems.again}
      </button>
    </div>
  );
}
