import { endedRuns } from '../../records/endedRuns';
import { forget, shelf } from '../../records/shelf';

let settingUp: Promise<boolean> | null = null;

/** Sets the demo workshop up; false, and nothing of it kept, when it could not be. */
export function openDemo(): Promise<boolean> {
  settingUp = setUp();
  return settingUp;
}

async function setUp(): Promise<boolean> {
  try {
    const { setUpDemo } = await import('../demo/setUp');
    await setUpDemo();
    return true;
  } catch (error) {
    await erase().catch(() => {});
    console.warn(error);
    return false;
  }
}

/** Erases everything that is marked as demo, with its runs, once all of it is there; what was made of it by hand stays. */
export async function removeDemo(): Promise<void> {
  await settingUp;
  await erase();
}

async function erase(): Promise<void> {
  const all = [...shelf.records.value.values(), ...(await endedRuns())];
  const ids = all.filter((record) => record.demo).map(({ id }) => id);
  await forget([...new Set(ids)]);
}
