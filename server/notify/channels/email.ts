// E-mail over SMTP (RFC 5321), by TLS unless the site says otherwise. One connection a message: alerts are few, and a connection that was kept
// open over night is the one that fails. Header injection is kept out by the library, which encodes every header, and by `email-message.ts`.
import { createTransport } from 'nodemailer';
import type { EmailSettings } from '../../../shared/api/channels.ts';
import { finding } from '../../../shared/finding.ts';
import { writeEmail } from '../email-message.ts';
import type { Channel } from './channel.ts';
import { judgeMailFailure } from './mail-failure.ts';

export interface EmailTarget {
  readonly server: EmailSettings;
  /** One address. */
  readonly to: string;
}

interface EmailOptions {
  /** For each wait: connection, greeting, silence. */
  readonly timeoutMs?: number;
  /** For the whole exchange: a server that answers a byte a second is as good as dead. */
  readonly allTimeoutMs?: number;
  /** Trusted besides the well-known authorities, PEM. */
  readonly trusted?: string;
}

const TIMEOUT_MS = 10_000;
const ALL_TIMEOUT_MS = 30_000;

/** The channel to people's e-mail. Accepted means that the site's mail server has taken it over, not that it was read. */
export function createEmail(options: EmailOptions = {}): Channel<EmailTarget> {
  const { allTimeoutMs = ALL_TIMEOUT_MS } = options;
  return {
    async send(message, { server, to }, signal) {
      const limit = AbortSignal.timeout(allTimeoutMs);
      try {
        await createTransport(transportOptions(server, options)).sendMail({
          ...writeEmail(message, { from: server.from, to }),
          signal: signal === undefined ? limit : AbortSignal.any([limit, signal]),
        });
        return { delivered: true, detail: finding('mailTaken', server.host, to) };
      } catch (error) {
        return judgeMailFailure(error, server, to);
      }
    },
  };
}

function transportOptions(server: EmailSettings, { timeoutMs = TIMEOUT_MS, trusted }: EmailOptions) {
  const { host, port, security, user, password } = server;
  return {
    host,
    port,
    secure: security === 'tls',
    requireTLS: security === 'starttls',
    ignoreTLS: security === 'none',
    connectionTimeout: timeoutMs,
    greetingTimeout: timeoutMs,
    socketTimeout: timeoutMs,
    dnsTimeout: timeoutMs,
    // A message is words: it must never be able to name a file or an address to attach.
    disableFileAccess: true,
    disableUrlAccess: true,
    ...(trusted !== undefined && { tls: { ca: [trusted] } }),
    ...(user !== undefined && { auth: { user, pass: password ?? '' }, forceAuth: true }),
  };
}
