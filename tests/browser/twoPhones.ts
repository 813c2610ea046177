import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { squareCodeOf } from '../../src/ui/label/squareCode';
import { picture } from '../pictures';
import { heldUp, writeFilm } from './film';
import { newProfile, openPhone, type Phone } from './phone';

/** Two phones, each a browser process of its own with a store of its own. */
export interface TwoPhones {
  readonly phones: readonly [Held, Held];
  close(): Promise<string[]>;
}

/** One of them, that may be killed and opened again. */
export class Held {
  readonly #profile = newProfile();
  readonly #url: string;
  readonly #seesCodes: boolean;
  readonly complaints: string[] = [];
  phone!: Phone;

  constructor(url: string, seesCodes: boolean) {
    this.#url = url;
    this.#seesCodes = seesCodes;
  }

  get page(): Page {
    return this.phone.page;
  }

  async open(before?: (page: Page) => Promise<unknown>): Promise<void> {
    if (this.#seesCodes) this.sees('MINIM');
    this.phone = await openPhone(this.#profile.dir, {
      home: this.#url,
      ...(this.#seesCodes && { camera: this.#film() }),
    });
    await before?.(this.page);
    await this.page.goto(this.#url);
    await this.page.locator('.tasks .card').first().waitFor();
  }

  /** What the camera sees from its next opening on: a code on the other screen. */
  sees(code: string): void {
    const { side, dark } = squareCodeOf(code);
    const size = (side + 8) * 5; // modules of 5 px, with their white rim
    const shown = picture(size, size, (x, y) => (dark(Math.floor(x / 5) - 4, Math.floor(y / 5) - 4) ? 0 : 255));
    writeFilm(this.#film(), [{ picture: heldUp(shown, { degrees: 5, scale: 1.5 }), tenths: 5 }]);
  }

  #film(): string {
    return join(this.#profile.dir, 'camera.y4m');
  }

  async kill(): Promise<void> {
    this.complaints.push(...this.phone.complaints);
    await this.phone.kill();
  }

  async end(): Promise<void> {
    this.complaints.push(...this.phone.complaints);
    await this.phone.context.close();
    this.#profile.forget();
  }

  async devices(): Promise<void> {
    await this.page.goto(`${this.#url}#/devices`);
    await this.page.getByRole('heading', { name: 'Two devices' }).waitFor();
  }

  tap(name: string): Promise<void> {
    return this.page.getByRole('button', { name }).tap();
  }

  /** The text of the code that is shown. */
  async shownCode(): Promise<string> {
    return (await this.page.locator('.pair-code').getAttribute('data-code'))!;
  }

  /** Everything that is stored, but for what belongs to this device alone. */
  holds(): Promise<{ records: unknown[]; events: unknown[] }> {
    return this.page.evaluate(async () => {
      const db = await new Promise<IDBDatabase>((resolve) => {
        const asked = indexedDB.open('minim');
        asked.onsuccess = () => resolve(asked.result);
      });
      const all = (name: string) =>
        new Promise<unknown[]>((resolve) => {
          const asked = db.transaction(name).objectStore(name).getAll();
          asked.onsuccess = () => resolve(asked.result as unknown[]);
        });
      const [records, events] = await Promise.all([all('records'), all('events')]);
      db.close();
      return { records, events };
    });
  }
}

/** Opens two phones. With `seeCodes` each has a camera that sees what the test holds before it. */
export async function twoPhones(url: string, { seeCodes = false } = {}): Promise<TwoPhones> {
  const phones = [new Held(url, seeCodes), new Held(url, seeCodes)] as const;
  for (const phone of phones) await phone.open();
  return {
    phones,
    async close() {
      for (const phone of phones) await phone.end();
      return phones.flatMap(({ complaints }) => complaints);
    },
  };
}
