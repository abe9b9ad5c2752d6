// A part of a page under its heading, to which an address can lead: `#id` brings it into view and the focus to its heading, also when it comes late.
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

interface Props {
  /** Stands in addresses: a notice or a bookmark may point at it. */
  readonly id: string;
  readonly title: string;
  readonly class?: string;
  readonly children: ComponentChildren;
}

export function Section({ id, title, class: name, children }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (location.hash !== `#${id}`) return;
    heading.current?.scrollIntoView();
    heading.current?.focus({ preventScroll: true });
  }, [id]);
  return (
    <section class={name} aria-labelledby={id}>
      <h2 id={id} ref={heading} tabIndex={-1}>
        {title}
      </h2>
      {children}
    </section>
  );
}
