// What a failed try of sending an e-mail means, from the error of the library: which step failed (`command`) and what the server said
// (RFC 5321 §4.2: 4xx may pass, 5xx will not). Pure.
import type { EmailSettings } from '../../../shared/api/channels.ts';
import type { NotDelivered } from './channel.ts';
import { sayPostFailure } from './say-post-failure.ts';

interface MailError {
  readonly name: string;
  readonly code: string;
  readonly command: string;
  readonly responseCode: number;
  readonly message: string;
}

/** `to` is the one recipient. The server's own words are never passed on: they may echo what was sent to it. */
export function judgeMailFailure(error: unknown, server: EmailSettings, to: string): NotDelivered {
  const failure = readError(error);
  const { responseCode, command } = failure;
  const isAnswer = responseCode >= 400;
  // Refused for this one: 5xx to the recipient or to the message. Anything before that is the same for everybody, and mends itself or is mended.
  const isOfThisMail = isAnswer && (command === 'RCPT TO' || command === 'DATA') && responseCode !== 421;
  return {
    delivered: false,
    retryable: !(isOfThisMail && responseCode >= 500),
    reason: isAnswer ? sayAnswer(failure, server, to) : saySilence(failure, server),
    serviceDown: !isOfThisMail,
  };
}

function sayAnswer({ responseCode, command }: MailError, { host }: EmailSettings, to: string): string {
  if (command.startsWith('AUTH') || responseCode === 535 || responseCode === 530)
    return `${host} does not accept our user and password (${responseCode}): enter them anew`;
  if (command === 'RCPT TO')
    return responseCode >= 500
      ? `${host} refuses the address ${to} (${responseCode}): correct it`
      : `${host} defers the address ${to} (${responseCode})`;
  if (command === 'MAIL FROM') return `${host} refuses the sender of our mails (${responseCode}): enter another`;
  if (command === 'DATA' && responseCode >= 500) return `${host} refuses the message (${responseCode})`;
  return `${host} asks to come again later (${responseCode})`;
}

function saySilence(failure: MailError, { host, port, security }: EmailSettings): string {
  const { code, message, command, name } = failure;
  if (code === 'ETLS' && /upgrade|STARTTLS/i.test(message) && !/cert|sign|issuer/i.test(message))
    return `${host} offers no STARTTLS on port ${port}: choose another port or security`;
  if (/cert|self.signed|issuer|altname/i.test(message)) return `the certificate of ${host} cannot be trusted`;
  if (name === 'AbortError' || code === 'ETIMEDOUT' || /timeout/i.test(message))
    return `${host} did not answer in time${command === 'CONN' ? ` on port ${port}` : ''}`;
  if (code === 'ENOAUTH' || code === 'EAUTH') return `${host} offers no sign-in with our user: check user and security`;
  if (code === 'ESOCKET' && /wrong version|packet length/i.test(message))
    return `${host} does not speak ${security === 'tls' ? 'TLS' : 'this'} on port ${port}: choose another security`;
  return sayPostFailure(failure, `${host}:${port}`, 0);
}

function readError(error: unknown): MailError & Error {
  const fields = error instanceof Error ? (error as Error & Partial<MailError>) : new Error('unknown');
  const { code = '', command = '', responseCode = 0 } = fields as Partial<MailError>;
  // The library has one code for all faults of a socket; the system's own stands in the text.
  const system = /\b(ENOTFOUND|EAI_AGAIN|E(?:CONN|TIMEDOUT|HOST|NET)[A-Z]*)\b/.exec(fields.message)?.[1] ?? code;
  return Object.assign(new Error(fields.message), { name: fields.name, code: system, command, responseCode });
}
