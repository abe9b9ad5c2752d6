// A button that opens a small form or question under it; opening puts the focus inside, closing gives it back.
import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';

interface Props {
  readonly title: string;
  readonly kind?: 'main' | 'plain' | 'quiet';
  readonly label?: string;
  /** Gets the function that closes it again. */
  readonly children: (close: () => void) => ComponentChildren;
}

export function Disclosure({ title, kind = 'plain', label, children }: Props) {
  const [isOpen, setOpen] = useState(false);
  const panel = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const id = useId();
  const close = () => {
    setOpen(false);
    button.current?.focus();
  };
  useEffect(() => {
    if (isOpen) panel.current?.querySelector<HTMLElement>('input, select, textarea, button')?.focus();
  }, [isOpen]);
  return (
    <div class={isOpen ? 'disclosure is-open' : 'disclosure'}>
      <button
        ref={button}
        type="button"
        class={kind}
        aria-label={label}
        aria-expanded={isOpen}
        aria-controls={isOpen ? id : undefined}
        onClick={() => setOpen(!isOpen)}
      >
        {title}
      </button>
      {isOpen && (
        // biome-ignore lint/a11y/noStaticElementInteractions: Escape closes from wherever the focus is inside
        <div
          class="disclosed"
          id={id}
          ref={panel}
          onKeyDown={(event) => {
            if (event.key === 'Escape') close();
          }}
        >
          {children(close)}
        </div>
      )}
    </div>
  );
}

interface SureProps {
  readonly question: string;
  readonly yes: ComponentChildren;
}

/** A question before an act that cannot be taken back. */
export function Sure({ question, yes }: SureProps) {
  return (
    <>
      <p>{question}</p>
      <div class="form-acts">{yes}</div>
    </>
  );
}
