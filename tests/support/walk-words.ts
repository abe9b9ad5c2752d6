// Every text of a catalogue with its path, functions called with values that can be found again in what they say.

export interface Text {
  readonly path: string;
  readonly text: string;
  /** What a function was given, each to be found in its text. */
  readonly given: readonly string[];
}

/** All texts of `catalogue`. `special` gives the arguments of functions that take more than numbers and text, by path. */
export function walkWords(
  catalogue: unknown,
  special: Readonly<Record<string, readonly unknown[]>> = {},
  path = '',
): Text[] {
  if (typeof catalogue === 'string') return [{ path, text: catalogue, given: [] }];
  if (typeof catalogue === 'function') return [callText(catalogue as (...given: unknown[]) => string, path, special)];
  if (typeof catalogue !== 'object' || catalogue === null) throw new Error(`${path} is neither text nor function`);
  return Object.entries(catalogue).flatMap(([name, one]) =>
    walkWords(one, special, path === '' ? name : `${path}.${name}`),
  );
}

function callText(
  say: (...given: unknown[]) => string,
  path: string,
  special: Readonly<Record<string, readonly unknown[]>>,
): Text {
  const own = special[path];
  if (own !== undefined) return { path, text: say(...own), given: [] };
  const numbers = Array.from({ length: say.length }, (_, index) => 7041 + index);
  const given = numbers.map(String);
  try {
    return { path, text: say(...given), given };
  } catch (problem) {
    if (!(problem instanceof TypeError)) throw problem;
    return { path, text: say(...numbers), given };
  }
}
