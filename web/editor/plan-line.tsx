// One line of the plan as it is spoken: its name, its sentence, where it comes from in small, and the rest of it folded away.
import type { ComponentChildren } from 'preact';
import { FaultAt, useFaultBelow } from './draft-field.tsx';
import { inRow } from './stage-rows.ts';
import { useFold } from './use-fold.ts';

interface Props {
  readonly where: string;
  readonly name: string;
  /** What the name means, where there is room to say it. */
  readonly gloss?: string;
  /** The row that it shares with the same line of the other stages. */
  readonly row?: number;
  /** What is said of it, with the fields that stand in the sentence. */
  readonly said: ComponentChildren;
  /** Places whose fault is shown and mended in the sentence itself. */
  readonly inSentence: readonly string[];
  readonly source: string | undefined;
  /** What the mark that unfolds the rest says to those who hear it or rest on it. */
  readonly more: string;
  /** Undefined where there is nothing to fold away. */
  readonly children?: ComponentChildren;
}

export function PlanLine({ where, name, gloss, row, said, inSentence, source, more, children }: Props) {
  const fold = useFold(useFaultBelow(where, inSentence));
  return (
    <fieldset class={fold.open ? 'line is-open' : 'line'} style={inRow(row)}>
      <legend>{name}</legend>
      {gloss !== undefined && <small class="gloss">{gloss}</small>}
      <div class="said">
        {said}
        {source !== undefined && <small class="source">{source}</small>}
        <FaultAt where={where} />
      </div>
      {children !== undefined && (
        <details {...fold}>
          <summary title={more}>
            <span class="unseen">{more}</span>
          </summary>
          <div class="limit-fields">{children}</div>
        </details>
      )}
    </fieldset>
  );
}
