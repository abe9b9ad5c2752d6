// A real mail server in a process of its own, with STARTTLS or TLS, that accepts, defers, rejects or hangs as the test wishes.
import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { EmailSettings } from '../../shared/api/channels.ts';
import { makeCertificate } from './make-certificate.ts';

/** `answer`: with this code, at this step. */
export type SmtpBehaviour =
  | { readonly as: 'accept' | 'stall-before-greeting' | 'stall-in-data' }
  | { readonly as: 'answer'; readonly at: 'mail' | 'rcpt' | 'data'; readonly code: number };

export type ToSmtp =
  | { readonly type: 'start'; readonly cert: string; readonly key: string; readonly tls: boolean }
  | ({ readonly type: 'behave' } & SmtpBehaviour);

export interface ReceivedMail {
  readonly from: string;
  readonly to: readonly string[];
  /** Who signed in; null = nobody. */
  readonly user: string | null;
  readonly isSecure: boolean;
  /** Headers and body as they came. */
  readonly text: string;
}

export type FromSmtp =
  | { readonly type: 'listening'; readonly port: number }
  | { readonly type: 'behaving' | 'connection' | 'client-left' }
  | ({ readonly type: 'mail' } & ReceivedMail);

export interface SmtpServer {
  readonly port: number;
  /** Its certificate, PEM: for those who are to trust it. */
  readonly certificate: string;
  /** Every mail whose data came, also those that were refused then. */
  readonly mails: readonly ReceivedMail[];
  connections(): number;
  settings(change?: Partial<EmailSettings>): EmailSettings;
  behave(behaviour: SmtpBehaviour): Promise<void>;
  whenMailed(count: number): Promise<void>;
  close(): Promise<void>;
}

/** Starts it; `tls`: from the first byte. */
export async function openSmtpServer({ tls = false } = {}): Promise<SmtpServer> {
  const { cert, key } = makeCertificate();
  const child = fork(fileURLToPath(new URL('./smtp-server-process.ts', import.meta.url)), { execArgv: [] });
  const mails: ReceivedMail[] = [];
  let connections = 0;
  child.on('message', (message: FromSmtp) => {
    if (message.type === 'connection') connections += 1;
    if (message.type === 'mail') mails.push(message);
  });
  const told = ask(child, 'listening');
  child.send({ type: 'start', cert, key, tls } satisfies ToSmtp);
  const { port } = await told;
  const security = tls ? 'tls' : 'starttls';
  return {
    port,
    certificate: cert,
    mails,
    connections: () => connections,
    settings: (change) => ({ host: 'localhost', port, security, from: 'alerts@nursery.example', ...change }),
    async behave(behaviour) {
      const done = ask(child, 'behaving');
      child.send({ type: 'behave', ...behaviour } satisfies ToSmtp);
      await done;
    },
    async whenMailed(count) {
      while (mails.length < count) await ask(child, 'mail');
    },
    close: () =>
      new Promise((resolve) => {
        child.once('exit', () => resolve());
        child.disconnect();
      }),
  };
}

function ask<Type extends FromSmtp['type']>(child: ChildProcess, type: Type) {
  return new Promise<Extract<FromSmtp, { type: Type }>>((resolve) => {
    const hear = (message: FromSmtp) => {
      if (message.type !== type) return;
      child.off('message', hear);
      resolve(message as Extract<FromSmtp, { type: Type }>);
    };
    child.on('message', hear);
  });
}
