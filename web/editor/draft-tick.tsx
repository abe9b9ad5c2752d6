// A yes-or-no of a draft: nothing can be wrong with it, so it has no place in the document.
import { useId } from 'preact/hooks';

interface Props {
  readonly label: string;
  readonly hint: string | undefined;
  readonly isOn: boolean;
  readonly onTick: (isOn: boolean) => void;
}

export function DraftTick({ label, hint, isOn, onTick }: Props) {
  const id = useId();
  return (
    <div class="tick">
      <input type="checkbox" id={id} checked={isOn} onChange={(event) => onTick(event.currentTarget.checked)} />
      <label for={id}>{label}</label>
      {hint !== undefined && <small>{hint}</small>}
    </div>
  );
}
