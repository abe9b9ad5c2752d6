// What a failed try of sending an e-mail means, from the error of the library: which step failed (`command`) and what the server said
// (RFC 5321 §4.2: 4xx may pass, 5xx will not). Pure.
import type { EmailSettings } from '../../../shared/api/channels.ts';
import { type Finding, finding } from '../../../shared/finding.ts';
import type { NotDelivered } from './channel.ts';
import { judgePostFailure } from './judge-post-failure.ts';

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
    reason: isAnswer ? judgeAnswer(failure, server, to) : judgeSilence(failure, server),
    serviceDown: !isOfThisMail,
  };
}

function judgeAnswer({ responseCode, command }: MailError, { host }: EmailSettings, to: string): Finding {
  if (command.startsWith('AUTH') || responseCode === 535 || responseCode === 530)
    return finding('mailSignIn', host, responseCode);
  if (command === 'RCPT TO')
    return finding(responseCode >= 500 ? 'mailAddressRefused' : 'mailAddressDeferred', host, to, responseCode);
  if (command === 'MAIL FROM') return finding('mailSenderRefused', host, responseCode);
  return finding(command === 'DATA' && responseCode >= 500 ? 'mailRefused' : 'mailLater', host, responseCode);
}

function judgeSilence(failure: MailError, { host, port, security }: EmailSettings): Finding {
  const { code, message, command, name } = failure;
  if (code === 'ETLS' && /upgrade|STARTTLS/i.test(message) && !/cert|sign|issuer/i.test(message))
    return finding('mailNoStartTls', host, port);
  if (/cert|self.signed|issuer|altname/i.test(message)) return finding('mailCertificate', host);
  if (name === 'AbortError' || code === 'ETIMEDOUT' || /timeout/i.test(message))
    return command === 'CONN' ? finding('mailNoAnswerOn', host, port) : finding('mailNoAnswer', host);
  if (code === 'ENOAUTH' || code === 'EAUTH') return finding('mailNoSignIn', host);
  if (code === 'ESOCKET' && /wrong version|packet length/i.test(message))
    return finding(security === 'tls' ? 'mailNoTls' : 'mailOtherSpeech', host, port);
  return judgePostFailure(failure, `${host}:${port}`, 0);
}

function readError(error: unknown): MailError & Error {
  const fields = error instanceof Error ? (error as Error & Partial<MailError>) : new Error('unknown');
  const { code = '', command = '', responseCode = 0 } = fields as Partial<MailError>;
  // The library has one code for all faults of a socket; the system's own stands in the text.
  const system = /\b(ENOTFOUND|EAI_AGAIN|E(?:CONN|TIMEDOUT|HOST|NET)[A-Z]*)\b/.exec(fields.message)?.[1] ?? code;
  return Object.assign(new Error(fields.message), { name: fields.name, code: system, command, responseCode });
}
