// The page that a link in a message opens: what the alarm is now, and one button. Tiny, without script, in the words of whoever it was sent to.
import { createHash } from 'node:crypto';
import { adviseOnAlarm, sayAlarm } from '../../shared/alarms/say-alarm.ts';
import type { Language } from '../../shared/languages.ts';
import type { ServiceSaying } from '../../shared/saying.ts';
import { sayClock } from '../../shared/telling/say-clock.ts';
import type { SeenLink } from '../acknowledge-links.ts';

export interface PageOccasion {
  readonly nowMs: number;
  readonly zone: string;
  readonly language: Language;
  readonly saying: ServiceSaying;
}

const style =
  'body{font:1.1rem/1.5 system-ui,sans-serif;max-width:34rem;margin:0 auto;padding:1.5rem;background:#f7f6f1;color:#1c1f1a}' +
  'h1{font-size:1.3rem}button{font:inherit;font-weight:600;min-height:3.5rem;width:100%;border:0;border-radius:.3rem;background:#1d4b33;color:#fff}' +
  'button:focus-visible,a:focus-visible{outline:3px solid #b4520a;outline-offset:3px}a{color:#1d4b33;display:inline-block;padding:.7rem 0}';

/** What such a page may load: nothing but its own style, and it may send its form home. */
export const acknowledgePagePolicy = `default-src 'none'; style-src 'sha256-${createHash('sha256').update(style).digest('base64')}'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'`;

/** The whole document. `seen` null = the link is not known or its time is over. */
export function renderAcknowledgePage(seen: SeenLink | null, occasion: PageOccasion): string {
  const { language, saying } = occasion;
  const { page } = saying.words.notices;
  const body =
    seen === null ? `<h1>${escapeHtml(page.title)}</h1><p>${escapeHtml(page.unknown)}</p>` : sayLink(seen, occasion);
  return `<!doctype html><html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><meta name="robots" content="noindex,nofollow"><title>Takewell</title><style>${style}</style></head><body><main>${body}<p><a href="/">${escapeHtml(page.open)}</a></p></main></body></html>`;
}

function sayLink(seen: SeenLink, occasion: PageOccasion): string {
  const { alarm, chamberName, person } = seen;
  const { nowMs, saying } = occasion;
  const { notices } = saying.words;
  const head = `<h1>${escapeHtml(chamberName ?? notices.removedChamber)}</h1><p>${escapeHtml(sayAlarm(alarm, nowMs, saying))}</p>`;
  const hindrance = sayHindrance(seen, occasion);
  if (hindrance !== null) return `${head}<p><strong>${escapeHtml(hindrance)}</strong></p>`;
  const whose = person === null ? '' : `<p>${escapeHtml(notices.page.forPerson(person.name))}</p>`;
  const advice = `<p>${escapeHtml(notices.first(adviseOnAlarm(alarm, saying)))}</p>`;
  const form = `<form method="post"><button type="submit">${escapeHtml(notices.take)}</button></form>`;
  return `${head}${advice}${whose}<p>${escapeHtml(notices.page.ask)}</p>${form}`;
}

/** Why there is nothing to press; null = there is. */
function sayHindrance({ alarm, link }: SeenLink, { nowMs, zone, saying }: PageOccasion): string | null {
  const { notices } = saying.words;
  if (alarm.state === 'acknowledged')
    return notices.page.taken(
      alarm.acknowledgedBy ?? notices.somebody,
      sayClock(alarm.acknowledgedMs ?? nowMs, nowMs, zone, saying.words),
    );
  if (alarm.level === 0) return notices.page.over;
  if (alarm.state !== 'unacknowledged') return notices.page.notNow;
  return link.usedMs === null ? null : notices.page.used;
}

function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}
