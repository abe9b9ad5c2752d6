// An address to hand to somebody, shown once: as text to copy and as a code to photograph.
import type { ComponentType } from 'preact';
import { useEffect, useId, useState } from 'preact/hooks';
import { showNote } from '../announce.ts';
import { words } from '../late-strings.ts';

interface Props {
  /** What the address is, for its label. */
  readonly what: string;
  readonly address: string;
  readonly hint: string;
}

type Code = ComponentType<{ readonly text: string; readonly label: string }>;

function useQrCode(): Code | undefined {
  const [made, setMade] = useState<{ readonly Code: Code }>();
  useEffect(() => {
    import('./qr-code.tsx').then(
      ({ QrCode }) => setMade({ Code: QrCode }),
      () => {
        // Without the code the address is still there to copy.
      },
    );
  }, []);
  return made?.Code;
}

/** True for addresses that lead another device to itself. */
export function isThisMachine(hostname: string): boolean {
  return hostname === 'localhost' || hostname === '[::1]' || hostname.startsWith('127.');
}

async function copy(address: string): Promise<void> {
  try {
    await navigator.clipboard.writeText(address);
    showNote(words.share.copied);
  } catch (problem) {
    // Without https there is no clipboard at all, and a browser may refuse it.
    if (!(problem instanceof DOMException || problem instanceof TypeError)) throw problem;
    showNote(words.share.notCopied, true);
  }
}

export function ShareLink({ what, address, hint }: Props) {
  const id = useId();
  const Code = useQrCode();
  return (
    <div class="share-link" role="status">
      {Code !== undefined && <Code text={address} label={words.share.code(what)} />}
      <div class="share-address">
        <p>{hint}</p>
        {isThisMachine(location.hostname) && <p class="fault">{words.share.thisMachine}</p>}
        <label for={id}>{what}</label>
        <input id={id} type="text" readOnly value={address} onFocus={(event) => event.currentTarget.select()} />
        <button type="button" onClick={() => void copy(address)}>
          {words.share.copy}
        </button>
      </div>
    </div>
  );
}
