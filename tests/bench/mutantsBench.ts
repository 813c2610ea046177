import { execFileSync, fork, type ChildProcess } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, relative, resolve } from 'node:path';
import { parseSync } from 'vite';
import { seeded } from '../core/seeded';

const EACH = 140; // mutants tried in each place, where no other number is asked for
const HANGS_MS = 300_000;

const DEFAULT = ['src/core', 'src/workshop', 'src/tables'];
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
 * Small faults put into sources one at a time, each with the unit tests that import its file run on it, then with
 * those of its room, in a copy of the project. Survivors show what no test looks at. Which mutants are drawn follows from the
 * hash of the commit. After the name: how many in each place, and files or folders of src.
 */
export async function mutantsBench(...asked: string[]): Promise<void> {
  const each = asked.map(Number).find((number) => number > 0) ?? EACH;
  const places = asked.filter((word) => !(Number(word) > 0));
  const seed = Number.parseInt(execFileSync('git', ['rev-parse', 'HEAD'], { encoding: 'utf8' }).slice(0, 8), 16);
  const copy = copyOfProject();
  const runner = testRunner(copy);
  try {
    for (const place of places.length > 0 ? places : DEFAULT) await tryPlace(place, each, seed, copy, runner);
  } finally {
    runner.stop();
    rmSync(copy, { recursive: true, force: true });
  }
}

async function tryPlace(place: string, each: number, seed: number, copy: string, runner: Runner): Promise<void> {
  const all = sourcesIn(place).flatMap(mutantsOf);
  const random = seeded(seed);
  const drawn = all.map((mutant) => [random(), mutant] as const).sort(([a], [b]) => a - b);
  const mutants = drawn.slice(0, each).map(([, mutant]) => mutant);
  for (const test of new Set(mutants.flatMap(({ path }) => testsOf(path).flat())))
    if (!(await runner.passes(mutants[0]!.path, [test]))) throw new Error(`${test} does not pass as it is`);
  let killed = 0;
  for (const mutant of mutants) if (await isKilled(copy, mutant, runner)) killed++;
  const survived = mutants.length - killed;
  console.log(JSON.stringify({ summary: 'mutants', place, seed, of: all.length, mutants: mutants.length, killed, survived })); // prettier-ignore
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

/** Unit tests that import a source or have its name; then all the others of its room. */
function testsOf(path: string): [near: string[], far: string[]] {
  const room = dirname(path).replace(/^src/, 'tests');
  const named = join(room, basename(path).replace(/\.tsx?$/, '.test.ts'));
  const isNear = (file: string) => file === named || importsOf(file).includes(path);
  return [unitTests.filter(isNear), unitTests.filter((file) => !isNear(file) && dirname(file) === room)];
}

const unitTests = sourcesIn('tests').filter(
  (file) => /(?<!\.long)\.test\.tsx?$/.test(file) && !/^tests.(browser|words)/.test(file),
);

const imports = new Map<string, string[]>();

function importsOf(file: string): string[] {
  const known = imports.get(file);
  if (known) return known;
  const named = [...readFileSync(file, 'utf8').matchAll(/(?:from|import\()\s*'(\.[^']*)'/g)].map(([, name]) => name!);
  const found = named.flatMap((name) => {
    const path = relative('.', resolve(dirname(file), name));
    return ['.ts', '.tsx', '/index.ts'].map((end) => path + end).filter((one) => existsSync(one)).slice(0, 1); // prettier-ignore
  });
  imports.set(file, found);
  return found;
}

interface Runner {
  /** Whether all these tests pass on the copy as it is, in which this file has changed. */
  passes(changed: string, tests: readonly string[]): Promise<boolean>;
  stop(): void;
}

/** One start of the test runner serves all mutants; one that hangs is begun again. */
function testRunner(copy: string): Runner {
  let child: ChildProcess | null = null;
  const stop = () => {
    child?.kill('SIGKILL');
    child = null;
  };
  const answer = (from: ChildProcess) =>
    new Promise<boolean>((told) => {
      const late = setTimeout(() => (stop(), told(false)), HANGS_MS);
      const end = (passed: boolean) => (clearTimeout(late), told(passed));
      from.once('message', ({ passed }: { passed: boolean }) => end(passed));
    });
  return {
    async passes(changed, tests) {
      if (!child) {
        child = fork(join(copy, 'tests/bench/mutantsRunner.mjs'), {
          cwd: copy,
          stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
        });
        await answer(child);
      }
      const passed = answer(child);
      child.send({ changed, tests });
      return passed;
    },
    stop,
  };
}

async function isKilled(copy: string, mutant: Mutant, runner: Runner): Promise<boolean> {
  const { path, start, end, was, is } = mutant;
  const source = readFileSync(path, 'utf8');
  const [near, far] = testsOf(path);
  const began = performance.now();
  writeFileSync(join(copy, path), source.slice(0, start) + is + source.slice(end));
  const killed =
    (near.length > 0 && !(await runner.passes(path, near))) || (far.length > 0 && !(await runner.passes(path, far)));
  writeFileSync(join(copy, path), source);
  await runner.passes(path, []); // the copy is as it was, for the next
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
