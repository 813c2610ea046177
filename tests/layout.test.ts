import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { describe, expect, test } from 'vitest';

const src = resolve(import.meta.dirname, '../src');
const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => ({ path: file.split(sep).join('/'), text: readFileSync(join(src, file), 'utf8') }));

/** The floors of the house and who may import whom; packages by name. */
const allowed: Record<string, readonly string[]> = {
  core: ['core'],
  tables: ['core', 'tables'],
  records: ['core', 'tables', 'records', 'zod', 'idb', 'uuid', '@preact/signals'],
  ui: ['core', 'ui', 'preact', '@preact/signals', 'lean-qr', 'zxing-wasm'],
  workshop: ['core', 'tables', 'records', 'ui', 'workshop', '@preact/signals'],
  tasks: ['core', 'tables', 'records', 'ui', 'workshop', 'tasks', 'zod', 'preact', '@preact/signals'],
  app: ['core', 'tables', 'records', 'ui', 'workshop', 'tasks', 'app', 'preact', '@preact/signals', 'virtual'],
  words: ['words', 'preact', 'vite', 'node', 'virtual'],
};

/** Rooms that every task may use. */
const engineRooms = ['engine', 'screen', 'shared'];

function imports(text: string): string[] {
  const forms = [/^(?:import|export)\b[^;]*?\bfrom '([^']+)';/gm, /^import '([^']+)';/gm, /\bimport\('([^']+)'\)/g];
  return forms.flatMap((form) => [...text.matchAll(form)].map((match) => match[1]!));
}

function target(from: string, specifier: string): string {
  if (specifier.startsWith('.'))
    return relative(src, resolve(src, dirname(from), specifier))
      .split(sep)
      .join('/');
  return specifier.startsWith('@') ? specifier.split('/').slice(0, 2).join('/') : specifier.split(/[/:]/)[0]!;
}

/** The file that an import without its ending means; null for a package or a style. */
function fileOf(to: string): string | null {
  return (
    [to, `${to}.ts`, `${to}.tsx`, `${to}/index.ts`].find((path) => files.some((file) => file.path === path)) ?? null
  );
}

/** Groups that reach each other in a circle, each as a sorted list. */
function circles(arrows: readonly (readonly [string, string])[]): string[][] {
  const next = new Map<string, Set<string>>();
  for (const [from, to] of arrows) next.set(from, (next.get(from) ?? new Set()).add(to));
  const reached = new Map([...next.keys()].map((from) => [from, reach(from, next)]));
  const groups = [...reached]
    .filter(([from, all]) => all.has(from))
    .map(([from, all]) => [...all].filter((to) => reached.get(to)?.has(from)).sort());
  return [...new Map(groups.map((group) => [group.join(), group])).values()];
}

function reach(from: string, next: ReadonlyMap<string, ReadonlySet<string>>): Set<string> {
  const met = new Set<string>();
  const open = [...(next.get(from) ?? [])];
  for (let to = open.pop(); to !== undefined; to = open.pop()) {
    if (met.has(to)) continue;
    met.add(to);
    open.push(...(next.get(to) ?? []));
  }
  return met;
}

function testsIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.test\.tsx?$/.test(file))
    .map((file) => join(folder, file));
}

/** What names a source, or says what kind of knowledge a function is. DEVELOPERS.md explains the words. */
const SOURCE =
  /Source:|\b(GUM|ISO|USP|OIML)\b|\b([Bb]y definition|[Aa]rithmetic|[Pp]roof|[Ll]emma|[Oo]ur own|[Oo]ur choice|[Cc]ommon practice)\b/;

/** Types that are numbers. */
const NUMBER = /\b(number|Measured|Gram|Millilitre|Celsius|GramPerMl|MassFraction|VolumeFraction)\b/;

/** Units, and words for numbers without one. */
const UNIT =
  /%|°|\b(grams?|g|mg|kg|mL|mol|seconds|days|months|bar|atm|Pa|mPa s|mm|dots|bytes|units?|currency|drops|counts?|whole numbers?|ranks?|scores?|shares?|fractions?|chances?|probability|probabilities|dimensionless)\b/i;

/** A function at the left edge of a core file, with the docstring directly above it and the comment that opens its file. */
interface Written {
  readonly path: string;
  readonly called: string;
  readonly exported: boolean;
  readonly doc: string;
  readonly head: string;
  readonly signature: string;
  readonly body: string;
}

const written = files.filter(({ path }) => path.startsWith('core/')).flatMap(functionsOf);
const core = written.filter(({ exported }) => exported);

