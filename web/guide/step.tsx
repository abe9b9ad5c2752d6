// One step of the way to the first batch. It says by itself where it stands: waiting, heard, wrong, or done.
import type { ComponentChildren } from 'preact';
import { words } from '../late-strings.ts';
import { ShapeMark } from '../parts/shape-mark.tsx';

export type StepState = 'later' | 'now' | 'done' | 'wrong';

interface Props {
  readonly title: string;
  readonly why: string;
  readonly state: StepState;
  readonly children?: ComponentChildren;
}

const shapes = { done: 'order', wrong: 'overdue', now: 'due', later: 'empty' } as const;

export function Step({ title, why, state, children }: Props) {
  return (
    <li class={`step is-${state}`} aria-current={state === 'now' || state === 'wrong' ? 'step' : undefined}>
      <h2>
        {title}{' '}
        <span class="step-done">
          <ShapeMark shape={shapes[state]} /> {words.guide.states[state]}
        </span>
      </h2>
      <p>{why}</p>
      {children}
    </li>
  );
}
