// The part of http_ece (untyped) that the push endpoint of the tests uses. Keys and salts are base64url text or bytes.
declare module 'http_ece' {
  import type { ECDH } from 'node:crypto';

  interface Parameters {
    readonly version: 'aes128gcm';
    readonly privateKey: ECDH;
    readonly authSecret: string;
    /** The other side's public key; to encrypt only. */
    readonly dh?: string;
    /** To encrypt only. */
    readonly salt?: string;
  }
  interface EncryptedContent {
    decrypt(body: Buffer, parameters: Parameters): Buffer;
    encrypt(text: Buffer, parameters: Parameters): Buffer;
  }
  const encryptedContent: EncryptedContent;
  export = encryptedContent;
}
