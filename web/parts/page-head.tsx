// The heading of a page. It names the window and takes the focus after a change of page, so that a screen reader starts there.
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { words } from '../strings.ts';

let isFirstPage = true;

interface Props {
  readonly title: string;
  /** Only for screen readers, where the page shows what it is without a heading. */
  readonly isHidden?: boolean;
  readonly children?: ComponentChildren;
}

export function PageHead({ title, isHidden = false, children }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = words.pageTitle(title);
  }, [title]);
  useEffect(() => {
    // The first page is announced by the browser itself.
    if (!isFirstPage) heading.current?.focus({ preventScroll: true });
    isFirstPage = false;
  }, []);
  return (
    <div class={isHidden ? 'page-head unseen' : 'page-head'}>
      <h1 ref={heading} tabIndex={-1}>
        {title}
      </h1>
      {children}
    </div>
  );
}
