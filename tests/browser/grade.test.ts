import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { AnyRecord } from '../../src/records/kind/kinds';
import { pipette } from '../tasks/count/countShelf';
import { fitShelf } from '../workshop/drinkable/gradeShelf';
import { shelve } from './benchRecords';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;

const open = async (...parts: string[]) => {
  await phone.page.goto(`${site.url}#/${parts.join('/')}`);
  return hand(phone.page);
};
const chips = () => phone.page.locator('.thing-words .smell-only').allTextContents();
const section = (title: string) => phone.page.locator('section', { has: phone.page.locator('h2', { hasText: title }) });

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  await phone.page.goto(site.url);
  await phone.page.locator('.tasks .card').first().waitFor();
  await shelve(phone.page, [...fitShelf(), ...pipette] as AnyRecord[]);
  await phone.page.locator('.tasks .card').first().waitFor();
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

describe('a bottle of solvent turns out to be denatured while drops of it are counted into a drink', () => {
  test('one drop falls, and the run is paused', async () => {
    const h = await open('record', 'f');
    await h.tap('Count drops');
    await h.slot('purpose', 'All of it into one drink');
    await h.slot('ppm', '20');
    await h.slot('drinkMl', '200');
    await phone.page.locator('.plan-line .share').first().waitFor();
    await h.done();
    await phone.page.locator('.pad').waitFor();
    await h.drops(1);
    await hand(phone.page).pause();
    await phone.page.locator('.paused').waitFor();
  });

  test('it is marked smell only, with a reason, and what was made of it is there to be labelled again', async () => {
    const h = await open('record', 'pack');
    await h.more('Mark smell only');
    await phone.page.locator('.actions .main').tap();
    await phone.page.getByText('“Why?”: choose one.').waitFor();
    await phone.page.locator('label.choice', { hasText: 'denatured or isopropyl alcohol' }).tap();
    await phone.page.locator('.actions .main').tap();
    await section('Relabel these').waitFor();
    expect(await chips()).toContain('Smell only');
    expect(await section('Relabel these').locator('.code').allTextContents()).toEqual(
      expect.arrayContaining(['CARD 1 % w/w', 'LOW 1 % w/w', 'T1']),
    );
    expect(await section('Drinks that it is in').locator('b').allTextContents()).toEqual(['tonic']);
    expect(await phone.page.getByRole('button', { name: 'Mark smell only' }).count()).toBe(0);
    await h.more('Change');
    await phone.page.locator('.form').waitFor();
    expect(await phone.page.getByText('May it go into a drink?').count()).toBe(0);
    await phone.page.goBack();
    await section('Relabel these').locator('.entry', { hasText: 'LOW' }).tap();
    await phone.page.locator('svg', { hasText: 'SMELL ONLY' }).first().waitFor();
  });

  test('the Bench counts its vials, and the run stops with one sentence and a way on', async () => {
    const h = await open();
    await phone.page.locator('.bench .chip', { hasText: 'smell only ×4' }).waitFor();
    await h.tap('Resume');
    await h.sees(/^Stop: .+ is smell only now\.$/);
    expect(await phone.page.locator('.pad').count()).toBe(0);
    await phone.page.locator('.actions .main').tap();
    await phone.page.locator('[role=alert]', { hasText: 'denatured or isopropyl alcohol' }).waitFor();
  });

  test('gone on with to smell, the drop is still there, and the vial is smell only', async () => {
    const h = hand(phone.page);
    await h.tap('Continue, to smell only');
    await phone.page.locator('.pad').waitFor();
    expect(await h.count()).toBe(1);
    const target = Number(/Count (\d+) drops/.exec((await phone.page.locator('.say').textContent())!)![1]);
    await h.drops(target - 1);
    expect(await phone.page.locator('.cautions').textContent()).toContain('smell only, it never goes into a drink');
    await h.finish();
    expect(await chips()).toContain('Smell only');
    expect(await phone.page.getByRole('button', { name: 'Dose a drink' }).count()).toBe(0);
  });

  test('the drink that was tasted of it is to be smelled, on its page and in a blind test', async () => {
    await open('record', 'drink');
    await phone.page.getByText('Smell it, do not taste it.').waitFor();
    const h = await open('new', 'blind');
    await h.slot('test', 'Triangle');
    await h.slot('served', 'Someone else');
    await h.tap('Pick from the Shelf');
    const row = phone.page.locator('button[aria-pressed]', { hasText: 'tonic' });
    expect(await row.textContent()).toContain('smell only');
  });

  test('nothing broke on the way', () => expect(phone.complaints).toEqual([]));
});
