import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { describe, expect, test } from 'vitest';

const src = resolve(import.meta.dirname, '../src');
const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => ({ path: file.split(sep).join('/'), text: readFileSync(join(src, file), 'utf8') }));

/** Who may import whom: the one rule of the house. */
const allowed: Record<string, readonly string[]> = {
  core: ['core'],
  tables: ['core', 'tables'],
  records: ['core', 'records', 'zod', 'idb', 'uuid', '@preact/signals'],
  ui: ['core', 'ui', 'preact', '@preact/signals', 'lean-qr', 'zxing-wasm'],
  tasks: ['core', 'tables', 'records', 'ui', 'tasks', 'zod', 'preact', '@preact/signals'],
  app: ['core', 'records', 'ui', 'tasks', 'app', 'preact', '@preact/signals', 'virtual'],
};

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

describe('the house', () => {
  test('a folder imports only what stands to its left', () => {
    const trespass = files.flatMap(({ path, text }) => {
      const room = path.split('/')[0]!;
      if (!allowed[room]) return [];
      return imports(text)
        .map((specifier) => target(path, specifier))
        .filter((to) => !allowed[room]!.includes(to.split('/')[0]!) && !allowed[room]!.includes(to))
        .map((to) => `${path} imports ${to}`);
    });
    expect(trespass).toEqual([]);
  });

  test('no task imports another task', () => {
    const trespass = files.flatMap(({ path, text }) => {
      const [room, task, ...rest] = path.split('/');
      if (room !== 'tasks' || rest.length === 0) return [];
      return imports(text)
        .map((specifier) => target(path, specifier).split('/'))
        .filter((to) => to[0] === 'tasks' && to.length > 2 && to[1] !== task)
        .map((to) => `${path} imports ${to.join('/')}`);
    });
    expect(trespass).toEqual([]);
  });

  test('only records/database.ts imports idb', () => {
    const users = files.filter(({ text }) => imports(text).includes('idb')).map(({ path }) => path);
    expect(users.filter((path) => path !== 'records/database.ts')).toEqual([]);
  });

  test('no file but a table is longer than 200 lines', () => {
    const long = files.filter(({ path, text }) => !path.startsWith('tables/') && text.split('\n').length > 201);
    expect(long.map(({ path }) => path)).toEqual([]);
  });

  test('no function is longer than 40 lines', () => {
    expect(files.filter(({ path }) => !path.startsWith('tables/')).flatMap(longFunctions)).toEqual([]);
  });

  test('every exported function of core says what it is', () => {
    const silent = files
      .filter(({ path }) => path.startsWith('core/'))
      .flatMap(({ path, text }) =>
        [...text.matchAll(/(.*)\n(?=export (?:function|const) (\w+))/g)]
          .filter((match) => !/\*\/\s*$/.test(match[1]!))
          .map((match) => `${path}: ${match[2]}`),
      );
    expect(silent).toEqual([]);
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
