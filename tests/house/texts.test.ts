// No page, decoder or schema holds a text meant for people: it would stay English for whoever reads another language. Texts stand in the
// catalogues only.
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseSync } from 'vite';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
/** The last is what a push says that could not be read: the service worker has no other words. */
const catalogues = ['web/words/', 'web/alert-words.ts'];
/** Run by Node when building: whoever reads them is a developer. */
const tools = ['web/vite.config.ts', 'web/build-if-stale.ts', 'web/pack-files.ts'];
const pages = readdirSync(join(root, 'web'), { recursive: true, encoding: 'utf8' })
  .map((name) => `web/${name}`)
  .filter((name) => /\.tsx?$/.test(name) && !name.startsWith('web/dist'))
  .filter((name) => ![...catalogues, ...tools].some((one) => name.startsWith(one)));

/** What decides on messages and requests: a refusal of theirs is data, or words of the catalogue. */
const deciders = ['shared/readings/', 'shared/api/'].flatMap((folder) =>
  readdirSync(join(root, folder), { encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => folder + name),
);
/** Names of several words that programs exchange, and the name of a phone that nobody gave one. */
const names = [
  ...['magnesium chloride', 'sodium chloride', 'potassium chloride', 'potassium sulfate'],
  ...['film probe', 'house air, an estimate', 'nothing to tell by', 'My phone'],
];

/** Attributes that a person sees or hears. */
const told = ['aria-label', 'aria-description', 'aria-roledescription', 'title', 'placeholder', 'label', 'alt'];

const hasWord = /\p{L}{2}/u;
/** Several words that begin like a sentence or end like one. */
const isSentence = (text: string) => /^\p{Lu}.*\s\p{L}|^(?=.*\p{L}\s).*\p{L}[.?!…:]$/su.test(text.trim());

interface Node {
  readonly type: string;
  readonly [part: string]: unknown;
}

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && 'type' in value;

/** What stands below a node, without types, imports and what is thrown as a bug, since nobody is shown those. */
function below(node: Node): Node[] {
  if (node.type.startsWith('TS') && !/^TS(As|NonNull|Satisfies)/.test(node.type)) return [];
  if (/^(Import|Export(All|Named)Declaration$)/.test(node.type) && !isNode(node.declaration)) return [];
  if (node.type === 'ThrowStatement') return [];
  return Object.values(node).flat().filter(isNode);
}

/** The fixed text of a literal or template, "…" where something is put in; null for any other node. */
function fixedText(node: Node): string | null {
  if (node.type === 'Literal') return typeof node.value === 'string' ? node.value : null;
  if (node.type !== 'TemplateLiteral') return null;
  return (node.quasis as { value: { cooked: string } }[]).map(({ value }) => value.cooked).join('…');
}

/** What an expression may come to: both ends of a choice, else itself. */
function outcomes(node: Node): Node[] {
  const { type, consequent, alternate, left, right, expression } = node;
  const ends = {
    ConditionalExpression: [consequent, alternate],
    LogicalExpression: [left, right],
    JSXExpressionContainer: [expression],
  }[type];
  return ends === undefined ? [node] : ends.filter(isNode).flatMap(outcomes);
}

/** Texts that are shown for certain, however short: between the tags, and in attributes that are told. */
function shownBy(node: Node): string[] {
  if (node.type === 'JSXText') return [String(node.value).trim()];
  if (node.type === 'JSXElement' || node.type === 'JSXFragment')
    return (node.children as Node[])
      .filter(({ type }) => type === 'JSXExpressionContainer')
      .flatMap(outcomes)
      .flatMap((one) => fixedText(one) ?? []);
  if (node.type !== 'JSXAttribute' || !told.includes(String((node.name as Node).name)) || !isNode(node.value))
    return [];
  return outcomes(node.value).flatMap((one) => fixedText(one) ?? []);
}

function textsBelow(node: Node): string[] {
  const own = fixedText(node);
  const sentence = own !== null && isSentence(own) ? [own] : [];
  return [...shownBy(node).filter((text) => hasWord.test(text)), ...sentence, ...below(node).flatMap(textsBelow)];
}

/** Every text of `source` that is meant for people. */
function textsIn(source: string): string[] {
  const { program, errors } = parseSync('page.tsx', source);
  expect(errors).toEqual([]);
  return [...new Set(textsBelow(program as unknown as Node))];
}

/** Every text of two words and more, but for what describes a field to a program. */
function wordsIn(source: string): string[] {
  const { program, errors } = parseSync('decoder.ts', source);
  expect(errors).toEqual([]);
  const read = (node: Node): string[] => {
    const own = fixedText(node);
    const callee = node.type === 'CallExpression' && isNode(node.callee) ? node.callee : null;
    const isDescription = isNode(callee?.property) && callee.property.name === 'describe';
    const parts = isDescription && callee !== null ? [callee] : below(node);
    return [...(own !== null && /\p{L}{2}\P{L}*\s\P{L}*\p{L}/u.test(own) ? [own] : []), ...parts.flatMap(read)];
  };
  return read(program as unknown as Node);
}

describe('words of decoders and schemas', () => {
  it.each([
    ['as a value', "const reason = 'put # last';", ['put # last']],
    ['put together with a value', `const reason = \`the name \${name} is long\`;`, ['the name … is long']],
    [
      'as the error of a schema',
      "z.string().min(1, 'give it a name').describe('What it is called');",
      ['give it a name'],
    ],
    ['not in a description', "z.string().describe('What it is called').max(3);", []],
    ['not of a bug', "throw new Error('there is no such part');", []],
    ['not in names of parts', "const keys = ['probe', 'bver', 'level:0', '/0/temperature'];", []],
  ])('are found %s', (_, source, found) => {
    expect(wordsIn(source)).toEqual(found);
  });

  it('stand in none, but in the catalogues', () => {
    expect(deciders.length).toBeGreaterThan(40);
    const found = deciders.map((file) => ({ file, words: wordsIn(readFileSync(join(root, file), 'utf8')) }));
    const left = found.map(({ file, words }) => ({ file, words: words.filter((one) => !names.includes(one)) }));
    expect(left.filter(({ words }) => words.length > 0)).toEqual([]);
  });
});

describe('texts for people', () => {
  it.each([
    ['between tags', '<p>Save</p>', 'Save'],
    ['as a value between tags', "<p>{'Save'}</p>", 'Save'],
    ['as one end of a choice', "<p>{isOpen ? 'open' : words.shut}</p>", 'open'],
    ['when something is so', "<p>{isOpen && 'open'}</p>", 'open'],
    ['put together with a value', `<p>{\`since \${time}\`}</p>`, 'since …'],
    ['in a label for those who hear', '<button aria-label="close" />', 'close'],
    ['in a label put together', `<button aria-label={\`close \${name}\`} />`, 'close …'],
    ['in a title by choice', "<p title={isOpen ? 'open' : undefined} />", 'open'],
    ['in a placeholder', '<input placeholder="name" />', 'name'],
    ['in a part of our own', '<Field label="Name" />', 'Name'],
    ['as a sentence anywhere', "const said = 'Look at the probe';", 'Look at the probe'],
    ['as a sentence put together', `const said = \`Heard from \${name}\`;`, 'Heard from …'],
    ['as a question in small letters', "const said = 'is it so?';", 'is it so?'],
    ['as a sentence inside an object', "const said = { a: ['Not heard yet'] };", 'Not heard yet'],
  ])('are found %s', (_, source, text) => {
    expect(textsIn(source)).toEqual([text]);
  });

  it.each([
    ['words of the catalogue', '<p title={words.a}>{words.b}</p>'],
    ['signs between tags', '<p>{a}: {b} · – ({c}) °</p>'],
    ['names of classes', '<p class={isOpen ? "check is-due" : "check"} />'],
    ['references between elements', '<p aria-labelledby="refused" id="refused" />'],
    ['imports', "import { words } from '../strings.ts';\nexport { words } from '../strings.ts';"],
    ['types', "type Kind = 'Too hot now' | 'open'; const kind = 'open' as Kind;"],
    ['paths and selectors', "const path = '/chambers/' + id; const all = find('main h1, main h2');"],
    ['a bug that nobody is shown', "if (!part) throw new Error('There is no page');"],
    ['fonts and headers', "const font = '12px Georgia, serif'; const head = 'Content-Type';"],
  ])('are not taken for %s', (_, source) => {
    expect(textsIn(source)).toEqual([]);
  });

  it('stand in no page, but in the catalogues', () => {
    expect(pages.length).toBeGreaterThan(150);
    const found = pages.map((file) => ({ file, texts: textsIn(readFileSync(join(root, file), 'utf8')) }));
    expect(found.filter(({ texts }) => texts.length > 0)).toEqual([]);
  });
});
