import { spawn } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import net from 'node:net';
import { join } from 'node:path';
import { driven, until, type Driven } from './driven';

const QUIET = [
  'datareporting.policy.dataSubmissionEnabled',
  'app.update.enabled',
  'browser.shell.checkDefaultBrowser',
  'network.captive-portal-service.enabled',
  'network.connectivity-service.enabled',
  'browser.safebrowsing.malware.enabled',
  'extensions.update.enabled',
  'app.normandy.enabled',
];

/** Opens a headless Firefox on a profile folder, driven through Marionette, the remote protocol built into it. */
export async function openFirefox(binary: string, profile: string): Promise<Driven> {
  const prefs = [...QUIET.map((name) => `user_pref("${name}", false);`), 'user_pref("marionette.port", 0);'];
  writeFileSync(join(profile, 'user.js'), prefs.join('\n'));
  const child = spawn(
    binary,
    ['--headless', '--no-remote', '--marionette', '--profile', profile, '--width', '390', '--height', '844'],
    {
      env: { ...process.env, HOME: profile, MOZ_HEADLESS_WIDTH: '390', MOZ_HEADLESS_HEIGHT: '844' },
      stdio: 'ignore',
    },
  );
  const portFile = join(profile, 'MarionetteActivePort');
  await until(() => existsSync(portFile) && readFileSync(portFile, 'utf8') !== '');
  const socket = await until(() => dial(Number(readFileSync(portFile, 'utf8'))));
  const command = await connect(socket);
  await command('WebDriver:NewSession', { capabilities: {} });
  await command('WebDriver:SetTimeouts', { script: 30_000, pageLoad: 30_000, implicit: 0 });
  return driven({
    go: (url) => command('WebDriver:Navigate', { url }),
    script: async (script, args) =>
      (await command('WebDriver:ExecuteScript', { script, args, newSandbox: false, sandbox: null })).value,
    click: (id) => command('WebDriver:ElementClick', { id }),
    clear: (id) => command('WebDriver:ElementClear', { id }),
    keys: (id, text) => command('WebDriver:ElementSendKeys', { id, text }),
    actions: (actions) => command('WebDriver:PerformActions', { actions }),
    async close() {
      child.kill('SIGKILL');
      await new Promise((resolve) => child.once('exit', resolve));
    },
  });
}

type Command = (name: string, parameters: object) => Promise<{ value: unknown }>;

/** A connection, or null while no one listens yet. */
function dial(port: number): Promise<net.Socket | null> {
  const socket = net.connect(port, '127.0.0.1');
  return new Promise((resolve) => {
    socket.once('connect', () => resolve(socket));
    socket.once('error', () => resolve(null));
  });
}

/** One TCP line of Marionette: every message is its length, a colon, and JSON: [0, id, name, parameters] there, [1, id, error, result] back. */
async function connect(socket: net.Socket): Promise<Command> {
  const waiting = new Map<number, { resolve: (result: never) => void; reject: (error: Error) => void }>();
  let buffer = Buffer.alloc(0);
  let greeted: () => void;
  const hello = new Promise<void>((resolve) => (greeted = resolve));
  socket.on('data', (data) => {
    buffer = Buffer.concat([buffer, data]);
    for (let colon; (colon = buffer.indexOf(':')) > 0;) {
      const length = Number(buffer.subarray(0, colon));
      if (buffer.length < colon + 1 + length) return;
      const message = JSON.parse(buffer.subarray(colon + 1, colon + 1 + length).toString());
      buffer = buffer.subarray(colon + 1 + length);
      if (!Array.isArray(message)) greeted();
      else if (message[2]) waiting.get(message[1])?.reject(new Error(`${message[2].error}: ${message[2].message}`));
      else waiting.get(message[1])?.resolve(message[3] as never);
    }
  });
  await hello;
  let id = 0;
  return (name, parameters) =>
    new Promise((resolve, reject) => {
      waiting.set(++id, { resolve, reject });
      const text = JSON.stringify([0, id, name, parameters]);
      socket.write(`${Buffer.byteLength(text)}:${text}`);
    });
}
