// The JSON inside a push: a declarative push message (W3C Push API), so that a phone can show it even where our service worker does not run,
// and our worker reads the same.
import { utcText } from '../../shared/units.ts';
import type { NoticeMessage } from './notice-message.ts';

/** Push services take 4,096 bytes encrypted (RFC 8030 §7.2); some count less. */
const PAYLOAD_LIMIT_BYTES = 3_000;

/**
 * The payload, always shorter than `limitBytes`: a body, then a title, that is too long loses its end. `receipt` is the secret with which the
 * phone says that it has shown it.
 */
export function writePushPayload(message: NoticeMessage, receipt: string, limitBytes = PAYLOAD_LIMIT_BYTES): string {
  let { title, body } = message;
  const excessOf = (written: string) => Buffer.byteLength(written) - (limitBytes - 1);
  let text = write(message, receipt, title, body);
  for (let excess = excessOf(text); excess > 0 && title + body !== ''; excess = excessOf(text)) {
    if (body === '') title = shorten(title, excess);
    else body = shorten(body, excess);
    text = write(message, receipt, title, body);
  }
  return text;
}

function write(message: NoticeMessage, receipt: string, title: string, body: string): string {
  const { noticeId, kind, url, tag, atMs, facts, acknowledge } = message;
  const data = {
    alarmId: facts?.alarm.id ?? null,
    chamberId: facts?.chamber.id ?? null,
    kind,
    at: utcText(atMs),
    noticeId,
    receipt,
    acknowledge: acknowledge?.token ?? null,
  };
  return JSON.stringify({ web_push: 8030, notification: { title, body, navigate: url, tag, data } });
}

// A character is at most 6 bytes of JSON, so an excess of n bytes needs at least n/6 characters less; the end is marked.
function shorten(text: string, excess: number): string {
  const characters = [...text.replace(/…$/, '')];
  const kept = characters.slice(0, Math.max(0, characters.length - Math.ceil(excess / 6) - 1)).join('');
  return kept === '' ? '' : `${kept}…`;
}
