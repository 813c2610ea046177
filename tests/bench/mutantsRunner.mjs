import { resolve } from 'node:path';
import { createVitest } from 'vitest/node';

/** Runs unit tests of the folder it is started in, as often as its parent asks: one start of the runner serves all mutants. */
const vitest = await createVitest('test', {
  project: ['unit'],
  watch: false,
  bail: 1,
  reporters: [{ onInit() {} }],
  maxWorkers: 1,
});

process.on('message', async ({ changed, tests }) => {
  vitest.invalidateFile(resolve(changed));
  const specifications = tests.length > 0 ? await vitest.globTestSpecifications(tests) : [];
  const asked = new Set(specifications.map(({ moduleId }) => moduleId));
  const { testModules } = asked.size > 0 ? await vitest.runTestSpecifications(specifications) : { testModules: [] };
  const these = testModules.filter(({ moduleId }) => asked.has(moduleId)); // those of earlier runs are in it, too
  process.send({ passed: these.length === asked.size && these.every((module) => module.ok()) });
});
process.send({ passed: true });
