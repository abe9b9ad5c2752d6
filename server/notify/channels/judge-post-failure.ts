// Why a request got no answer. Never an address beyond the host: the rest of it may be a secret.
import { type Finding, type FindingKey, finding } from '../../../shared/finding.ts';

const keys: Readonly<
  Record<string, Extract<FindingKey, 'nameNotFound' | 'nameNotNow' | 'refusesConnection' | 'brokeOff' | 'outOfReach'>>
> = {
  ENOTFOUND: 'nameNotFound',
  EAI_AGAIN: 'nameNotNow',
  ECONNREFUSED: 'refusesConnection',
  ECONNRESET: 'brokeOff',
  EPIPE: 'brokeOff',
  ETIMEDOUT: 'outOfReach',
  EHOSTUNREACH: 'outOfReach',
  ENETUNREACH: 'outOfReach',
};

/** `host` with its port where that is not the usual one. */
export function judgePostFailure(error: unknown, host: string, timeoutMs: number): Finding {
  const { name, code } = describe(error);
  if (name === 'AbortError' || name === 'TimeoutError') return finding('noAnswerWithin', host, timeoutMs / 1000);
  const key = keys[code];
  if (key !== undefined) return finding(key, host);
  if (/CERT|SIGNED|ISSUER|TLS|SSL/.test(code)) return finding('badCertificate', host, code);
  return finding('sendingFailed', host, code === '' ? name : code);
}

function describe(error: unknown): { name: string; code: string } {
  if (!(error instanceof Error)) return { name: 'unknown', code: '' };
  const code = 'code' in error && typeof error.code === 'string' ? error.code : '';
  return { name: error.name, code };
}
