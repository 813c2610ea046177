import { runWithEvents } from '../../records/shelf';
import { fold } from '../engine/fold';
import type { Due, Task } from '../engine/task';

const FURTHEST = 24 * 3600_000; // ms; a timer further ahead would not outlive the page anyway
const timers = new Map<string, ReturnType<typeof setTimeout>>();

/** Whether notifications may be shown: they may, they may not, no one was asked, or this browser has none. */
export type Permission = 'granted' | 'denied' | 'default' | 'none';

/** What the browser says about notifications now. */
export function permission(): Permission {
  return 'Notification' in globalThis ? Notification.permission : 'none';
}

/** What then happens at a moment that is due, in words for the list of what is due; '' when all is well. */
export function permissionWords(now: Permission): string {
  if (now === 'granted') return '';
  const still =
    'With Minim open in front the phone buzzes if it can; else it stays silent, and this list is what reminds you.';
  if (now === 'denied')
    return `Notifications are not permitted. ${still} They can be permitted in the browser’s settings for this site.`;
  if (now === 'none') return `This browser shows no notifications. ${still}`;
  return 'Minim can remind you only while it is open, in front or behind other apps.';
}

/** Asks the person; only after a tap. */
export async function askForReminders(): Promise<void> {
  await Notification.requestPermission();
}

/**
 * Reminds of what a run waits for, once for each moment, as long as the page lives: a web page without a server cannot
 * wake a phone, so the list on the Bench stays the truth. Called again it starts from the run as it then is.
 */
export function remind(run: string, task: Task): void {
  clearTimeout(timers.get(run));
  void duesOf(run, task).then((dues) => {
    const now = Date.now();
    const next = dues.find(({ at }) => at > now);
    if (!next || next.at - now > FURTHEST) return;
    clearTimeout(timers.get(run));
    timers.set(
      run,
      setTimeout(() => void ring(run, task, next), next.at - now),
    );
  });
}

async function duesOf(run: string, task: Task): Promise<readonly Due[]> {
  const there = await runWithEvents(run).catch(() => null);
  return there?.run.open === 1 ? (task.due?.(fold(there.events)) ?? []) : [];
}

async function ring(run: string, task: Task, due: Due): Promise<void> {
  const still = (await duesOf(run, task)).some(({ at, words }) => at === due.at && words === due.words);
  if (still && document.visibilityState === 'visible') navigator.vibrate?.([80, 80, 80]);
  else if (still) await notify(due.words, run);
  remind(run, task);
}

async function notify(words: string, run: string): Promise<void> {
  if (permission() !== 'granted') return;
  const worker = await navigator.serviceWorker?.getRegistration();
  await worker?.showNotification('Minim', { body: `Now: ${words}`, tag: run });
}
