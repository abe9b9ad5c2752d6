// A received mail taken apart: headers unfolded and decoded (RFC 5322 §2.2.3, RFC 2047), parts by their type. Enough for what we write.

export interface ReadMail {
  /** By lower-case name; of a header that is there twice, both. */
  readonly headers: Readonly<Record<string, readonly string[]>>;
  readonly text: string;
  readonly html: string;
}

export function readMail(source: string): ReadMail {
  const { headers, body } = splitMail(source);
  const boundary = /boundary="?([^";]+)"?/.exec(headers['content-type']?.[0] ?? '')?.[1];
  const parts = body.split(`--${boundary}`).map((part) => splitMail(part.replace(/^\r?\n/, '')));
  const partOf = (type: string) => parts.find((part) => part.headers['content-type']?.[0]?.startsWith(type));
  return { headers, text: decodePart(partOf('text/plain')), html: decodePart(partOf('text/html')) };
}

function splitMail(source: string): { headers: Record<string, string[]>; body: string } {
  const [head = '', ...rest] = source.split(/\r?\n\r?\n/);
  const headers: Record<string, string[]> = {};
  for (const line of head.replace(/\r?\n[ \t]+/g, ' ').split(/\r?\n/)) {
    const [name = '', ...value] = line.split(':');
    const key = name.toLowerCase();
    headers[key] = [...(headers[key] ?? []), decodeWords(value.join(':').trim())];
  }
  return { headers, body: rest.join('\r\n\r\n') };
}

function decodePart(part: { headers: Record<string, string[]>; body: string } | undefined): string {
  if (part === undefined) return '';
  const encoding = part.headers['content-transfer-encoding']?.[0] ?? '7bit';
  if (encoding === 'base64') return Buffer.from(part.body, 'base64').toString('utf8');
  if (encoding === 'quoted-printable') return decodeQuoted(part.body.replace(/=\r?\n/g, ''));
  return part.body;
}

function decodeWords(text: string): string {
  return text
    .replace(/\?=\s+=\?/g, '?==?')
    .replace(/=\?utf-8\?([bq])\?([^?]*)\?=/gi, (_, kind: string, word: string) =>
      kind.toLowerCase() === 'b'
        ? Buffer.from(word, 'base64').toString('utf8')
        : decodeQuoted(word.replaceAll('_', ' ')),
    );
}

function decodeQuoted(text: string): string {
  const bytes = text.replace(/=([0-9A-F]{2})/gi, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
  return Buffer.from(bytes, 'latin1').toString('utf8');
}
