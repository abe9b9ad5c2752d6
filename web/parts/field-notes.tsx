// What stands under a field: its hint, and the fault the service found in it.
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { FieldFault } from '../api.ts';

/** The faults of the form that the fields stand in. */
export const Faults = createContext<readonly FieldFault[]>([]);

/** The name of the field that a fault's place means: the last part of a JSON Pointer or a dotted name. */
export function fieldName(where: string): string {
  return where.split(/[/.]/).at(-1) ?? '';
}

/** The fault of the field of this name in the form it stands in. */
export function useFault(name: string): string | undefined {
  return useContext(Faults).find(({ where }) => fieldName(where) === name)?.reason;
}

interface NotesProps {
  readonly id: string;
  readonly hint: string | undefined;
  readonly fault: string | undefined;
}

export function FieldNotes({ id, hint, fault }: NotesProps) {
  return (
    <>
      {hint !== undefined && <small id={`${id}-hint`}>{hint}</small>}
      {fault !== undefined && (
        <small class="fault" id={`${id}-fault`}>
          {fault}
        </small>
      )}
    </>
  );
}

/** What `aria-describedby` of the field must be. */
export function describedBy(id: string, hint: string | undefined, fault: string | undefined): string | undefined {
  const ids = [...(hint === undefined ? [] : [`${id}-hint`]), ...(fault === undefined ? [] : [`${id}-fault`])];
  return ids.length === 0 ? undefined : ids.join(' ');
}
