// `set-password`: gives a person a new password and signs them out everywhere. For whoever has the machine and nobody who can sign in.
import { passwordSchema } from '../../shared/api/session.ts';
import { hashPassword } from '../people/passwords.ts';
import { type Command, print, type Terminal } from './command.ts';
import { changeStored } from './open-stored.ts';
import { misuse, parseOptions } from './parse-options.ts';
import { readHiddenLine, readLine } from './read-line.ts';

const usage = `Usage: npm run takewell -- set-password NAME [--json]

Gives a person a new password and ends their sessions. Asks for it on the terminal without showing it;
when standard input is not a terminal, its first line is the password.
`;

export const setPassword: Command = {
  usage,
  async run(args, terminal) {
    const { options, words } = parseOptions(args, { json: 'flag' }, ['NAME']);
    const wanted = words[0] ?? '';
    const name = await changeStored(terminal, async (store) => {
      const person = await store.people.byName(wanted);
      if (person === null) throw misuse(`There is nobody called "${wanted}".`);
      const passwordHash = await hashPassword(await askPassword(person.name, terminal));
      await store.people.update(person.id, { passwordHash });
      await store.people.endSessionsOf(person.id);
      return person.name;
    });
    await print(terminal, options.json === true, { name, changed: true }, [`${name} has a new password.`]);
    return 0;
  },
};

async function askPassword(name: string, terminal: Terminal): Promise<string> {
  const typed = terminal.stdin.isTTY === true ? await askTwice(name, terminal) : await readLine(terminal.stdin);
  const parsed = passwordSchema.safeParse(typed);
  if (!parsed.success)
    throw misuse(`This password will not do: ${parsed.error.issues[0]?.message ?? 'choose another'}.`);
  return parsed.data;
}

async function askTwice(name: string, terminal: Terminal): Promise<string> {
  const first = await readHiddenLine(terminal, `New password for ${name}: `);
  const second = await readHiddenLine(terminal, 'The same again: ');
  if (first !== second) throw misuse('The two passwords differ; nothing was changed.');
  return first;
}
