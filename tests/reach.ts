import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parseSync } from 'vite';

/*
 * What the app reaches, name by name: from every statement of the entries over what each declaration names, in its own file
 * and by import. Types count as code does. A local name hides the name of its file; a property is not a name.
 */

interface Node {
  readonly type: string;
  readonly [key: string]: unknown;
}

/** A name in a file; the file as an import writes it. */
interface Original {
  readonly from: string;
  readonly name: string;
}

/** A file as the walk needs it: what its top level declares, imports (and exports again), exports, and what only runs. */
interface Module {
  readonly declared: Map<string, Node[]>;
  readonly imported: Map<string, Original>;
  readonly exported: Set<string>;
  readonly runs: Node[];
}

/** What the walk of a piece of code reports. */
interface Uses {
  name(name: string): void;
  /** A file that is loaded without a name, or later on, and which of its names are taken; null: all. */
  file(specifier: string, names: readonly string[] | null): void;
}

/** The files of a folder, read as they are needed. */
export class Reach {
  private readonly modules = new Map<string, Module>();
  private readonly reached = new Map<string, Set<string>>();
  private readonly open: (() => void)[] = [];

  /** Walks from the entries: paths under the root, with their endings. */
  constructor(
    private readonly root: string,
    entries: readonly string[],
  ) {
    for (const entry of entries) this.from(entry, this.enter(entry).declared.keys());
  }

  /** Goes on from some names of a file. */
  from(path: string, names: Iterable<string>): void {
    for (const name of names) this.reach(path, name);
    for (let next = this.open.pop(); next; next = this.open.pop()) next();
  }

  /** Exports of a file (functions, constants, classes, types) that no entry reaches. */
  unreached(path: string): string[] {
    return [...this.module(path).exported].filter((name) => !this.reached.get(path)?.has(name));
  }

  private module(path: string): Module {
    const known = this.modules.get(path);
    if (known) return known;
    const read = moduleOf(readFileSync(join(this.root, path), 'utf8'), path);
    this.modules.set(path, read);
    return read;
  }

  private enter(path: string): Module {
    const module = this.module(path);
    if (!this.reached.has(path)) {
      this.reached.set(path, new Set());
      this.open.push(() => module.runs.forEach((node) => this.walk(path, node)));
    }
    return module;
  }

  private reach(path: string, name: string): void {
    const { declared, imported } = this.enter(path);
    const names = this.reached.get(path)!;
    if (names.has(name)) return;
    names.add(name);
    const original = imported.get(name);
    const file = original && this.fileOf(path, original.from);
    if (file) this.reach(file, original.name);
    this.open.push(() => declared.get(name)?.forEach((node) => this.walk(path, node)));
  }

  private walk(path: string, node: Node): void {
    const { declared, imported } = this.module(path);
    walk(node, new Set(), {
      name: (name) => {
        if (declared.has(name) || imported.has(name)) this.reach(path, name);
      },
      file: (specifier, names) => {
        const file = this.fileOf(path, specifier);
        if (file) for (const name of names ?? this.enter(file).exported) this.reach(file, name);
      },
    });
  }

  /** The file that an import means; null for a package or a style. */
  private fileOf(from: string, specifier: string): string | null {
    if (!specifier.startsWith('.')) return null;
    const to = join(dirname(from), specifier.replace(/\?.*$/, ''));
    const forms = [to, `${to}.ts`, `${to}.tsx`, `${to}/index.ts`];
    return forms.find((path) => /\.tsx?$/.test(path) && existsSync(join(this.root, path))) ?? null;
  }
}

