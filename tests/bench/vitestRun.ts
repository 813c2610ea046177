import { spawnSync } from 'node:child_process';

/** Runs one file of tests with these variables in its environment; gives whether it passed. */
export function vitest(project: string, file: string, env: Readonly<Record<string, string>>): boolean {
  const told = spawnSync('npx', ['vitest', 'run', '--project', project, '--reporter=dot', file], {
    env: { ...process.env, ...env },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  return told.status === 0;
}
