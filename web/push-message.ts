// What an alert says, read from its payload. Whatever comes, there is something to show: a push that shows nothing gets revoked.
import { chooseLanguage, type Language } from '../shared/languages.ts';
import { alertWords } from './alert-words.ts';

export interface PushMessage {
  readonly title: string;
  /** That of the message, else of the browser: what the worker adds is said in it. */
  readonly language: Language;
  readonly body: string;
  /** Path and query inside this site. */
  readonly path: string;
  readonly tag: string;
  readonly alarmId: string;
  readonly isUrgent: boolean;
  readonly canAcknowledge: boolean;
  /** Acknowledges once without signing in; '' = none came. */
  readonly token: string;
  /** With both the phone says that it has shown it; '' = none came. */
  readonly noticeId: string;
  readonly receipt: string;
}

/** Kinds that ask somebody to take the alarm. */
const asking = ['raised', 'escalated', 'asked-anew', 'passed-on', 'repeated'];

function record(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}

function text(value: unknown, otherwise: string): string {
  return typeof value === 'string' && value !== '' ? value : otherwise;
}

/** The path of an address of this site; "/" for one that leads elsewhere. */
export function pathWithin(address: string, origin: string): string {
  try {
    const url = new URL(address, origin);
    return url.origin === origin ? url.pathname + url.search : '/';
  } catch {
    return '/';
  }
}

function parsed(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return {};
  }
}

/** Reads a declarative push message (`web_push: 8030`); anything else gives a plain notice that opens the overview. */
export function readPush(json: string, origin: string, browser: readonly string[] = []): PushMessage {
  const notification = record(record(parsed(json))['notification']);
  const data = record(notification['data']);
  const kind = text(data['kind'], '');
  const alarmId = text(data['alarmId'], '');
  const language = chooseLanguage([text(notification['lang'], ''), ...browser]);
  return {
    language,
    title: text(notification['title'], alertWords[language].fallbackTitle),
    body: text(notification['body'], alertWords[language].fallbackBody),
    path: pathWithin(text(notification['navigate'], '/'), origin),
    tag: text(notification['tag'], 'takewell'),
    alarmId,
    isUrgent: asking.includes(kind),
    canAcknowledge: alarmId !== '' && asking.includes(kind),
    token: text(data['acknowledge'], ''),
    noticeId: text(data['noticeId'], ''),
    receipt: text(data['receipt'], ''),
  };
}
