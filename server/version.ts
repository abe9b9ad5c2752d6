// The version of the program, from package.json.
import { readFileSync } from 'node:fs';
import { z } from 'zod';

const text = readFileSync(new URL('../package.json', import.meta.url), 'utf8');

export const version: string = z.object({ version: z.string() }).parse(JSON.parse(text)).version;
