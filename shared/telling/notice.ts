// The words of telling: what a notice is, what it says of its alarm, and where it can go.

/**
 * `raised`: it began. `escalated`: it got worse. `asked-anew`: it was taken, and stands still. `passed-on`: nobody took it, so another
 * person is told. `repeated`: nobody has taken it yet. `taken`: somebody has it, said to the others. `returned`: over.
 * `flood`: many at once, told in one. `outage`: what was, while nobody watched. `phone-lost`: no alarm, but that a phone takes no more of them;
 * its `alarmId` is `phone.<id>`.
 */
export const noticeKinds = [
  'flood',
  'outage',
  'raised',
  'escalated',
  'asked-anew',
  'passed-on',
  'repeated',
  'taken',
  'returned',
  'phone-lost',
] as const;
export type NoticeKind = (typeof noticeKinds)[number];

export const noticeChannels = ['web-push', 'email', 'webhook'] as const;
export type NoticeChannel = (typeof noticeChannels)[number];

/** Somewhere a notice can go: a phone or the mailbox of a person, or a webhook. */
export interface Target {
  readonly channel: NoticeChannel;
  /** Id of the phone, `email:<person>`, `webhook:<webhook>` or `webhook:<webhook>:<person>`. */
  readonly targetId: string;
  /** Who is told by it; null = a program. */
  readonly personId: string | null;
}

/** A notice to send: written with the alarm in one transaction. The id says what it is, so that deciding twice stores it once. */
export interface NoticeDraft {
  readonly id: string;
  readonly alarmId: string;
  readonly chamberId: string;
  readonly kind: NoticeKind;
  readonly channel: NoticeChannel;
  readonly targetId: string;
  readonly personId: string | null;
  readonly decidedMs: number;
  readonly urgent: boolean;
}
