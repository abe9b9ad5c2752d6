// What is folded away under a line of the plan: it opens by itself when something in it is at fault.
import { useEffect, useState } from 'preact/hooks';

interface Fold {
  readonly open: boolean;
  readonly onToggle: (event: { readonly currentTarget: HTMLDetailsElement }) => void;
}

/** For a `details`. A fault opens it; what is open stays open when the fault is gone. */
export function useFold(isFaulty: boolean, isOpenAtFirst = false): Fold {
  const [isOpen, setOpen] = useState(isOpenAtFirst);
  useEffect(() => {
    if (isFaulty) setOpen(true);
  }, [isFaulty]);
  return { open: isOpen, onToggle: (event) => setOpen(event.currentTarget.open) };
}
