// RFC 8291 appendix A, "Intermediate Values for Encryption": the push endpoint of our tests reads what the standard's own example says,
// so that a push it can read is a push a phone can read.
import { createECDH } from 'node:crypto';
import ece from 'http_ece';
import { expect, test } from 'vitest';
import { decryptPush } from '../support/push-endpoint.ts';

const plaintext = 'When I grow up, I want to be a watermelon';
const sender = {
  privateKey: 'yfWPiYE-n46HLnH0KqZOF1fJJU3MYrct3AELtAQ-oRw',
  publicKey: 'BP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A8',
};
const phone = {
  privateKey: 'q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94',
  publicKey: 'BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4',
  auth: 'BTBZMqHH6r4Tts7J_aSIgg',
};
const salt = 'DGv6ra1nlYgDCS1FRnbzlw';
const body =
  'DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A_' +
  'yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN';

function keyOf(privateKey: string) {
  const key = createECDH('prime256v1');
  key.setPrivateKey(privateKey, 'base64url');
  return key;
}

test('the example push of RFC 8291 is read as the watermelon sentence', () => {
  expect(decryptPush(Buffer.from(body, 'base64url'), keyOf(phone.privateKey), phone.auth)).toBe(plaintext);
});

test('the private keys of the example belong to its public keys', () => {
  expect(keyOf(phone.privateKey).getPublicKey('base64url')).toBe(phone.publicKey);
  expect(keyOf(sender.privateKey).getPublicKey('base64url')).toBe(sender.publicKey);
});

test('the encryption that the push library builds on gives the bytes of the example for its keys and salt', () => {
  const encrypted = ece.encrypt(Buffer.from(plaintext), {
    version: 'aes128gcm',
    privateKey: keyOf(sender.privateKey),
    dh: phone.publicKey,
    authSecret: phone.auth,
    salt,
  });
  expect(encrypted.toString('base64url')).toBe(body);
});

test('a push with one changed byte is not read', () => {
  const damaged = Buffer.from(body, 'base64url');
  damaged[100] = (damaged[100] ?? 0) ^ 1;
  expect(() => decryptPush(damaged, keyOf(phone.privateKey), phone.auth)).toThrow();
});