function moduleOf(text: string, path: string): Module {
  const { program, errors } = parseSync(path, text, { preserveParens: false });
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]!.message}`);
  const module: Module = { declared: new Map(), imported: new Map(), exported: new Set(), runs: [] };
  for (const statement of program.body as unknown as Node[]) read(module, statement);
  return module;
}

function read({ declared, imported, exported, runs }: Module, statement: Node): void {
  if (statement.type === 'ExportAllDeclaration') throw new Error('the walk does not know a star export');
  const specifiers = (statement['specifiers'] ?? []) as Record<string, Node>[];
  const from = (statement['source'] as Node | null)?.['value'] as string | undefined;
  for (const { local, imported: original, exported: outside } of specifiers) {
    const name = nameOf(outside ?? local!);
    if (from) imported.set(name, { from, name: original ? nameOf(original) : outside ? nameOf(local!) : 'default' });
    if (outside) exported.add(name);
  }
  const inner = (statement['declaration'] ?? statement) as Node;
  const names = declaredBy(inner);
  for (const name of names) {
    declared.set(name, [...(declared.get(name) ?? []), inner]);
    if (statement.type === 'ExportNamedDeclaration') exported.add(name);
  }
  if (names.length === 0 && specifiers.length === 0) runs.push(statement);
}

function nameOf(node: Node): string {
  return (node['name'] ?? node['value']) as string;
}

/** Names that a statement declares. */
function declaredBy(node: Node): string[] {
  if (node.type === 'VariableDeclaration')
    return (node['declarations'] as { id: Node }[]).flatMap(({ id }) => boundBy(id));
  return /Declaration$/.test(node.type) && node['id'] ? [nameOf(node['id'] as Node)] : [];
}

/** Names that a pattern binds. */
function boundBy(pattern: Node | null): string[] {
  if (!pattern) return [];
  if (pattern.type === 'Identifier') return [nameOf(pattern)];
  const one = pattern['left'] ?? pattern['argument'] ?? (pattern.type === 'Property' ? pattern['value'] : null);
  return ((pattern['elements'] ?? pattern['properties'] ?? [one]) as Node[]).flatMap(boundBy);
}

/** Reports every free name of a piece of code. `hidden`: names declared around it. */
function walk(node: Node, hidden: ReadonlySet<string>, uses: Uses): void {
  const named = node.type === 'Identifier' || (node.type === 'JSXIdentifier' && /^[A-Z]/.test(nameOf(node)));
  if (named && !hidden.has(nameOf(node))) uses.name(nameOf(node));
  if (node.type === 'ImportDeclaration') uses.file((node['source'] as Node)['value'] as string, []);
  const later = takenLater(node);
  if (later) uses.file(later.specifier, later.names);
  if (node.type === 'ImportExpression' || (later && node.type === 'MemberExpression')) return;
  const own = declaredIn(node);
  const inside = own.length > 0 ? new Set([...hidden, ...own]) : hidden;
  for (const key in node)
    if (!isLabel(node, key))
      for (const child of Array.isArray(node[key]) ? (node[key] as unknown[]) : [node[key]])
        if (isNode(child)) walk(child, inside, uses);
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && 'type' in value;
}

/** `(await import('./x')).name`, and any other import that is not at the head of its file: of those, all names. */
function takenLater(node: Node): { specifier: string; names: string[] | null } | null {
  const awaited = (node['object'] as Node | undefined)?.['argument'] as Node | undefined;
  const taken = node.type === 'MemberExpression' && awaited?.type === 'ImportExpression' && !node['computed'];
  const load = taken ? awaited : node.type === 'ImportExpression' ? node : null;
  if (!load) return null;
  const specifier = (load['source'] as Node)['value'] as string;
  return { specifier, names: taken ? [nameOf(node['property'] as Node)] : null };
}

/** Whether a child is a property, a key or an attribute: not the name of something declared. */
function isLabel(node: Node, key: string): boolean {
  if (node['computed']) return false;
  if (key === 'property') return /MemberExpression$/.test(node.type);
  return key === 'key' || (key === 'right' && node.type === 'TSQualifiedName');
}

/** Names that a function, a block or a loop declares for what is inside it. */
function declaredIn(node: Node): string[] {
  const statements = Array.isArray(node['body']) ? (node['body'] as Node[]) : [];
  const heads = [node['init'], node['left']].filter(isNode).filter(({ type }) => type === 'VariableDeclaration');
  const params = /Function|Signature/.test(node.type) ? ((node['params'] ?? []) as Node[]) : [];
  const own = node.type === 'FunctionExpression' && isNode(node['id']) ? [nameOf(node['id'])] : [];
  const caught = node.type === 'CatchClause' ? boundBy(node['param'] as Node | null) : [];
  return [...own, ...caught, ...params.flatMap(boundBy), ...[...statements, ...heads].flatMap(declaredBy)];
}
