// Typing a password at a terminal: nothing is shown, keys do what they say.
import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { readHiddenLine } from '../../../server/cli/read-line.ts';

function fakeTerminal() {
  const modes: boolean[] = [];
  const stdin = Object.assign(new PassThrough(), { isTTY: true, setRawMode: (on: boolean) => modes.push(on) });
  const shown: string[] = [];
  return { terminal: { stdin, ask: (text: string) => shown.push(text) }, modes, shown };
}

const keys: [string, string[], string][] = [
  ['Enter ends it', ['secret', '\r'], 'secret'],
  ['a line feed ends it', ['secret\n'], 'secret'],
  ['Ctrl-D ends it', ['secret\u0004'], 'secret'],
  ['Backspace takes the last character back', ['secre', 'x', '\u007F', 't\r'], 'secret'],
  ['Backspace takes back a whole character', ['secr\u{1F345}\u007Fet\r'], 'secret'],
  ['Backspace on nothing does nothing', ['\b\bsecret\r'], 'secret'],
  ['pasted text is taken whole', ['a long secret, pasted\r'], 'a long secret, pasted'],
];

describe('readHiddenLine', () => {
  it.each(keys)('%s', async (_, pressed, expected) => {
    const { terminal, modes, shown } = fakeTerminal();
    const line = readHiddenLine(terminal, 'Password: ');
    for (const one of pressed) terminal.stdin.write(one);
    expect(await line).toBe(expected);
    expect(shown).toEqual(['Password: ', '\n']);
    expect(modes).toEqual([true, false]);
  });

  it('is stopped by Ctrl-C, and gives the terminal back', async () => {
    const { terminal, modes } = fakeTerminal();
    const line = readHiddenLine(terminal, 'Password: ');
    terminal.stdin.write('secr\u0003');
    await expect(line).rejects.toMatchObject({ code: 'bad-input' });
    expect(modes).toEqual([true, false]);
  });

  it('asks twice on the same terminal', async () => {
    const { terminal } = fakeTerminal();
    for (const typed of ['first', 'second']) {
      const line = readHiddenLine(terminal, 'Password: ');
      terminal.stdin.write(`${typed}\r`);
      expect(await line).toBe(typed);
    }
  });
});
