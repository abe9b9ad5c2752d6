// Does what a button stands for and tells how it went: a short note, or the reason it did not work.
import { announce, showNote } from '../announce.ts';
import { ApiProblem } from '../api.ts';
import { words } from '../strings.ts';

/** Runs an act. `done` is told on success; a refusal is told in its own words. Returns whether it worked. */
export async function doAct(work: () => Promise<unknown>, done?: string): Promise<boolean> {
  try {
    await work();
    if (done !== undefined) showNote(done);
    return true;
  } catch (problem) {
    if (!(problem instanceof ApiProblem)) throw problem;
    showNote(`${words.acts.failed} ${problem.message}`, true);
    announce(problem.message, 'assertive');
    return false;
  }
}
