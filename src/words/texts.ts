import { parseSync } from 'vite';

interface Span {
  readonly start: number;
  readonly end: number;
}

interface Node extends Span {
  readonly type: string;
  readonly [key: string]: unknown;
}

/** A text that people read, as a pattern: "Drop in {0} of {1}."; its holes are what stands in the source there. */
export interface Text extends Span {
  readonly pattern: string;
  readonly holes: readonly Span[];
  readonly form: 'string' | 'template' | 'attribute' | 'children' | 'list' | 'list?';
}

type Above = readonly (readonly [node: Node, key: string])[];

/** Attributes that nobody reads. */
const MUTE =
  /^(class|id|for|type|role|href|rel|d|viewBox|transform|style|points|auto.*|input.*|enter.*|accept|target|text-.*|dominant-.*|preserve.*|key|aria-(?!label$|valuetext$|description$).*)$/;

/** Calls whose words are for the machine. */
const MACHINE =
  /^(literal|enum|_default|querySelector(All)?|closest|matches|(add|remove)EventListener|getContext|createElement|(starts|ends)With|includes|(last)?indexOf|split|[gs]etItem|removeItem|get|has|set|delete|find|list|isOf|newRecord|append|RegExp|URL|Blob|matchMedia|[gs]etAttribute|createPolicy)$/i;

/** Properties that people read even when they hold one small word. */
const READ = /^(unit|words|say|more|title|label|hint|line|text|help|why|problem|done|sentence|told)$/;

/** Properties that are stored or compared. */
const VALUE = /^(value|id|key|kind|type)$/;

/** What people read of the rows of tables: names, sources and terms of laws are data. */
const ROW = /^(words|note|rule|family|smells)$/;

/** Units and signs alone. */
const UNITS =
  /^(\{\d+\}|[^\p{L}{}]|(?<!\p{L})(µg|mg|g|kg|µL|mL|L|µm|mm|cm|kB|MB|GB|min|h|s|k|px|M?Pa|C|Brix|ABV|bw|day|pH|ppm|v|w|E|M|H|V|Z|x)(?!\p{L}))*$/u;

