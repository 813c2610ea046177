import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, resolve } from 'node:path';
import { parseSync } from 'vite';
import { seeded } from '../core/seeded';

const LIMIT = 60; // mutants tried, where no other number is asked for
const HANGS_MS = 300_000;

/** Grade, limits, exposure, judging. */
const DEFAULT = ['src/core/limits', 'src/workshop/drinkable', 'src/core/plan/judge.ts'];
const COPIED = ['src', 'tests', 'public', 'index.html', 'package.json', 'tsconfig.json', 'vite.config.ts', 'README.md'];

interface Mutant {
  readonly path: string;
  readonly start: number;
  readonly end: number;
  readonly was: string;
  readonly is: string;
}

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
}

/** What each operator becomes. */
const OTHER: Readonly<Record<string, string>> = {
  '<': '<=',
  '<=': '<',
  '>': '>=',
  '>=': '>',
  '===': '!==',
  '!==': '===',
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '&&': '||',
  '||': '&&',
  '??': '&&',
};

/**
 * Small faults put into sources one at a time, each with the unit tests of its room and those that import its file run on it,
 * in a copy of the project. Survivors show what no test looks at. After the name: how many, and files or folders of src.
 */
export async function mutantsBench(...asked: string[]): Promise<void> {
  const limit = asked.map(Number).find((number) => number > 0) ?? LIMIT;
  const places = asked.filter((word) => !(Number(word) > 0));
  const copy = copyOfProject();
  try {
    const all = (places.length > 0 ? places : DEFAULT).flatMap(sourcesIn).flatMap(mutantsOf);
    const random = seeded(13);
    const drawn = all.map((mutant) => [random(), mutant] as const).sort(([a], [b]) => a - b);
    const mutants = drawn.slice(0, limit).map(([, mutant]) => mutant);
    const tests = new Map([...new Set(mutants.map(({ path }) => path))].map((path) => [path, testsOf(path)]));
    for (const [path, files] of tests)
      if (files.length === 0 || !passes(copy, files)) throw new Error(`the tests of ${path} do not pass as it is`);
    let killed = 0;
    for (const mutant of mutants) if (isKilled(copy, mutant, tests.get(mutant.path)!)) killed++;
    const figures = { mutants: mutants.length, of: all.length, killed, survived: mutants.length - killed };
    console.log(JSON.stringify({ summary: 'mutants', ...figures }));
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
}

function copyOfProject(): string {
  const copy = mkdtempSync(join(tmpdir(), 'minim-mutants-'));
  for (const path of COPIED) cpSync(path, join(copy, path), { recursive: true });
  symlinkSync(resolve('node_modules'), join(copy, 'node_modules'), 'junction');
  return copy;
}

function sourcesIn(place: string): string[] {
  if (/\.tsx?$/.test(place)) return [place];
  const names = readdirSync(place, { recursive: true, encoding: 'utf8' });
  return names.filter((name) => /\.tsx?$/.test(name)).map((name) => join(place, name));
}

/** Unit tests of the room of a source, and all that import it. */
function testsOf(path: string): string[] {
  const room = dirname(path).replace(/^src/, 'tests');
  const imported = `/${path.replace(/\.tsx?$/, '')}'`;
  return sourcesIn('tests')
    .filter((file) => /(?<!\.long)\.test\.ts$/.test(file) && !/^tests.(browser|words)/.test(file))
    .filter((file) => dirname(file) === room || readFileSync(file, 'utf8').includes(imported));
}

function passes(copy: string, tests: readonly string[]): boolean {
  const vitest = [resolve('node_modules/vitest/vitest.mjs'), 'run', '--project', 'unit', '--bail', '1'];
  try {
    execFileSync(process.execPath, [...vitest, ...tests], {
      cwd: copy,
      stdio: 'ignore',
      timeout: HANGS_MS,
      killSignal: 'SIGKILL',
    });
    return true;
  } catch {
    return false;
  }
}

function isKilled(copy: string, { path, start, end, was, is }: Mutant, tests: readonly string[]): boolean {
  const source = readFileSync(path, 'utf8');
  const began = performance.now();
  writeFileSync(join(copy, path), source.slice(0, start) + is + source.slice(end));
  const killed = !passes(copy, tests);
  writeFileSync(join(copy, path), source);
  const at = `${path}:${source.slice(0, start).split('\n').length}`;
  const ms = Math.round(performance.now() - began);
  console.log(JSON.stringify({ at, was, is, outcome: killed ? 'killed' : 'SURVIVED', ms }));
  return killed;
}

function mutantsOf(path: string): Mutant[] {
  const source = readFileSync(path, 'utf8');
  const found: Mutant[] = [];
  const change = (start: number, end: number, is: string) =>
    found.push({ path, start, end, was: source.slice(start, end), is });
  const see = (node: Node) => {
    if (/^(Import|TS(?!As|NonNull|Satisfies))/.test(node.type)) return;
    if (/^(Binary|Logical)Expression$/.test(node.type) && !joinsText(node)) {
      const [left, right, sign] = [node['left'] as Node, node['right'] as Node, String(node['operator'])];
      const at = left.end + source.slice(left.end, right.start).indexOf(sign);
      if (sign in OTHER) change(at, at + sign.length, OTHER[sign]!);
    }
    if (/^(If|Conditional)/.test(node.type)) {
      const { start, end } = node['test'] as Node;
      change(start, end, `!(${source.slice(start, end)})`);
    }
    if (node.type === 'Literal' && typeof node['value'] === 'number')
      change(node.start, node.end, `${node['value'] + (found.length % 2 ? 1 : -1)}`);
    for (const child of Object.values(node).flat()) if (typeof (child as Node)?.type === 'string') see(child as Node);
  };
  see(parseSync(basename(path), source).program as unknown as Node);
  return found.filter(({ start, end, is }) => parses(path, source.slice(0, start) + is + source.slice(end)));
}

/** Some changes are no program: ?? beside && without brackets. */
function parses(path: string, source: string): boolean {
  return parseSync(basename(path), source).errors.length === 0;
}

function joinsText(node: Node): boolean {
  return [node['left'] as Node, node['right'] as Node].some(
    (side) => side.type === 'TemplateLiteral' || typeof side['value'] === 'string',
  );
}
