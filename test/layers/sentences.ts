/** Finds what people would read outside the catalogues: the text of string literals, templates and JSX, with a real parser. */
import { parseSync } from 'vite';

export interface Visible {
  readonly path: string;
  readonly line: number;
  readonly text: string;
}

/** Attributes that nobody reads: names, addresses and drawing. All others may be read out or shown. */
const INVISIBLE =
  /^(className|style|d|viewBox|transform|points|key|id|href|htmlFor|role|type|rel|xmlns|font|fill|stroke.*|preserveAspectRatio|aria-(labelledby|describedby|controls|live|owns))$/;
/** Calls whose texts are for developers or for the machine. */
const FOR_DEVELOPERS = /^(refine|superRefine|regex|describe|meta|querySelector|querySelectorAll|matches|closest|matchMedia)$/;
const WORD = /[\p{Ll}]{2,}/u;
/** Two words or more, one of them in small letters. */
const SENTENCE = /\p{L}[\p{L}’',.:;?!…)”]*[ \u00a0]\S*|\s\p{L}/u;

type Node = Record<string, unknown> & { readonly type?: string; readonly start?: number };

/** Every visible text of a module. @throws Error when it can't be parsed */
export function visibleIn(path: string, text: string): Visible[] {
  const { program, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]?.message}`);
  const found: Visible[] = [];
  const note = (node: Node, said: string) => {
    const shown = said.replace(/\s+/g, ' ').trim();
    found.push({ path, line: text.slice(0, node.start ?? 0).split('\n').length, text: shown });
  };
  walk(program as unknown as Node, note);
  return found;
}

function walk(node: unknown, note: (node: Node, said: string) => void): void {
  if (Array.isArray(node)) {
    for (const n of node) walk(n, note);
    return;
  }
  if (typeof node !== 'object' || node === null) return;
  const n = node as Node;
  if (isSilent(n)) return;
  if (n.type === 'Literal' && typeof n['value'] === 'string') {
    if (isSentence(n['value'])) note(n, n['value']);
    return;
  }
  if (n.type === 'TemplateLiteral') {
    const said = (n['quasis'] as { value: { cooked: string } }[]).map((q) => q.value.cooked).join('#');
    if (isSentence(said)) note(n, said);
    return walk(n['expressions'], note);
  }
  if (n.type === 'JSXText') {
    const said = String(n['value']).replace(/&\w+;/g, ' ');
    if (WORD.test(said)) note(n, said);
    return;
  }
  if (n.type === 'JSXAttribute' && isPlainText(n['value'])) {
    const { value } = n['value'];
    if (WORD.test(value) && /^(aria-label|title|placeholder|alt|aria-description)$/.test(nameOf(n['name']))) note(n, value);
    else if (isSentence(value)) note(n, value);
    return;
  }
  for (const [key, child] of Object.entries(n)) if (key !== 'key' || n['computed'] === true) walk(child, note);
}

function isPlainText(node: unknown): node is { readonly value: string } {
  return typeof node === 'object' && node !== null && typeof (node as Node)['value'] === 'string';
}

function isSilent(n: Node): boolean {
  switch (n.type) {
    case 'ImportDeclaration':
    case 'ExportAllDeclaration':
    case 'ImportExpression':
    case 'TSLiteralType':
    case 'TSTypeAliasDeclaration':
    case 'TSInterfaceDeclaration':
    case 'ThrowStatement':
      return true;
    case 'NewExpression':
      return /Error$|Failure$|^RegExp$/.test(nameOf(n['callee']));
    case 'CallExpression':
      return FOR_DEVELOPERS.test(nameOf((n['callee'] as Node)['property']));
    case 'TaggedTemplateExpression':
      return true;
    case 'Property':
      return nameOf(n['key']) === 'message';
    case 'JSXAttribute':
      return INVISIBLE.test(nameOf(n['name']));
    default:
      return false;
  }
}

function nameOf(node: unknown): string {
  const name = typeof node === 'object' && node !== null ? (node as Node)['name'] : undefined;
  return typeof name === 'string' ? name : '';
}

/** Words with a blank between them; not a path, a list of classes in brackets or a drawing. */
function isSentence(text: string): boolean {
  return WORD.test(text) && SENTENCE.test(text);
}

/** Rooms whose texts are catalogues, published tables as data, or the headings that files of others have. */
const SPEAKERS = /^core\/(words|reference)\/|^core\/records\/import-(words|dates)\.ts$/;

/** Codes with a blank in them, in files and stored rows: they are compared, never shown. And what browsers and canvas take. */
const NOT_SAID: ReadonlySet<string> = new Set([
  'complete mix',
  'plain mix',
  'raw meaty bone',
  'vegetable blend',
  'thick gruel',
  'fine mince',
  'mince with soft bone',
  'milk replacer',
  'as fed',
  'dry matter',
  'per 1000 kcal',
  'raw 4/9/4',
  'modified Atwater',
  'NRC four-step',
  'own record',
  'common practice',
  'from memory',
  '400 14px #',
  '# #px #',
  '(max-width: 999px)',
  'color-mix(in srgb, # calc(var(--fabric-brightness, 1) * 100%), black)',
]);

/** What is wrong with who speaks: a sentence in a module that is no catalogue. */
export function sentenceComplaints(found: readonly Visible[]): string[] {
  return found
    .filter((v) => !SPEAKERS.test(v.path) && !NOT_SAID.has(v.text))
    .map((v) => `${v.path}:${v.line} says “${v.text}”: put it into core/words`);
}
