// A line from standard input, shown or hidden. A hidden one is never written anywhere.
import { createInterface } from 'node:readline';
import type { Terminal } from './command.ts';
import { misuse } from './parse-options.ts';

/** The first line; '' when there is none. */
export async function readLine(stdin: Terminal['stdin']): Promise<string> {
  const lines = createInterface({ input: stdin, crlfDelay: Infinity });
  for await (const line of lines) return line;
  return '';
}

const CTRL_C = '\u0003';
const CTRL_D = '\u0004';
const isEnter = (key: string) => key === '\r' || key === '\n' || key === CTRL_D;
const isErase = (key: string) => key === '\u007F' || key === '\b';

/** Asks on the terminal and takes keys until Enter without showing them. Ctrl-C is a Problem: nothing was changed. */
export async function readHiddenLine(
  { stdin, ask }: Pick<Terminal, 'stdin' | 'ask'>,
  question: string,
): Promise<string> {
  ask(question);
  stdin.setRawMode?.(true);
  stdin.setEncoding('utf8');
  try {
    return await takeKeys(stdin);
  } finally {
    stdin.setRawMode?.(false);
    stdin.pause();
    ask('\n');
  }
}

function takeKeys(stdin: Terminal['stdin']): Promise<string> {
  return new Promise((resolve, reject) => {
    const typed: string[] = [];
    const take = (keys: string) => {
      for (const key of keys) {
        if (key === CTRL_C) return stop(() => reject(misuse('Stopped; nothing was changed.')));
        if (isEnter(key)) return stop(() => resolve(typed.join('')));
        if (isErase(key)) typed.pop();
        else typed.push(key);
      }
    };
    const stop = (settle: () => void) => {
      stdin.off('data', take);
      settle();
    };
    stdin.on('data', take);
    stdin.resume();
  });
}
