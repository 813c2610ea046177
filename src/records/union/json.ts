/** A JSON value as a text that is the same for the same value, whatever the order of its keys. */
export function inOrder(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}

/** Whether two JSON values are equal, whatever the order of keys. */
export function sameJson(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [inA, inB] = [a, b].map((x) => Object.keys(x).filter((key) => (x as never)[key] !== undefined)) as [
    string[],
    string[],
  ];
  return inA.length === inB.length && inA.every((key) => sameJson((a as never)[key], (b as never)[key]));
}

/** Whether a JSON value is an object and no list. */
export function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
