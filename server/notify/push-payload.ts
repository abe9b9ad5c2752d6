// The JSON inside a push: a declarative push message (W3C Push API), so that a phone can show it even where our service worker does not run,
// and our worker reads the same.
import { utcText } from '../../shared/units.ts';
import type { NoticeMessage } from './notice-message.ts';

/** Push services take 4,096 bytes encrypted (RFC 8030 §7.2); some count less. */
const PAYLOAD_LIMIT_BYTES = 3_000;

/** The payload, always shorter than 3,000 bytes: a body, then a title, that is too long loses its end. */
export function writePushPayload(message: NoticeMessage): string {
  let { title, body } = message;
  let text = write(message, title, body);
  for (let excess = excessOf(text); excess > 0 && title + body !== ''; excess = excessOf(text)) {
    if (body === '') title = shorten(title, excess);
    else body = shorten(body, excess);
    text = write(message, title, body);
  }
  return text;
}

function write({ kind, url, tag, atMs, facts }: NoticeMessage, title: string, body: string): string {
  const data = {
    alarmId: facts?.alarm.id ?? null,
    chamberId: facts?.chamber.id ?? null,
    kind,
    at: utcText(atMs),
  };
  return JSON.stringify({ web_push: 8030, notification: { title, body, navigate: url, tag, data } });
}

function excessOf(text: string): number {
  return Buffer.byteLength(text) - (PAYLOAD_LIMIT_BYTES - 1);
}

// A character is at most 6 bytes of JSON, so an excess of n bytes needs at least n/6 characters less; the end is marked.
function shorten(text: string, excess: number): string {
  const characters = [...text.replace(/…$/, '')];
  const kept = characters.slice(0, Math.max(0, characters.length - Math.ceil(excess / 6) - 1)).join('');
  return kept === '' ? '' : `${kept}…`;
}
