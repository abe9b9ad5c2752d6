// One message as an e-mail: plain text, and the same as small HTML. All mails of one alarm stand in one thread (RFC 5322 §3.6.4), a repeat of
// the same notice has the same Message-ID, and the mail says that a program wrote it (RFC 3834), so that nobody's absence note answers it.
import { createHash } from 'node:crypto';
import type { NoticeMessage } from './notice-message.ts';

export interface EmailAddresses {
  readonly from: string;
  readonly to: string;
}

/** The mail in the library's own shape. Nothing in it can become a header of its own: every text is one line of plain characters first. */
export function writeEmail(message: NoticeMessage, { from, to }: EmailAddresses) {
  const { noticeId, title, siteName, tag } = message;
  const domain = from.split('@')[1] ?? 'takewell.invalid';
  const thread = `<alarm.${shortHash(tag)}@${domain}>`;
  return {
    from: { name: oneLine(siteName), address: from },
    to: { name: oneLine(message.person?.name ?? ''), address: to },
    subject: oneLine(title),
    messageId: `<notice.${shortHash(noticeId)}@${domain}>`,
    references: [thread],
    inReplyTo: thread,
    headers: { 'Auto-Submitted': 'auto-generated' },
    date: new Date(message.atMs),
    ...(message.urgent && { priority: 'high' as const }),
    text: writeText(message),
    html: writeHtml(message),
  };
}

function writeText({ title, body, url, acknowledge, siteName, words: { notices } }: NoticeMessage): string {
  const links = [...(acknowledge === null ? [] : [`${notices.take}: ${acknowledge.url}`]), `${notices.look}: ${url}`];
  return `${title}\n\n${body}\n\n${links.join('\n')}\n\n-- \n${siteName}, Takewell\n`;
}

function writeHtml({ title, body, url, acknowledge, siteName, words: { notices } }: NoticeMessage): string {
  const lines = body.split('\n').map(escapeHtml).join('<br>');
  const take = acknowledge === null ? '' : `<p>${link(acknowledge.url, notices.take)}</p>`;
  const head = `<h1 style="font-size:1.2em">${escapeHtml(title)}</h1><p>${lines}</p>`;
  const foot = `<p>${link(url, notices.look)}</p><p>${escapeHtml(siteName)}, Takewell</p>`;
  return `<!doctype html><html><body>${head}${take}${foot}</body></html>`;
}

function link(url: string, words: string): string {
  return `<a href="${escapeHtml(url)}">${escapeHtml(words)}</a>`;
}

function escapeHtml(text: string): string {
  const entities: Readonly<Record<string, string>> = {
    '&': '&amp;',
    '<': '&lt;',
    '>': '&gt;',
    '"': '&quot;',
    "'": '&#39;',
  };
  return text.replace(/[&<>"']/g, (character) => entities[character] ?? '');
}

/** Line breaks and other control characters become spaces. */
function oneLine(text: string): string {
  return text
    .toWellFormed()
    .replace(/[\p{Cc}\u2028\u2029]+/gu, ' ')
    .trim();
}

function shortHash(text: string): string {
  return createHash('sha256').update(text).digest('hex').slice(0, 32);
}
