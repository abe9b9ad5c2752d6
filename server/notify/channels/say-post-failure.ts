// Why a request got no answer, in plain words. Never an address beyond the host: the rest of it may be a secret.

const sayings: Readonly<Record<string, (host: string) => string>> = {
  ENOTFOUND: (host) => `the name of ${host} is not found: check the address and the way to the internet`,
  EAI_AGAIN: (host) => `the name of ${host} cannot be looked up now: check the way to the internet`,
  ECONNREFUSED: (host) => `${host} refuses the connection: is it running?`,
  ECONNRESET: (host) => `${host} broke the connection off`,
  EPIPE: (host) => `${host} broke the connection off`,
  ETIMEDOUT: (host) => `${host} cannot be reached: check the network`,
  EHOSTUNREACH: (host) => `${host} cannot be reached: check the network`,
  ENETUNREACH: (host) => `${host} cannot be reached: check the network`,
};

/** A clause such as "push.example refuses the connection: is it running?". */
export function sayPostFailure(error: unknown, host: string, timeoutMs: number): string {
  const { name, code } = describe(error);
  if (name === 'AbortError' || name === 'TimeoutError') return `${host} did not answer within ${timeoutMs / 1000} s`;
  const say = sayings[code];
  if (say !== undefined) return say(host);
  if (/CERT|SIGNED|ISSUER|TLS|SSL/.test(code)) return `the certificate of ${host} cannot be trusted (${code})`;
  return `sending to ${host} failed (${code === '' ? name : code})`;
}

function describe(error: unknown): { name: string; code: string } {
  if (!(error instanceof Error)) return { name: 'unknown', code: '' };
  const code = 'code' in error && typeof error.code === 'string' ? error.code : '';
  return { name: error.name, code };
}
