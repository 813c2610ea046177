import { endedRuns, forget, shelf } from '../records/shelf';

/** Sets the demo workshop up; false, and nothing of it kept, when it could not be. */
export async function openDemo(): Promise<boolean> {
  try {
    const { setUpDemo } = await import('./demo/setUp');
    await setUpDemo();
    return true;
  } catch (error) {
    await removeDemo().catch(() => {});
    console.warn(error);
    return false;
  }
}

/** Erases everything that is marked as demo, with its runs; what was made of it by hand stays. */
export async function removeDemo(): Promise<void> {
  const all = [...shelf.records.value.values(), ...(await endedRuns())];
  const ids = all.filter((record) => record.demo).map(({ id }) => id);
  await forget([...new Set(ids)]);
}
