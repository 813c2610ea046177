import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { codeTextFor, readCode } from '../../src/core/pairing/description';
import { newProfile, openPhone, serve } from './phone';
import { twoPhones, type Held, type TwoPhones } from './twoPhones';

let site: { url: string; stop: () => Promise<void> };
let two: TwoPhones;

beforeAll(async () => {
  site = await serve();
  two = await twoPhones(site.url);
});
beforeEach(async () => {
  for (const { page } of two.phones) await page.goto('about:blank');
  for (const held of two.phones) await held.devices();
});
afterAll(async () => {
  expect(await two.close()).toEqual([]);
  await site.stop();
});

const paste = (held: Held, code: string) => held.page.getByLabel('Paste its code here').fill(code);
const said = (held: Held, words: string) => held.page.getByText(words).waitFor();

describe('pairing is refused in one sentence, and goes on', () => {
  test('where a code is not one of Minim, or the wrong one of the two', async () => {
    const [phone, tablet] = two.phones;
    await phone.tap('Show a code');
    await tablet.tap('Show a code');
    const [code, other] = [await phone.shownCode(), await tablet.shownCode()];
    await phone.tap('Scan its answer');
    await paste(phone, 'HTTPS://SOMETHING.EXAMPLE/ELSE');
    await said(phone, 'This is not the code of another device.');
    await paste(phone, other);
    await said(phone, 'Both devices show their first code.');
    await paste(phone, codeTextFor({ ...readCode(other), type: 'answer', answers: 7 }));
    await said(phone, 'This code answers an older one.');
    await tablet.tap('Stop');
    await tablet.tap('Scan the other’s code');
    await paste(tablet, codeTextFor({ ...readCode(code), type: 'answer' }));
    await said(tablet, 'That code is an answer.');
    await paste(tablet, code); // and the right one is taken all the same
    const answer = await tablet.shownCode();
    await paste(phone, answer);
    for (const held of two.phones) await held.page.getByText('hold the same now').waitFor();
    for (const held of two.phones) await held.tap('Done');
  });

  test('where the two do not find each other: the file is the way then', async () => {
    const [phone, tablet] = two.phones;
    await phone.tap('Show a code');
    const code = await phone.shownCode();
    await tablet.tap('Scan the other’s code');
    await paste(tablet, code);
    const answer = readCode(await tablet.shownCode());
    await tablet.tap('Stop');
    await phone.tap('Scan its answer');
    const elsewhere = answer.places.map(({ port }) => ({ address: '198.51.100.7', port })); // RFC 5737: no one’s
    await paste(phone, codeTextFor({ ...answer, places: elsewhere }));
    await said(phone, 'The two devices look for each other…');
    await said(phone, 'The two devices did not find each other.');
    await phone.page.getByRole('button', { name: 'Save a file for the other device' }).waitFor();
  });

  test('where the camera may not be used, or there is none', async () => {
    const [phone] = two.phones;
    await phone.tap('Scan the other’s code');
    await said(phone, 'There is no camera here. Copy the code as text on the other device');
    await phone.tap('Back');
    const profile = newProfile();
    const refused = await openPhone(profile.dir, { home: site.url, camera: 'refused' });
    await refused.page.goto(`${site.url}#/devices`);
    await refused.page.getByRole('button', { name: 'Show a code' }).tap();
    await refused.page.locator('.pair-code').waitFor(); // a code is made all the same
    await refused.page.getByRole('button', { name: 'Scan its answer' }).tap();
    await refused.page.getByText('Minim may not use the camera. Allow it in the settings of the browser').waitFor();
    await refused.context.close();
    profile.forget();
  });
});

describe('a file of the other device', () => {
  test('that was opened with the installed app is looked into, and joined with one tap', async () => {
    const [phone, tablet] = two.phones;
    const [file] = await Promise.all([
      phone.page.waitForEvent('download'),
      phone.tap('Save a file for the other device'),
    ]);
    expect(file.suggestedFilename()).toMatch(/^minim-backup-.*\.minim$/);
    await tablet.page.addInitScript(() => {
      const queue = { setConsumer: (take: unknown) => Object.assign(window, { opensFile: take }) };
      Object.defineProperty(window, 'launchQueue', { value: queue });
    });
    await tablet.page.goto(site.url);
    await tablet.page.reload();
    await tablet.page.waitForFunction(() => 'opensFile' in window);
    const text = JSON.stringify({
      format: 'minim-backup',
      version: 1,
      made: '2026-05-04T10:00:00.000Z',
      records: [
        {
          id: '01a20000-0000-7000-8000-000000000001',
          kind: 'dropper',
          v: 1,
          made: '2026-05-04T10:00:00.000Z',
          from: [],
          name: 'glass dropper',
          tip: 'glass, 1 mm',
        },
      ],
      events: [],
    });
    await tablet.page.evaluate((given) => {
      const getFile = async () => new File([given], 'minim-backup-2026-05-04.minim');
      (window as unknown as { opensFile: (launch: object) => void }).opensFile({ files: [{ getFile }] });
    }, text);
    await tablet.page.getByRole('heading', { name: 'Two devices' }).waitFor();
    await tablet.tap('Restore');
    await tablet.page.getByText('Restored.').waitFor();
    expect((await tablet.holds()).records).toContainEqual(expect.objectContaining({ name: 'glass dropper' }));
  });
});
