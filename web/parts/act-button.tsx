// A button that does one thing at the service; while it is at it, it cannot be pressed twice.
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { doAct } from './act.ts';

interface Props {
  readonly work: () => Promise<unknown>;
  readonly done?: string;
  readonly onDone?: () => void;
  readonly kind?: 'main' | 'plain' | 'quiet';
  /** What a screen reader says where the visible word alone would be ambiguous; it begins with the visible word. */
  readonly label?: string;
  readonly children: ComponentChildren;
}

export function ActButton({ work, done, onDone, kind = 'plain', label, children }: Props) {
  const [isBusy, setBusy] = useState(false);
  const press = async () => {
    if (isBusy) return;
    setBusy(true);
    const worked = await doAct(work, done);
    setBusy(false);
    if (worked) onDone?.();
  };
  return (
    <button type="button" class={kind} aria-busy={isBusy} aria-label={label} onClick={() => void press()}>
      {children}
    </button>
  );
}
