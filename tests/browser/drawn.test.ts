import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import * as actionIcons from '../../src/ui/drawn/actionIcons';
import * as firstIcons from '../../src/ui/drawn/firstIcons';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
const profile = newProfile();
let phone: Phone;
/** The cards as the app draws them while nothing was done: then the tasks say what they would do now. */
let drawn: string;

beforeAll(async () => {
  site = await serve();
  phone = await openPhone(profile.dir, { home: site.url, width: 360, height: 740 });
  await phone.page.goto(`${site.url}#/shelf`);
  await phone.page.locator('.first-run').waitFor();
  await phone.page.evaluate(() => (location.hash = '#/'));
  await phone.page.locator('.tasks .card').first().waitFor();
  drawn = await phone.page.locator('.tasks').evaluate((tasks) => tasks.innerHTML);
  await phone.page.evaluate(() => (location.hash = '#/shelf'));
  await phone.page.getByRole('button', { name: 'Look around a made-up workshop' }).tap();
  await phone.page.locator('.demo-notice').waitFor();
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

/** How far the icons of round buttons lie from the middle of their circle, px. */
const offCentre = (buttons: Locator) =>
  buttons.evaluateAll((all) =>
    all.map((button) => {
      const [circle, icon] = [button, button.querySelector('.icon')!].map((one) => one.getBoundingClientRect());
      const middle = ({ left, top, width, height }: DOMRect) => [left + width / 2, top + height / 2] as const;
      const [x, y] = middle(circle!);
      const [iconX, iconY] = middle(icon!);
      return Math.hypot(iconX - x, iconY - y);
    }),
  );

test('the cards and tabs in the page are those that the app draws, icons and all', async () => {
  const { page } = phone;
  const html = await (await fetch(site.url)).text();
  const there = /<div class="tasks">(.*?)<\/div>/s.exec(html)![1]!.replaceAll('"/>', '"></path>'); // as a browser writes it
  expect(there).toBe(drawn);
  await page.evaluate(() => (location.hash = '#/'));
  await page.locator('.tasks .card').first().waitFor();
  expect(await page.locator('.tasks .icon').count()).toBe(8);
  expect(await page.locator('.tabs .icon').count()).toBe(3);
});

test('every icon is in the middle of its box, and within it', async () => {
  const found = await phone.page.evaluate(
    (icons) =>
      Object.entries(icons).map(([name, d]) => {
        const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
        const path = document.createElementNS('http://www.w3.org/2000/svg', 'path');
        path.setAttribute('d', d);
        document.body.append(svg);
        svg.append(path);
        const { x, y, width, height } = path.getBBox();
        svg.remove();
        return { name, x, y, right: x + width, bottom: y + height };
      }),
    { ...firstIcons, ...actionIcons },
  );
  for (const { name, x, y, right, bottom } of found) {
    expect(Math.abs((x + right) / 2 - 12), `${name} across`).toBeLessThanOrEqual(0.5);
    expect(Math.abs((y + bottom) / 2 - 12), `${name} down`).toBeLessThanOrEqual(0.5);
    expect(Math.min(x, y), name).toBeGreaterThanOrEqual(1.5);
    expect(Math.max(right, bottom), name).toBeLessThanOrEqual(22.5);
  }
});

test('icons stand in the middle of their circles', async () => {
  for (const hash of ['#/', '#/shelf', '#/settings', '#/labels']) {
    await phone.page.evaluate((hash) => (location.hash = hash), hash);
    await phone.page.locator('.round .icon').first().waitFor();
    for (const distance of await offCentre(phone.page.locator('.round:has(.icon)'))) expect(distance).toBeLessThan(0.6);
  }
});

test('what is written on a drawn label fits on it in the letters of the phone, and is all of it', async () => {
  const { page } = phone;
  await page.evaluate(() => (location.hash = '#/shelf/vial'));
  const rows = page.locator('.shelf-entry .entry');
  await rows.first().waitFor();
  const isWhole = async () =>
    (await rows.count()) > 3 && (await rows.count()) === (await rows.locator('.drawn.vial').count());
  await expect.poll(isWhole).toBe(true); // a list is drawn in portions
  const count = await rows.count();
  for (let i = 0; i < count; i++) {
    await rows.nth(i).tap();
    const label = page.locator('.record .thing-picture .drawn');
    await label.waitFor();
    await page.evaluate(() => document.fonts.ready);
    const { inside, texts, box } = await label.evaluate((svg) => {
      const paper = svg.querySelector<SVGGraphicsElement>('rect.label')!.getBBox();
      const lines = [...svg.querySelectorAll<SVGGraphicsElement>(':scope > text')];
      const boxes = lines.map((line) => line.getBBox());
      const inside = boxes.every(({ x, width }) => x >= paper.x && x + width <= paper.x + paper.width);
      return {
        inside,
        texts: lines.map(({ textContent }) => textContent),
        box: [paper.x, paper.width, ...boxes.map(({ width }) => width)],
      };
    });
    expect(inside, `${texts} in ${box}`).toBe(true);
    expect(await page.locator('.record .thing-code').textContent()).toContain(texts.join(' '));
    await page.evaluate(() => history.back());
    await rows.first().waitFor();
  }
  expect(phone.complaints).toEqual([]);
});
