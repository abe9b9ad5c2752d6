// Tries what goes past the outbox, siren and heartbeat, and says in the words of whoever asks what came of it: no more than is known.
import { sayFinding } from '../shared/finding.ts';
import { saySecond } from '../shared/telling/say-clock.ts';
import type { SharedWords } from '../shared/words/shared-words.ts';
import type { Clock } from './clock.ts';
import type { SirenOutcome } from './ingest/siren-trial.ts';
import type { HeartbeatOutcome } from './notify/heartbeat.ts';

export interface TrialResult {
  /** The other side has it; of the siren also that something follows it, as far as that is known. */
  readonly delivered: boolean;
  readonly reason: string;
  readonly atMs: number;
}

export interface Trials {
  siren(words: SharedWords): Promise<TrialResult>;
  heartbeat(words: SharedWords): Promise<TrialResult>;
}

interface TrialParts {
  readonly siren: { test(): Promise<SirenOutcome> };
  readonly heartbeat: { test(): Promise<HeartbeatOutcome | null> };
  /** IANA zone of the site. */
  readonly zone: () => string;
  readonly clock: Pick<Clock, 'nowMs'>;
}

export function createTrials({ siren, heartbeat, zone, clock }: TrialParts): Trials {
  return {
    siren: async (words) => saySiren(await siren.test(), zone(), words),
    heartbeat: async (words) => sayHeartbeat(await heartbeat.test(), zone(), words, clock.nowMs()),
  };
}

const whyNot = { 'switched-off': 'switchedOff', 'in-alarm': 'inAlarm', broker: 'brokerSilent' } as const;

function saySiren(outcome: SirenOutcome, zone: string, { trials: { siren: say } }: SharedWords): TrialResult {
  if (outcome.kind === 'not-sounded') return { delivered: false, reason: say[whyNot[outcome.why]], atMs: outcome.atMs };
  const { onMs, offMs, isTakenOver, followers } = outcome;
  const on = saySecond(onMs, zone);
  const course = isTakenOver
    ? say.takenOver(on)
    : offMs === null
      ? say.notBack(on)
      : say.sounded(on, saySecond(offMs, zone));
  return { delivered: followers !== 0, reason: `${course} ${sayFollowers(followers, say)}`, atMs: onMs };
}

function sayFollowers(followers: number | null, say: SharedWords['trials']['siren']): string {
  if (followers === null) return say.followersUnknown;
  return followers === 0 ? say.followedByNobody : say.followed(followers);
}

/** null = no address is set. */
export function sayHeartbeat(
  outcome: HeartbeatOutcome | null,
  zone: string,
  words: SharedWords,
  nowMs: number,
): TrialResult {
  const say = words.trials.heartbeat;
  if (outcome === null) return { delivered: false, reason: say.notSet, atMs: nowMs };
  const { delivered, answer, atMs } = outcome;
  const clock = saySecond(atMs, zone);
  if (typeof answer !== 'number') return { delivered, reason: say.failed(clock, sayFinding(answer, words)), atMs };
  return { delivered, reason: delivered ? say.answered(clock, answer) : say.refused(clock, answer), atMs };
}
