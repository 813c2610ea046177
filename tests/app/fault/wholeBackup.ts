import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Content } from './mutants';

function fixture(name: string): Content {
  return JSON.parse(readFileSync(resolve(import.meta.dirname, '../../fixtures', name), 'utf8')) as Content;
}

/**
 * What is on a phone that has been in use: the made-up workshop with every run that made it, as the tasks of today keep them; the
 * paused runs of the first version and what its tasks ended in; an afternoon in a real browser (strips, a blind test, a search for
 * proportions); and one photo. The store has to be the one in memory.
 */
export async function wholeBackup(): Promise<Content> {
  const { setUpDemo } = await import('../../../src/app/demo/setUp');
  await setUpDemo();
  const { makeBackup } = await import('../../../src/records/backup/backup');
  const demo = JSON.parse(await (await makeBackup()).text.text()) as Content;
  const shown = demo.records.find(({ kind }) => kind === 'vial')!;
  const all = [fixture('backups/v1.json'), fixture('paused/backup.json'), fixture('afternoon/backup.json'), demo];
  const records = [...all.flatMap((one) => one.records), ...photoOf(String(shown['id']))];
  const events = all.flatMap((one) => one.events);
  return {
    records: [...new Map(records.map((one) => [one['id'], one])).values()],
    events: [...new Map(events.map((one) => [`${String(one['run'])} ${String(one['seq'])}`, one])).values()],
  };
}

/** A photo of a thing: its record, and the smallest picture. */
function photoOf(id: string): Content['records'] {
  const envelope = { v: 1, made: '2026-05-04T10:00:00.000Z', from: [] };
  const facts = { of: id, taken: '2026-05-04T10:00:00.000Z', width: 1, height: 1, bytes: 4, picture: 'the-picture' };
  return [
    { ...envelope, id: 'the-photo', kind: 'photo', ...facts },
    { ...envelope, id: 'the-picture', kind: 'picture', type: 'image/jpeg', data: '/9j/2Q==' },
  ];
}
