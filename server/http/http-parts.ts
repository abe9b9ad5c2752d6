// What the routes are given. Wired in app.ts; a route takes what it needs and nothing else.
import type {
  FastifyBaseLogger,
  FastifyInstance,
  RawReplyDefaultExpression,
  RawRequestDefaultExpression,
  RawServerDefault,
} from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import type { Channels } from '../../shared/api/channels.ts';
import type { Health } from '../../shared/api/health.ts';
import type { BrokerAddress } from '../../shared/api/probes.ts';
import type { Finding } from '../../shared/finding.ts';
import type { Target } from '../../shared/telling/notice.ts';
import type { SharedWords } from '../../shared/words/shared-words.ts';
import type { AcknowledgeLinks } from '../acknowledge-links.ts';
import type { Clock } from '../clock.ts';
import type { DutyBook } from '../duty-book.ts';
import type { SignIn } from '../people/sign-in.ts';
import type { ReachBook } from '../reach-book.ts';
import type { Site } from '../site.ts';
import type { Store } from '../store/store.ts';
import type { Trials } from '../trials.ts';
import type { BatchActs } from '../watch/batch-acts.ts';
import type { CalibrationActs } from '../watch/calibration-acts.ts';
import type { ChamberActs } from '../watch/chamber-acts.ts';
import type { Rounds } from '../watch/rounds.ts';
import type { Watch } from '../watch/watch.ts';
import type { StreamHub } from './stream.ts';

export interface HttpParts {
  readonly store: Store;
  readonly watch: Watch;
  readonly rounds: Rounds;
  readonly chamberActs: ChamberActs;
  readonly batchActs: BatchActs;
  readonly calibrationActs: CalibrationActs;
  readonly site: Site;
  readonly signIn: SignIn;
  readonly hub: StreamHub;
  readonly clock: Clock;
  /** Said in these words. */
  readonly health: (words: SharedWords) => Promise<Health>;
  readonly metrics: () => Promise<string>;
  readonly telling: Telling;
  readonly trials: Trials;
  readonly duty: DutyBook;
  readonly reach: ReachBook;
  readonly broker: BrokerAddress;
  readonly links: AcknowledgeLinks;
  /** Called after the mappings changed. */
  readonly followMappings: () => Promise<void>;
  readonly isSecure: boolean;
  readonly isDemo: boolean;
  readonly version: string;
}

interface TestOutcome {
  readonly delivered: boolean;
  readonly finding: Finding;
  readonly atMs: number;
}

/** The part of alerting that the screens use. */
export interface Telling {
  readonly pushKey: string;
  channels(): Channels;
  changeChannels(channels: Channels): Promise<void>;
  /** Who may be told has changed. */
  targetsChanged(): Promise<void>;
  test(target: Pick<Target, 'channel' | 'targetId' | 'personId'>): Promise<TestOutcome>;
  /** A phone says with the secret of a notice that it has shown it; false when the secret is not that of the notice. */
  confirm(noticeId: string, secret: string): Promise<boolean>;
  /** The address people use, as set; null = not set. */
  readonly publicUrl: string | null;
}

export type Routes = FastifyInstance<
  RawServerDefault,
  RawRequestDefaultExpression,
  RawReplyDefaultExpression,
  FastifyBaseLogger,
  ZodTypeProvider
>;
