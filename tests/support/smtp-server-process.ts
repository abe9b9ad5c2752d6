// The mail server of the tests, in a process of its own: run by `open-smtp-server.ts`, which tells it over IPC how to behave.
import { createServer, type Server, type Socket } from 'node:net';
import { SMTPServer } from 'smtp-server';
import type { FromSmtp, ToSmtp } from './open-smtp-server.ts';

let behaviour: ToSmtp & { readonly type: 'behave' } = { type: 'behave', as: 'accept' };
const send = (message: FromSmtp) => process.send?.(message);

function failure(code: number): Error {
  return Object.assign(new Error('as the test wishes'), { responseCode: code });
}

/** The error of a step, null when it goes well. */
function answerAt(step: 'mail' | 'rcpt' | 'data'): Error | null {
  return behaviour.as === 'answer' && behaviour.at === step ? failure(behaviour.code) : null;
}

function start({ cert, key, tls }: Extract<ToSmtp, { type: 'start' }>): void {
  const server = new SMTPServer({
    secure: tls,
    cert,
    key,
    authOptional: true,
    disableReverseLookup: true,
    onAuth: ({ username, password }, _session, done) =>
      password === 'right' ? done(null, { user: username ?? '' }) : done(failure(535)),
    onMailFrom: (_address, _session, done) => done(answerAt('mail')),
    onRcptTo: (_address, _session, done) => done(answerAt('rcpt')),
    onData(stream, session, done) {
      const chunks: Buffer[] = [];
      stream.on('data', (chunk: Buffer) => chunks.push(chunk));
      stream.on('end', () => {
        const { mailFrom, rcptTo } = session.envelope;
        const from = mailFrom === false ? '' : mailFrom.address;
        const to = rcptTo.map(({ address }) => address);
        const user = typeof session.user === 'string' ? session.user : null;
        send({ type: 'mail', from, to, user, isSecure: session.secure, text: Buffer.concat(chunks).toString('utf8') });
        if (behaviour.as === 'stall-in-data') return;
        const fault = answerAt('data');
        if (fault === null) done();
        else done(fault);
      });
    },
  });
  server.on('error', () => send({ type: 'client-left' }));
  listen(gate(server));
}

/** In front of the server: a stalling one takes connections and says nothing. */
function gate(smtp: SMTPServer): Server {
  const held = new Set<Socket>();
  return createServer((socket) => {
    send({ type: 'connection' });
    if (behaviour.as !== 'stall-before-greeting') return void smtp.server.emit('connection', socket);
    held.add(socket);
    socket.on('error', () => socket.destroy()).on('close', () => held.delete(socket));
  });
}

function listen(server: Server): void {
  server.listen(0, '127.0.0.1', () => {
    const address = server.address();
    send({ type: 'listening', port: typeof address === 'object' && address !== null ? address.port : 0 });
  });
}

process.on('message', (message: ToSmtp) => {
  if (message.type === 'start') return start(message);
  behaviour = message;
  send({ type: 'behaving' });
});
process.on('disconnect', () => process.exit(0));
