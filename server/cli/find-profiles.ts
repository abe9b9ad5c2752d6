// The profiles a command can name: those in the store when the data folder has one, and the shipped ones.
import type { Profile } from '../../shared/healing/profile.ts';
import { standardProfiles } from '../../shared/healing/standard-profiles.ts';
import type { Terminal } from './command.ts';
import { readStored } from './open-stored.ts';
import { misuse } from './parse-options.ts';

/** The newest version of each; a stored one stands before a shipped one of the same id. */
export async function listProfiles(terminal: Terminal): Promise<Profile[]> {
  const stored = (await readStored(terminal, (store) => store.profiles.list())) ?? [];
  const shipped = standardProfiles.filter(({ id }) => !stored.some((one) => one.id === id));
  return [...stored, ...shipped].map(({ id, version, document }) => ({ id, version, document }));
}

/** The profile of an id. Problem `bad-input` that names those there are. */
export async function findProfile(id: string, terminal: Terminal): Promise<Profile> {
  const profiles = await listProfiles(terminal);
  const found = profiles.find((one) => one.id === id);
  if (found === undefined)
    throw misuse(`There is no profile "${id}"; there are ${profiles.map((one) => one.id).join(', ')}.`);
  return found;
}