describe('the house', () => {
  test('a floor imports only what stands below it', () => {
    const trespass = files.flatMap(({ path, text }) => {
      const floor = path.split('/')[0]!;
      if (!allowed[floor]) return [];
      return imports(text)
        .map((specifier) => target(path, specifier))
        .filter((to) => !allowed[floor]!.includes(to.split('/')[0]!) && !allowed[floor]!.includes(to))
        .map((to) => `${path} imports ${to}`);
    });
    expect(trespass).toEqual([]);
  });

  test('no task imports another task', () => {
    const trespass = files.flatMap(({ path, text }) => {
      const [floor, task, ...rest] = path.split('/');
      if (floor !== 'tasks' || rest.length === 0) return [];
      return imports(text)
        .map((specifier) => target(path, specifier).split('/'))
        .filter((to) => to[0] === 'tasks' && to.length > 2 && to[1] !== task && !engineRooms.includes(to[1]!))
        .map((to) => `${path} imports ${to.join('/')}`);
    });
    expect(trespass).toEqual([]);
  });

  test('neither files nor rooms import in a circle, types included', () => {
    const arrows = files.flatMap(({ path, text }) =>
      imports(text)
        .map((specifier) => fileOf(target(path, specifier)))
        .flatMap((to) => (to ? [[path, to] as const] : [])),
    );
    const rooms = arrows.map(([from, to]) => [dirname(from), dirname(to)] as const).filter(([from, to]) => from !== to);
    expect(circles(arrows)).toEqual([]);
    expect(circles(rooms)).toEqual([]);
  });

  test('no folder holds more than 30 files', () => {
    const all = readdirSync(src, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
    const counts = new Map<string, number>();
    for (const { parentPath } of all) counts.set(parentPath, (counts.get(parentPath) ?? 0) + 1);
    expect([...counts].filter(([, count]) => count > 30).map(([folder]) => relative(src, folder))).toEqual([]);
  });

  test('a test stands in the mirror of the room that it tests', () => {
    const rooms = new Set(files.flatMap(({ path }) => dirname(path)));
    const tests = resolve(src, '../tests');
    const floors = Object.keys(allowed).filter((floor) => floor !== 'words');
    const lost = floors
      .flatMap((floor) => (existsSync(join(tests, floor)) ? testsIn(join(tests, floor)) : []))
      .map((file) => relative(tests, dirname(file)).split(sep).join('/'))
      .filter((room) => !rooms.has(room) && room.includes('/'));
    expect(lost).toEqual([]);
  });

  test('where answers are typed, answer() alone reads them', () => {
    const typed =
      /^tasks\/(batch|blind|calibrate|count|dilute|bottle|layer|dose|lookup)\/|^tasks\/shared\/(newBottle|bottleFields|Naming)/;
    const readers = files.filter(({ path, text }) => typed.test(path) && /\.(typed|presets)\b|\bvalueOf\(/.test(text));
    expect(readers.map(({ path }) => path)).toEqual([]);
  });

  test('workshop/drinkable/grade alone says what may go into a drink: nothing else reads a stored grade or the word for a solvent', () => {
    const asked =
      /^tasks\/(bottle|supply)\/|^tasks\/dilute\/(source|cautions)|^tasks\/shared\/(newBottle|bottleFields)/;
    const kept =
      /^records\/(kind|backup|union)\/|^workshop\/drinkable\/(grade|gradeCause|mark)\.ts|^app\/(edit|demo)\//;
    const shown =
      /^app\/(describe\/(describe|description|overFacts|ShelfEntry)|record\/(ThingHead|PaperPage|paper))\.tsx?$/; // the word that describe() gives
    const read = /(?<!fields)\.(grade|food)\b|[{,]\s*(grade|food)\b\s*(?:[,}]|=(?!=))[^;]*?=/;
    const readers = files.filter(
      ({ path, text }) =>
        ![asked, kept, shown].some((one) => one.test(path)) && read.test(text.replace(/'[^'\n]*'/g, "''")),
    );
    expect(readers.map(({ path }) => path)).toEqual([]);
  });

  test('only records/store/database.ts imports idb', () => {
    const users = files.filter(({ text }) => imports(text).includes('idb')).map(({ path }) => path);
    expect(users.filter((path) => path !== 'records/store/database.ts')).toEqual([]);
  });

  test('no file but a table is longer than 250 lines', () => {
    const long = files.filter(({ path, text }) => !path.startsWith('tables/') && text.split('\n').length > 251);
    expect(long.map(({ path }) => path)).toEqual([]);
  });

  test('no function is longer than 40 lines', () => {
    expect(files.filter(({ path }) => !path.startsWith('tables/')).flatMap(longFunctions)).toEqual([]);
  });

  test('every export of core has a docstring directly above it', () => {
    const silent = files
      .filter(({ path }) => path.startsWith('core/'))
      .flatMap(({ path, text }) =>
        [...text.matchAll(/(.*)\n(?=export (?:async )?(?:function|const) (\w+))/g)]
          .filter((match) => !/\*\/\s*$/.test(match[1]!))
          .map((match) => `${path}: ${match[2]}`),
      );
    expect(silent).toEqual([]);
  });

  test('no exported function of core escapes the rules for docstrings', () => {
    const form = /^export (?:(?:async )?function (\w+)|const (\w+) = (?:async )?(?:\(.*=>|\($|function))/gm;
    const all = files
      .filter(({ path }) => path.startsWith('core/'))
      .flatMap(({ path, text }) => [...text.matchAll(form)].map((match) => `${path}: ${match[1] ?? match[2]}`));
    expect(core.map(name).sort()).toEqual(all.sort());
    expect(core.filter(({ doc }) => doc === '').map(name)).toEqual([]);
  });

  test('core throws refusals only', () => {
    const thrown = files
      .filter(({ path }) => path.startsWith('core/'))
      .flatMap(({ path, text }) =>
        [...text.matchAll(/\bnew \w*Error\b|\bthrow new (?!Refusal\b)\w+/g)].map((match) => `${path}: ${match[0]}`),
      );
    expect(thrown).toEqual([]);
  });

  test('an exported function of core whose own code throws says so', () => {
    expect(core.filter((each) => throwsHere(each) && !each.doc.includes('@throws')).map(name)).toEqual([]);
  });

  test('an error told in a docstring of core can be met', () => {
    expect(core.filter((each) => each.doc.includes('@throws') && !throwsAnywhere(each)).map(name)).toEqual([]);
  });

  test('every exported function of core names its source, or what kind of knowledge it is', () => {
    expect(core.filter(({ doc, head }) => !SOURCE.test(doc) && !SOURCE.test(head)).map(name)).toEqual([]);
  });

  test('every exported function of core that takes or gives a number names a unit, or says that it is a count or share', () => {
    expect(core.filter(({ doc, signature }) => NUMBER.test(signature) && !UNIT.test(doc)).map(name)).toEqual([]);
  });

  test('files are named after things, not after a drawer', () => {
    expect(files.filter(({ path }) => /(utils?|helpers?|common|misc)\b/i.test(path)).map(({ path }) => path)).toEqual(
      [],
    );
  });
});

/** Functions that begin a line with `function` and end at the brace of the same indent. */
function longFunctions({ path, text }: { path: string; text: string }): string[] {
  const lines = text.split('\n');
  return lines.flatMap((line, at) => {
    const head = /^(\s*)(?:export )?(?:async )?function (\w+)/.exec(line);
    if (!head) return [];
    const end = lines.findIndex((later, i) => i >= at && later.startsWith(`${head[1]}}`));
    return end - at + 1 > 40 ? [`${path}: ${head[2]} has ${end - at + 1} lines`] : [];
  });
}

/** Functions that begin a line; their bodies are indented and end at a brace alone. Arrow functions stand on one line. */
function functionsOf({ path, text }: { path: string; text: string }): Written[] {
  const opening = /^(?:import [^;]*;\n|\n)*(\/\*(?:(?!\*\/)[^])*\*\/\n(?=\n|import )|\/\*\n(?:(?!\*\/)[^])*\*\/)/.exec(
    text,
  );
  const doc = String.raw`(\/\*\*(?:(?!\*\/)[^])*\*\/\n)?^(export )?`;
  const forms = [
    new RegExp(String.raw`${doc}(?:async )?function (\w+)([^]*?) \{\n((?:(?: .*)?\n)*)\}$`, 'gm'),
    new RegExp(String.raw`${doc}const (\w+) = (\(.*) => (.*);$`, 'gm'),
  ];
  return forms
    .flatMap((form) => [...text.matchAll(form)])
    .map(([, doc = '', exported, called, signature, body]) => ({
      path,
      called: called!,
      exported: exported !== undefined,
      doc: doc.replace(/\n \* ?/g, ' '),
      head: (opening?.[1] ?? '').replace(/\n \* ?/g, ' '),
      signature: signature!,
      body: body!,
    }));
}

function name({ path, called }: Written): string {
  return `${path}: ${called}`;
}

/** Whether a function throws, or a private one of its file that it calls, however far down. */
function throwsHere(each: Written, met: readonly Written[] = []): boolean {
  if (/\bthrow /.test(each.body)) return true;
  return calledBy(each).some(
    (next) => next.path === each.path && !next.exported && !met.includes(next) && throwsHere(next, [...met, each]),
  );
}

/** Whether a function throws, or any function of core that it calls, however far down. */
function throwsAnywhere(each: Written, met = new Set<Written>()): boolean {
  if (met.has(each)) return false;
  met.add(each);
  return /\bthrow /.test(each.body) || calledBy(each).some((next) => throwsAnywhere(next, met));
}

/** The functions of its own file and of the files imported there whose names a body calls. */
function calledBy({ path, body }: Written): Written[] {
  const text = files.find((file) => file.path === path)!.text;
  const near = [path, ...imports(text).map((specifier) => `${target(path, specifier)}.ts`)];
  return written.filter(
    (each) => near.includes(each.path) && new RegExp(String.raw`(?<![.\w])${each.called}\b`).test(body),
  );
}
