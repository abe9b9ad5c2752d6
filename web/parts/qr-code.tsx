// An address as a code that the camera of a phone reads (ISO/IEC 18004). Fetched only where one is shown.
import { generate } from 'lean-qr';
import { toSvgPath } from 'lean-qr/extras/svg';

/** The standard asks for four light modules around it. */
const quietZone = 4;

export function QrCode({ text, label }: { readonly text: string; readonly label: string }) {
  const code = generate(text);
  const side = code.size + 2 * quietZone;
  return (
    <svg class="qr" viewBox={`${-quietZone} ${-quietZone} ${side} ${side}`} role="img" aria-label={label}>
      <path d={toSvgPath(code)} />
    </svg>
  );
}
