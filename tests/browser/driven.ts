/** A browser of another engine, driven by the few WebDriver commands (W3C) that a walk needs. */
export interface Driven {
  go(url: string): Promise<void>;
  /** Runs a script in the page; its returned value comes back. */
  run<T>(script: string, ...args: unknown[]): Promise<T>;
  /** Clicks what the selector finds, optionally the first whose text contains `text`; waits for it. */
  click(selector: string, text?: string): Promise<void>;
  type(selector: string, text: string): Promise<void>;
  /** Types a line with real keys into whatever has the focus, with so many ms between them, and ends it with Enter. */
  press(line: string, delay: number): Promise<void>;
  /** Waits until the text of what the selector finds matches. */
  see(selector: string, pattern: RegExp): Promise<void>;
  close(): Promise<void>;
}

/** What the engine's own protocol has to bring; elements by their WebDriver id. */
interface Commands {
  go(url: string): Promise<unknown>;
  script(script: string, args: unknown[]): Promise<unknown>;
  click(id: string): Promise<unknown>;
  clear(id: string): Promise<unknown>;
  keys(id: string, text: string): Promise<unknown>;
  actions(actions: readonly object[]): Promise<unknown>;
  close(): Promise<void>;
}

const ENTER = '\uE007'; // as WebDriver writes it

const find = `
  const found = [...document.querySelectorAll(arguments[0])].find((e) => e.textContent.includes(arguments[1]));
  return found ? [found, JSON.stringify(found.getBoundingClientRect())] : null;`;

export function driven(commands: Commands): Driven {
  const run = async <T>(script: string, ...args: unknown[]) => (await commands.script(script, args)) as T;
  const shown = () => run<string>('return location.hash + " " + document.body.innerText.slice(0, 500)');
  const sure = <T>(work: () => Promise<T>, wanted: string) =>
    until(work).catch(async (error) => Promise.reject(new Error(`${wanted}: ${error}; the page is ${await shown()}`)));
  /** The id of what is found, once it stands still: a driver's click does not wait for that. */
  const idOf = (selector: string, text = '') => {
    let before = '';
    return sure(async () => {
      const found = await run<[object, string] | null>(find, selector, text);
      const still = found?.[1] === before;
      before = found?.[1] ?? '';
      return found && still ? (Object.values(found[0])[0] as string) : null;
    }, `${selector} with "${text}"`);
  };
  return {
    go: async (url) => void (await commands.go(url)),
    run,
    click: async (selector, text) => void (await commands.click(await idOf(selector, text))),
    async type(selector, text) {
      const id = await idOf(selector);
      await commands.clear(id);
      await commands.keys(id, text);
    },
    press: async (line, delay) => {
      const keys = [...line, ENTER].flatMap((value) => [
        { type: 'keyDown', value },
        { type: 'keyUp', value },
        { type: 'pause', duration: delay },
      ]);
      await commands.actions([{ type: 'key', id: 'scale', actions: keys }]);
    },
    see: async (selector, pattern) =>
      void (await sure(async () => {
        const text = await run<string>('return document.querySelector(arguments[0])?.textContent ?? ""', selector);
        return pattern.test(text ?? '');
      }, `${selector} like ${pattern}`)),
    close: commands.close,
  };
}

/** Waits until the work gives something, and hands it back. */
export async function until<T>(work: () => T | Promise<T>, ms = 60_000): Promise<NonNullable<T>> {
  for (const end = Date.now() + ms; ;) {
    const found = await work();
    if (found) return found as NonNullable<T>;
    if (Date.now() > end) throw new Error(`waited ${ms} ms in vain`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}
