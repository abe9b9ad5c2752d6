// A line to be typed or pasted elsewhere, with a button that copies it where the browser allows that.
import { showNote } from '../announce.ts';
import { words } from '../late-strings.ts';

interface Props {
  readonly name: string;
  readonly text: string;
}

/** Browsers give the clipboard to secure pages only; elsewhere the line is there to be selected. */
const mayCopy = () => isSecureContext && 'clipboard' in navigator;

export function CopyLine({ name, text }: Props) {
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      showNote(words.guide.copied(name));
    } catch (problem) {
      if (!(problem instanceof DOMException)) throw problem;
      showNote(words.guide.notCopied, true);
    }
  };
  return (
    <div class="copy-line">
      <span>{name}</span>
      <code>{text}</code>
      {mayCopy() && (
        <button type="button" aria-label={words.guide.copyOf(name)} onClick={() => void copy()}>
          {words.guide.copy}
        </button>
      )}
    </div>
  );
}
