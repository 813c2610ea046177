import { spawn } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import net from 'node:net';
import { join } from 'node:path';
import { driven, until, type Driven } from './driven';

const folders = ['x86_64-linux-gnu', 'aarch64-linux-gnu'].map((machine) => `/usr/lib/${machine}/webkit2gtk-4.1`);
const browser = folders.map((folder) => join(folder, 'MiniBrowser')).find((path) => existsSync(path));

/** Whether WebKitGTK can be driven here: Debian's webkit2gtk-driver and xvfb. */
export const hasWebkit = Boolean(browser) && existsSync('/usr/bin/WebKitWebDriver') && existsSync('/usr/bin/Xvfb');

/** Opens WebKitGTK on a screen of its own through WebKitWebDriver; its data last as long as it is open. */
export async function openWebkit(home: string): Promise<Driven> {
  const display = `:${20_000 + (process.pid % 10_000)}`;
  const screen = spawn('Xvfb', [display, '-screen', '0', '800x1000x24', '-nolisten', 'tcp'], { stdio: 'ignore' });
  await until(() => existsSync(`/tmp/.X11-unix/X${display.slice(1)}`));
  const port = await freePort();
  const env = { ...process.env, DISPLAY: display, HOME: home, GDK_BACKEND: 'x11', LIBGL_ALWAYS_SOFTWARE: '1' };
  const own = Object.fromEntries(['DATA', 'CACHE', 'CONFIG'].map((what) => [`XDG_${what}_HOME`, join(home, what)]));
  const runtime = join(home, 'run');
  mkdirSync(runtime, { mode: 0o700 });
  const driver = spawn('WebKitWebDriver', [`--port=${port}`, '--host=127.0.0.1'], {
    env: { ...env, ...own, XDG_RUNTIME_DIR: runtime, WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1', NO_AT_BRIDGE: '1' },
    stdio: 'ignore',
    detached: true,
  });
  const base = `http://127.0.0.1:${port}`;
  await until(() => fetch(`${base}/status`).catch(() => null));
  const options = { 'webkitgtk:browserOptions': { binary: browser, args: ['--automation'] } };
  const { sessionId } = (await post(`${base}/session`, { capabilities: { alwaysMatch: options } })) as {
    sessionId: string;
  };
  const session = (path: string, body: object = {}) => post(`${base}/session/${sessionId}/${path}`, body);
  await session('timeouts', { script: 90_000 }); // the service worker is ready when all its files are there
  return driven({
    go: (url) => session('url', { url }),
    script: (script, args) => session('execute/sync', { script, args }),
    click: (id) => session(`element/${id}/click`),
    clear: (id) => session(`element/${id}/clear`),
    keys: (id, text) => session(`element/${id}/value`, { text }),
    actions: (actions) => session('actions', { actions }),
    async close() {
      await fetch(`${base}/session/${sessionId}`, { method: 'DELETE' });
      process.kill(-driver.pid!, 'SIGKILL');
      screen.kill();
    },
  });
}

async function post(url: string, body: object): Promise<unknown> {
  const response = await fetch(url, { method: 'POST', body: JSON.stringify(body) });
  const { value } = (await response.json()) as { value: { error?: string; message?: string } };
  if (!response.ok) throw new Error(`${value.error}: ${value.message}`);
  return value;
}

function freePort(): Promise<number> {
  const server = net.createServer();
  return new Promise((resolve) =>
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as net.AddressInfo;
      server.close(() => resolve(port));
    }),
  );
}
