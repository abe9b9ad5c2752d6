// Whether an element is on the screen or close to it.
import type { RefObject } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** True while `target` is within about a screen of being seen. */
export function useSeen(target: RefObject<Element | null>): boolean {
  const [isSeen, setSeen] = useState(false);
  useEffect(() => {
    const element = target.current;
    if (element === null) return;
    const observer = new IntersectionObserver((entries) => setSeen(entries.at(-1)?.isIntersecting ?? false), {
      rootMargin: '400px 0px',
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return isSeen;
}
