// What delivering is put together from. The store and the channels come from outside, and so do time and chance.
import type { Alarm } from '../../shared/alarms/alarm.ts';
import type { Webhook } from '../../shared/api/channels.ts';
import type { Finding } from '../../shared/finding.ts';
import type { Target } from '../../shared/telling/notice.ts';
import type { NewLink, Person, Phone, Store } from '../store/store.ts';
import type { Channel } from './channels/channel.ts';
import type { EmailTarget } from './channels/email.ts';
import type { PushTarget } from './channels/web-push.ts';
import type { SiteManner } from './occasion.ts';

/** A link whose secret is known and which counts once it is stored. */
export interface PendingLink {
  readonly token: string;
  readonly link: NewLink;
}

/** The part of the log that is used here. */
export interface NoticeLog {
  info(details: object, message: string): void;
  warn(details: object, message: string): void;
  error(details: object, message: string): void;
}

interface Channels {
  readonly 'web-push': Channel<PushTarget>;
  readonly email: Channel<EmailTarget>;
  readonly webhook: Channel<Webhook>;
}

export interface DeliveryParts {
  readonly store: Pick<
    Store,
    'commit' | 'notices' | 'alarms' | 'chambers' | 'batches' | 'probes' | 'phones' | 'people' | 'readings' | 'settings'
  >;
  readonly channels: Channels;
  readonly clock: { nowMs(): number };
  /** 0 ≤ n < 1; spreads the pauses between tries. */
  readonly random: () => number;
  readonly log: NoticeLog;
  /** The address people use, without a slash at the end. Asked at every message: a free port is known only after listening. */
  readonly publicUrl: () => string;
  /** How the site wants it said, now. */
  readonly manner: () => SiteManner;
  /** What reaches a person, now. */
  readonly targetsOf: (personId: string) => readonly Target[];
  /** Makes a link that acknowledges an alarm once; null when this person may not. */
  readonly makeLink: (alarm: Alarm, person: Person | null, program: string) => PendingLink | null;
  /** A phone that takes no more alerts has been removed. */
  readonly onPhoneGone?: (phone: Phone, reason: Finding) => void;
  /** Longest wait for what is under way when closing, ms. */
  readonly closeWithinMs?: number;
}

/** How many are sent at once: a push service takes many, a mail server few connections of one sender, a webhook is one program. */
export const laneWidths: Readonly<Record<Target['channel'], number>> = { 'web-push': 16, email: 4, webhook: 4 };
