import type { Page } from 'playwright-core';

type Prepare = (page: Page) => Promise<void>;

interface Stored {
  readonly id: string;
  readonly kind: string;
  readonly archived?: boolean;
}

/** Every page that is no run: name, hash, and what is done there before it is looked at. */
export async function pagesOf(page: Page): Promise<(readonly [name: string, hash: string, prepare?: Prepare])[]> {
  const records = (await everyRecord(page)).filter(({ kind }) => kind !== 'settings');
  const kinds = [...new Set(records.map(({ kind }) => kind))];
  const first = (kind: string) => records.find((record) => record.kind === kind)!.id;
  return [
    ['Bench', '#/'],
    ['Shelf', '#/shelf'],
    ['Shelf, found', '#/shelf/find/card'],
    ['Shelf, found nothing', '#/shelf/find/qqqqqq'],
    ...['due', 'shopping', 'archived', 'vial', 'bottle'].map((list) => [`Shelf ${list}`, `#/shelf/${list}`] as const),
    ['Book', '#/book'],
    ['Settings', '#/settings'],
    ['Settings, a key is taught', '#/settings', teachKey],
    ['Keeping', '#/keeping'],
    ['Different on two devices', '#/apart'],
    ['Two devices', '#/devices'],
    ['Two devices, a code', '#/devices', showCode],
    ['Scan', '#/scan'],
    ['Labels, picking', '#/labels'],
    ['Labels', `#/labels/${[first('vial'), first('bottle')].join(',')}`],
    ...['batch', 'formula']
      .filter((kind) => kinds.includes(kind))
      .map((kind) => [`Sheet of a ${kind}`, `#/${kind === 'batch' ? 'sheet' : kind}/${first(kind)}`] as const),
    ...kinds.flatMap((kind) =>
      pagesUnder(kind).map((sub) => [`record ${kind} ${sub}`, `#/record/${first(kind)}/${sub}`] as const),
    ),
    ['Something of the catalogue', '#/shelf/find/limonene', openCatalogue],
  ];
}

function pagesUnder(kind: string): string[] {
  const stocked = ['vial', 'bottle', 'supply'].includes(kind) ? ['weigh', 'edit', 'how/left'] : [];
  const traced = ['vial', 'formula', 'batch'].includes(kind) ? ['trace', 'again', 'paper'] : [];
  const made = kind === 'batch' ? ['measure/brix', 'mend', 'fill', 'trial', 'prices'] : [];
  return ['', 'how/0', ...stocked, ...traced, ...made];
}

async function openCatalogue(page: Page): Promise<void> {
  await page.locator('.entry', { hasText: /./ }).last().click();
}

async function teachKey(page: Page): Promise<void> {
  await page.locator('fieldset', { hasText: 'Foot switch' }).locator('label.choice', { hasText: 'On' }).click();
  await page.getByRole('button', { name: 'Next step' }).click();
  await page.getByText('Press your foot switch').waitFor();
  await page.keyboard.press('q');
  await page.getByText('Heard Q').waitFor();
}

async function showCode(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Show a code' }).click();
  await page.locator('.pair-code').waitFor();
}

/** All records in the page's store. */
export function everyRecord(page: Page): Promise<Stored[]> {
  return page.evaluate(
    () =>
      new Promise<Stored[]>((resolve) => {
        const opening = indexedDB.open('minim');
        opening.onsuccess = () => {
          const reading = opening.result.transaction('records').objectStore('records').getAll();
          reading.onsuccess = () => {
            opening.result.close();
            resolve(reading.result as Stored[]);
          };
        };
      }),
  );
}