/** Names in a program, drawings, JSON. */
const CODE = /^\p{Lu}\p{Ll}+\p{Lu}\p{L}*$|^[MVHL]?[\d{.]\S*[HVLhv][\d{]|^M-?[\d{]|^@|":|[\d%}]px|^\w+\/\w+$|\n/u;
const PHRASE = /\p{L}.*\s|\s.*\p{L}|^\P{L}*\p{Lu}\p{Ll}/u;

/**
 * The texts of a source that people read, the outer ones before those in their holes, and its `data`: words that it compares,
 * looks up, stores or names in types, which must stay as they are wherever they stand.
 */
export function wordsIn(path: string, source: string): { texts: readonly Text[]; data: readonly string[] } {
  const { program, errors } = parseSync(path, source);
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]!.message}`);
  const texts: Text[] = [];
  const data: string[] = [];
  const inTable = /\btables\/(?!shelfLife)/.test(path);
  walk(program as unknown as Node, [], (node, above) => {
    const pattern = patternOf(node);
    if (pattern !== null && (isData(above) || isListed(above, source))) data.push(pattern);
    else if (pattern !== null && (isRow(node) || isRead(pattern, above, inTable)))
      texts.push(textOf(node, pattern, above));
    else if (node.type === 'CallExpression') texts.push(...listOf(node));
    else if (/^JSX(Element|Fragment)$/.test(node.type)) texts.push(...childrenOf(node));
  });
  return { texts: texts.sort((a, b) => a.start - b.start || b.end - a.end), data };
}

function walk(node: Node, above: [Node, string][], see: (node: Node, above: Above) => void): void {
  if (/^(Import|ExportAll|TaggedTemplate)/.test(node.type) || (/^Export/.test(node.type) && node['source'])) return; // an address
  see(node, above);
  for (const [key, value] of Object.entries(node)) {
    if (typeof value !== 'object' || value === null) continue;
    above.unshift([node, key]);
    for (const child of Array.isArray(value) ? value : [value])
      if (typeof child?.type === 'string') walk(child as Node, above, see);
    above.shift();
  }
}

/** Whether a string that stands there is for the machine. */
function isData(above: Above): boolean {
  const [up, key] = above[0] ?? [];
  if (!up) return false;
  const named = up.type === 'Property' ? nameOf(up['key'] as Node) : '';
  return (
    /^TSLiteralType$|^SwitchCase$/.test(up.type) ||
    (up.type === 'BinaryExpression' && up['operator'] !== '+') ||
    (up.type === 'MemberExpression' && key === 'property') ||
    key === 'key' ||
    VALUE.test(named) ||
    above.slice(0, 2).some(([call, at]) => at === 'arguments' && MACHINE.test(calleeOf(call)))
  );
}

function patternOf(node: Node): string | null {
  if (node.type === 'Literal') return typeof node['value'] === 'string' ? node['value'] : null;
  if (node.type !== 'TemplateLiteral') return null;
  const quasis = node['quasis'] as { value: { cooked: string } }[];
  return quasis.map(({ value }, i) => `${i > 0 ? `{${i - 1}}` : ''}${value.cooked}`).join('');
}

function textOf(node: Node, pattern: string, above: Above): Text {
  const holes = (node['expressions'] ?? []) as Node[];
  const form = holes.length > 0 ? 'template' : above[0]?.[0].type === 'JSXAttribute' ? 'attribute' : 'string';
  return { start: node.start, end: node.end, pattern, holes, form };
}

/** Whether it stands in a constant list in which the source looks something up. */
function isListed([list, declared]: Above, source: string): boolean {
  if (list?.[0].type !== 'ArrayExpression' || declared?.[0].type !== 'VariableDeclarator') return false;
  return new RegExp(`\\b${nameOf(declared[0]['id'] as Node)}\\.(includes|indexOf)\\(`).test(source);
}

/** Whether a string that stands there is words for people: a phrase, or a small word in a place that is read. */
function isRead(pattern: string, above: Above, inTable: boolean): boolean {
  if (!hasWords(pattern) || CODE.test(pattern)) return false;
  const phrase = PHRASE.test(pattern.replace(/\{\d+\}/g, '0'));
  for (const [i, [up, key]] of above.entries()) {
    const named = up.type === 'Property' || up.type === 'JSXAttribute' ? nameOf((up['key'] ?? up['name']) as Node) : '';
    if (isData(above.slice(i, i + 1))) return false;
    if (up.type === 'Property') return inTable ? ROW.test(named) : phrase || READ.test(named);
    if (up.type === 'JSXAttribute') return phrase && !MUTE.test(named);
    if (up.type === 'TemplateLiteral' && (isRow(up) || isRead(patternOf(up)!, above.slice(i + 1), inTable)))
      return true;
    if (key === 'callee' && listOf(up).length > 0) return true;
    if (key === 'arguments') return calleeOf(up) === 'join' || (phrase && !inTable && !MACHINE.test(calleeOf(up)));
    if (/^JSX(Element|Fragment)/.test(up.type)) return true;
    if (
      key === 'test' ||
      !/^(JSXExpr|Cond|Logical|Binary|Parenth|TSAs|TSNonNull|TSSat|Array(?!Pattern)|Template|Member|Call)/.test(up.type)
    )
      return phrase && key !== 'test' && (!inTable || above[i + 2]?.[0].type === 'ExportNamedDeclaration');
  }
  return false;
}

/** Whether there is something to translate in a pattern; numbers, signs and units stay. */
export function hasWords(pattern: string): boolean {
  return !UNITS.test(pattern);
}

/** A template of holes, signs and units: "{0} {1}, {2} %". What stands in its holes may be data. */
function isRow(template: Node): boolean {
  const pattern = patternOf(template)!;
  return template.type === 'TemplateLiteral' && !hasWords(pattern) && /\{.* |, \{|\.$/.test(pattern);
}

function nameOf(node: Node): string {
  return String(node['name'] ?? node['value'] ?? '');
}

function calleeOf(call: Node): string {
  const callee = call['callee'] as Node | undefined;
  return callee ? nameOf((callee['property'] as Node | undefined) ?? callee) : '';
}

/** A list in one text, "a, b": what it lists may be data. */
function listOf(call: Node): Text[] {
  const { object, optional } = call['callee'] as { object?: Node; optional?: boolean };
  const between = calleeOf(call) === 'join' ? patternOf((call['arguments'] as Node[])[0] ?? call) : null;
  if (!object || !between || !/\s/.test(between) || between === ' ') return [];
  return [{ start: call.start, end: call.end, pattern: between, holes: [object], form: optional ? 'list?' : 'list' }];
}

/** The text between two tags; what stands in braces or tags there is a hole. */
function childrenOf(node: Node): Text[] {
  const children = (node['children'] as Node[]).filter(
    ({ expression }) => (expression as Node)?.type !== 'JSXEmptyExpression',
  );
  const holes: Node[] = [];
  const parts = children.map((child) => {
    if (child.type === 'JSXText') return inOneLine(String(child['value']));
    const inner = child.type === 'JSXExpressionContainer' ? patternOf(child['expression'] as Node) : null;
    return inner !== null && (child['expression'] as Node).type === 'Literal' ? inner : `{${holes.push(child) - 1}}`;
  });
  const pattern = parts.join('');
  const written = children.some(({ type, value }) => type === 'JSXText' && /\p{L}/u.test(String(value)));
  if (!written || !hasWords(pattern)) return [];
  return [{ start: children[0]!.start, end: children.at(-1)!.end, pattern, holes, form: 'children' }];
}

/** Text of JSX as it is shown: lines are trimmed where they meet. */
function inOneLine(text: string): string {
  const lines = text.split('\n');
  const trimmed = lines
    .map((line, i) => (i > 0 ? line.trimStart() : line))
    .map((line, i) => (i < lines.length - 1 ? line.trimEnd() : line));
  return trimmed.filter(Boolean).join(' ');
}
