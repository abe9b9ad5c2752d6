// What of `test-alert` goes to no person: siren and heartbeat.
import { plainEnglish } from '../../shared/plain-english.ts';
import { Problem } from '../../shared/problem.ts';
import { systemClock } from '../clock.ts';
import { readChannels } from '../notify/find-target.ts';
import { createHeartbeat } from '../notify/heartbeat.ts';
import { requestSirenTest } from '../siren-requests.ts';
import { openSite } from '../site.ts';
import { sayHeartbeat, type TrialResult } from '../trials.ts';
import type { Terminal } from './command.ts';
import { changeStored, fileOf, noDatabase, readStored } from './open-stored.ts';

/** Has the running service try the siren. Problem `unavailable` when none answers. */
export async function trySiren(terminal: Terminal): Promise<TrialResult> {
  const result = await changeStored(terminal, (store) => requestSirenTest(store.settings, systemClock.nowMs()));
  if (result !== null) return result;
  throw Problem.forOperator(
    'unavailable',
    'No Takewell on this data folder answers: start it (it alone speaks on the topic of the siren), then try again.',
  );
}

/** Sends one beat from here: the address is asked whether the service runs or not. */
export async function tryHeartbeat(terminal: Terminal): Promise<TrialResult> {
  const tried = await readStored(terminal, async (store) => {
    const { heartbeat } = await readChannels(store);
    const { zone } = (await openSite(store)).current();
    const outcome = await createHeartbeat({ target: () => heartbeat, clock: systemClock }).test();
    return sayHeartbeat(outcome, zone, plainEnglish.words, systemClock.nowMs());
  });
  if (tried === null) throw noDatabase(fileOf(terminal));
  return tried;
}
