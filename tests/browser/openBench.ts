import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { AnyRecord } from '../../src/records/kind/kinds';
import { shelve } from './benchRecords';
import { newProfile, openPhone, serve, type Phone } from './phone';

interface Asked {
  width?: number;
  height?: number;
  /** What is on the Shelf already. */
  records?: readonly AnyRecord[];
  /** Done with the page before Minim is opened. */
  before?: (page: Page) => Promise<unknown>;
}

export interface OpenBench {
  url: string;
  phone: Phone;
  /** Ends the browser and forgets its profile; nothing may have complained meanwhile. */
  close: () => Promise<void>;
}

/** A phone of its own for the tests of one file, with Minim open on the Bench. */
export async function openBench({ records = [], before, ...size }: Asked = {}): Promise<OpenBench> {
  const site = await serve();
  const profile = newProfile();
  const phone = await openPhone(profile.dir, { home: site.url, ...size });
  const drawn = () => phone.page.locator('.tasks .card').first().waitFor();
  await before?.(phone.page);
  await phone.page.goto(site.url);
  await drawn();
  if (records.length > 0) {
    await shelve(phone.page, records);
    await drawn();
  }
  const close = async () => {
    await phone.context.close();
    await site.stop();
    profile.forget();
    expect(phone.complaints).toEqual([]);
  };
  return { url: site.url, phone, close };
}
