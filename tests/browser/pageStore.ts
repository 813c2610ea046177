import type { Page } from 'playwright-core';

/** Puts records into the store of an open page as they are; the page shows them once it is loaded again. */
export function putRecords(page: Page, records: readonly object[]): Promise<void> {
  return page.evaluate(
    (all) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('minim');
        opening.onsuccess = () => {
          const writing = opening.result.transaction('records', 'readwrite');
          for (const record of all) writing.objectStore('records').put(record);
          writing.onerror = () => reject(writing.error);
          writing.oncomplete = () => (opening.result.close(), resolve());
        };
      }),
    records,
  );
}

/** All records of a kind in the store of an open page, oldest first. */
export function storedOf<T>(page: Page, kind: string): Promise<T[]> {
  return page.evaluate(
    (name) =>
      new Promise<T[]>((resolve) => {
        const opening = indexedDB.open('minim');
        opening.onsuccess = () => {
          const reading = opening.result.transaction('records').objectStore('records').index('kind').getAll(name);
          reading.onsuccess = () => (opening.result.close(), resolve(reading.result as T[]));
        };
      }),
    kind,
  );
}
