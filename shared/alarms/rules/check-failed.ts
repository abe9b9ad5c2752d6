// Check failed: the newest that people saw of plants or film is bad, answered as a check or logged. It stands until somebody sees it good.
import { checks } from '../../words/en/checks.ts';
import { type Judgement, noLimits, type Rule } from './rule.ts';
import type { SceneCare, SceneCheck, SceneReport } from './scene-care.ts';

/** Something that was seen, good or bad. `topic` joins what speaks of the same: `erect`, `film-wet`, or the check itself. */
interface Sight {
  readonly topic: string;
  readonly isGood: boolean;
  readonly atMs: number;
  readonly question: string;
  readonly ifNo: string;
}

const sights: Readonly<Record<SceneReport['kind'], readonly [topic: 'erect' | 'film-wet', isGood: boolean]>> = {
  erect: ['erect', true],
  limp: ['erect', false],
  'film-wet': ['film-wet', true],
  'film-dry': ['film-wet', false],
  // The film has just been wetted; that scions stand is another matter.
  mist: ['film-wet', true],
};

/** For a report where the profile has no check of the kind. */
const unasked = { erect: checks.reportedLimp, 'film-wet': checks.reportedDry } as const;

export const checkFailed: Rule = {
  id: 'check-failed',
  // Level 2: the scions do not stand.
  priority: ['medium', 'high'],
  worse: 1,
  // A person has looked: there is nothing to wait for.
  onDelayMs: [0, 0],
  offDelayMs: 0,
  judge({ nowMs, care }) {
    if (care === undefined || (care.checks.length === 0 && care.reports.length === 0)) return [];
    const seen = [...care.checks.flatMap(sightOfCheck), ...care.reports.flatMap((one) => sightOfReport(one, care))]
      .filter(({ atMs }) => atMs <= nowMs)
      .sort((a, b) => a.atMs - b.atMs);
    return [...Map.groupBy(seen, ({ topic }) => topic).values()].flatMap(judgeTopic);
  },
};

function sightOfCheck(check: SceneCheck): Sight[] {
  const { id, sameAs, question, ifNo, answer } = check;
  if (answer === null) return [];
  return [{ topic: sameAs ?? id, isGood: answer.answer === 'yes', atMs: answer.atMs, question, ifNo }];
}

function sightOfReport({ kind, atMs }: SceneReport, { checks }: SceneCare): Sight[] {
  const [topic, isGood] = sights[kind];
  const check = checks.find(({ sameAs }) => sameAs === topic);
  // Slightly limp is all right until the plan first asks whether they stand; then the check asks.
  if (kind === 'limp' && check !== undefined && atMs < check.dueMs) return [];
  const { question, ifNo } = check ?? unasked[topic];
  return [{ topic, isGood, atMs, question, ifNo }];
}

function judgeTopic(seen: readonly Sight[]): Judgement[] {
  const newest = seen.at(-1);
  if (newest === undefined || newest.isGood) return [];
  const firstBad = seen[seen.findLastIndex(({ isGood }) => isGood) + 1] ?? newest;
  const about = { id: newest.topic, question: newest.question, ifNo: newest.ifNo };
  const level = newest.topic === 'erect' ? 2 : 1;
  return [{ probeId: null, about, level, value: null, limits: noLimits, sinceMs: firstBad.atMs }];
}
