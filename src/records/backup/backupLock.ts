import { backupFormat, backupVersion } from './backupFile';

/** How a locked backup is locked; it stands in the open in the file and is guarded against change with the rest. */
interface Lock {
  readonly cipher: 'AES-256-GCM';
  readonly key: 'PBKDF2-HMAC-SHA-256';
  readonly rounds: number;
  /** Base64. */
  readonly salt: string;
  readonly nonce: string;
}

const rounds = 600_000; // OWASP, Password Storage Cheat Sheet: at least this many for PBKDF2-HMAC-SHA-256 (from memory)
const mostRounds = 5_000_000; // a file that asks for more would only hang the phone

/** Locks a backup's text with a passphrase: AES-256 in GCM, key from PBKDF2. Gives a file of its own, in JSON. */
export async function lockBackup(text: Blob, passphrase: string): Promise<Blob> {
  const lock: Lock = {
    cipher: 'AES-256-GCM',
    key: 'PBKDF2-HMAC-SHA-256',
    rounds,
    salt: base64(crypto.getRandomValues(new Uint8Array(16))),
    nonce: base64(crypto.getRandomValues(new Uint8Array(12))),
  };
  const key = await keyFrom(passphrase, lock, 'encrypt');
  const data = await crypto.subtle.encrypt(settings(lock), key, await text.arrayBuffer());
  const head = { format: backupFormat, version: backupVersion, lock };
  return new Blob([`${JSON.stringify(head).slice(0, -1)},"data":"`, base64(new Uint8Array(data)), '"}\n']);
}

/** Whether a text is a locked backup. */
export function isLocked(text: string): boolean {
  return text.startsWith(`{"format":"${backupFormat}"`) && text.slice(0, 400).includes('"lock":');
}

/** Opens a locked backup; null when the passphrase is not the one, or a single byte of the file was changed. */
export async function unlockBackup(text: string, passphrase: string): Promise<string | null> {
  try {
    const { lock, data } = JSON.parse(text) as { lock: Lock; data: string };
    if (!(Number.isInteger(lock.rounds) && lock.rounds > 0 && lock.rounds <= mostRounds)) return null;
    const key = await keyFrom(passphrase, lock, 'decrypt');
    return new TextDecoder().decode(await crypto.subtle.decrypt(settings(lock), key, bytesOf(data)));
  } catch {
    return null;
  }
}

/** The lock itself is additional data of the cipher: a file with another lock does not open. */
function settings(lock: Lock): AesGcmParams {
  const { cipher, key, rounds, salt, nonce } = lock;
  const additionalData = new TextEncoder().encode(JSON.stringify([cipher, key, rounds, salt, nonce]));
  return { name: 'AES-GCM', iv: bytesOf(nonce), additionalData };
}

async function keyFrom(passphrase: string, { rounds, salt }: Lock, use: 'encrypt' | 'decrypt'): Promise<CryptoKey> {
  const typed = new TextEncoder().encode(passphrase.normalize('NFC')); // the same letters from every keyboard
  const material = await crypto.subtle.importKey('raw', typed, 'PBKDF2', false, ['deriveKey']);
  const from = { name: 'PBKDF2', hash: 'SHA-256', iterations: rounds, salt: bytesOf(salt) };
  return crypto.subtle.deriveKey(from, material, { name: 'AES-GCM', length: 256 }, false, [use]);
}

function base64(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 0x7ffe) text += btoa(String.fromCharCode(...bytes.subarray(i, i + 0x7ffe))); // a multiple of 3 bytes leaves no padding inside
  return text;
}

function bytesOf(text: string): Uint8Array<ArrayBuffer> {
  const binary = atob(text);
  const bytes = new Uint8Array(binary.length);
  for (let i = 0; i < binary.length; i++) bytes[i] = binary.charCodeAt(i);
  return bytes;
}
