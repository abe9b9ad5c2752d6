// The state of a chamber: its shape and its sentence. What nobody has acknowledged is printed like a stamp.
import type { ChamberState } from '../chamber-state.ts';
import { ShapeMark } from './shape-mark.tsx';

export function StateSentence({ state }: { readonly state: ChamberState }) {
  return (
    <p class="sentence" data-urgency={state.urgency}>
      <ShapeMark shape={state.shape} />
      <span>{state.sentence}</span>
    </p>
  );
}
