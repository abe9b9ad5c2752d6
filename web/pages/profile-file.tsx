// Opens a profile that somebody wrote or saved as a file: the service checks it, then it can be looked over before it is kept.
import { useRef, useState } from 'preact/hooks';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { ApiProblem, type FieldFault } from '../api.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';

interface Refusal {
  readonly said: string;
  readonly faults: readonly FieldFault[];
}

const mostShown = 20;

async function readProfile(file: File): Promise<ProfileDocument | Refusal> {
  let content: unknown;
  try {
    content = JSON.parse(await file.text());
  } catch (problem) {
    if (!(problem instanceof SyntaxError)) throw problem;
    return { said: words.versions.notJson, faults: [] };
  }
  const { document, faults } = await calls.checkProfile(content);
  return document ?? { said: words.versions.fileFaults(file.name, faults.length), faults };
}

export function ProfileFile({ onRead }: { readonly onRead: (document: ProfileDocument) => void }) {
  const [refusal, setRefusal] = useState<Refusal>();
  const input = useRef<HTMLInputElement>(null);
  const read = async (file: File) => {
    setRefusal(undefined);
    try {
      const read = await readProfile(file);
      if ('said' in read) setRefusal(read);
      else onRead(read);
    } catch (problem) {
      if (!(problem instanceof ApiProblem)) throw problem;
      setRefusal({ said: problem.message, faults: [] });
    }
    // The same file may be chosen again after it was mended.
    if (input.current !== null) input.current.value = '';
  };
  return (
    <div class="profile-file">
      <label for="profile-file-input">{words.versions.fromFile}</label>
      <small id="profile-file-hint">{words.versions.fromFileHint}</small>
      <input
        ref={input}
        id="profile-file-input"
        type="file"
        accept="application/json,.json"
        aria-describedby="profile-file-hint"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file !== undefined) void read(file);
        }}
      />
      {refusal !== undefined && (
        <div class="problem" role="alert">
          <p>{refusal.said}</p>
          <ul>
            {refusal.faults.slice(0, mostShown).map(({ where, reason }) => (
              <li key={`${where} ${reason}`}>{words.versions.faultAt(where, reason)}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}
