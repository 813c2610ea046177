/** Resolves when the page has nothing else to do, or after that many ms. */
export function idle(atMost: number): Promise<void> {
  return new Promise((resolve) => {
    if (typeof requestIdleCallback === 'function') requestIdleCallback(() => resolve(), { timeout: atMost });
    else setTimeout(resolve, 300); // Safari has no such callback
  });
}
