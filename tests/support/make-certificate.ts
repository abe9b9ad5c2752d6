// A self-signed certificate for tests, written as X.509 demands (RFC 5280 §4.1): no tool outside Node, no key kept in the repository.
import { generateKeyPairSync, sign } from 'node:crypto';

export interface TestCertificate {
  /** Both as PEM text. */
  readonly cert: string;
  readonly key: string;
}

/** Valid for 2000–2049 for the common name `localhost`, with a new P-256 key. */
export function makeCertificate(): TestCertificate {
  const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const signatureAlgorithm = sequence(ecdsaWithSha256);
  const name = sequence(der(0x31, sequence(commonName, der(0x0c, Buffer.from('localhost')))));
  const validity = sequence(der(0x17, Buffer.from('000101000000Z')), der(0x17, Buffer.from('491231235959Z')));
  const version3 = der(0xa0, der(0x02, Buffer.of(2)));
  const serial = der(0x02, Buffer.of(1));
  const subjectKey = publicKey.export({ type: 'spki', format: 'der' });
  const body = sequence(version3, serial, signatureAlgorithm, name, validity, name, subjectKey);
  // A bit string begins with the number of unused bits.
  const signature = der(0x03, Buffer.concat([Buffer.of(0), sign('sha256', body, privateKey)]));
  const key = privateKey.export({ type: 'pkcs8', format: 'pem' });
  return { cert: pem(sequence(body, signatureAlgorithm, signature)), key: String(key) };
}

const ecdsaWithSha256 = der(0x06, Buffer.from('2a8648ce3d040302', 'hex'));
const commonName = der(0x06, Buffer.from('550403', 'hex'));

function sequence(...parts: readonly Buffer[]): Buffer {
  return der(0x30, Buffer.concat(parts));
}

function der(tag: number, content: Buffer): Buffer {
  return Buffer.concat([Buffer.of(tag), lengthOf(content.length), content]);
}

function lengthOf(length: number): Buffer {
  if (length < 128) return Buffer.of(length);
  return length < 256 ? Buffer.of(0x81, length) : Buffer.of(0x82, length >> 8, length & 255);
}

function pem(bytes: Buffer): string {
  const lines = bytes.toString('base64').match(/.{1,64}/g) ?? [];
  return `-----BEGIN CERTIFICATE-----\n${lines.join('\n')}\n-----END CERTIFICATE-----\n`;
}
