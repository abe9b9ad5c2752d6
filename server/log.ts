// The log of the service: pino JSON on stderr, secrets left out.
import pino, { type Logger } from 'pino';

const secrets = [
  'password',
  '*.password',
  'secret',
  '*.secret',
  'token',
  '*.token',
  'req.headers.authorization',
  'req.headers.cookie',
];

export function openLog(level: string): Logger {
  return pino({ level, redact: secrets }, pino.destination(2));
}
