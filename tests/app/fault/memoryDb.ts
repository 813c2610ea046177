/** The store of a phone in memory, behind the part of idb that Minim uses: what is put there is what a page reads. */
type Key = string | readonly [string, number];
interface Range {
  readonly lower?: Key;
  readonly upper?: Key;
  readonly open: boolean;
}
type Row = Readonly<Record<string, unknown>>;

const keyPaths: Readonly<Record<string, (row: Row) => Key>> = {
  records: (row) => row['id'] as string,
  events: (row) => [row['run'], row['seq']] as unknown as Key,
};

function compare(a: unknown, b: unknown): number {
  if (Array.isArray(a) && Array.isArray(b)) return compare(a[0], b[0]) || compare(a[1], b[1]);
  return a === b ? 0 : (a as string) < (b as string) ? -1 : 1;
}

function isIn(key: Key, { lower, upper, open }: Range): boolean {
  const fromLower = lower === undefined ? 1 : compare(key, lower);
  return (fromLower > 0 || (fromLower === 0 && !open)) && (upper === undefined || compare(key, upper) <= 0);
}

class Store {
  private readonly rows = new Map<string, [Key, unknown]>();
  private readonly name: string;
  constructor(name: string) {
    this.name = name;
  }
  private sorted(range?: Range): [Key, unknown][] {
    const all = [...this.rows.values()].filter(([key]) => !range || isIn(key, range));
    return all.sort(([a], [b]) => compare(a, b));
  }
  get = async (key: Key) => this.rows.get(String(key))?.[1];
  getAll = async (range?: Range, count = Infinity) =>
    this.sorted(range)
      .map(([, row]) => row)
      .slice(0, count);
  put = async (row: unknown, key?: Key) => {
    const at = key ?? keyPaths[this.name]!(row as Row);
    this.rows.set(String(at), [at, row]);
  };
  add = this.put;
  delete = async (key: Key | Range) => {
    const gone = typeof key === 'object' && !Array.isArray(key) ? this.sorted(key as Range).map(([one]) => one) : [key];
    for (const one of gone) this.rows.delete(String(one));
  };
  clear = async () => this.rows.clear();
  index = (name: string) => {
    const of = () => this.sorted().filter(([, row]) => (row as Row)[name] !== undefined);
    return {
      getAll: async (value?: unknown) =>
        of().flatMap(([, row]) => (value === undefined || (row as Row)[name] === value ? [row] : [])),
      getAllKeys: async (value?: unknown) =>
        of().flatMap(([key, row]) => (value === undefined || (row as Row)[name] === value ? [key] : [])),
      openKeyCursor: async () => {
        const keys = [...new Set(of().map(([, row]) => (row as Row)[name]))].sort(compare);
        const at = (i: number): object | null =>
          i < keys.length ? { key: keys[i], continue: async () => at(i + 1) } : null;
        return at(0);
      },
    };
  };
}

const stores = new Map(['records', 'events', 'meta'].map((name) => [name, new Store(name)]));
const store = (name: string) => stores.get(name)!;

const db = {
  get: (name: string, key: Key) => store(name).get(key),
  getAll: (name: string, range?: Range, count?: number) => store(name).getAll(range, count),
  put: (name: string, row: unknown, key?: Key) => store(name).put(row, key),
  getAllFromIndex: (name: string, index: string, value: unknown) => store(name).index(index).getAll(value),
  getAllKeysFromIndex: (name: string, index: string, value: unknown) => store(name).index(index).getAllKeys(value),
  transaction: (name: string | readonly string[]) => ({
    objectStore: store,
    store: store(typeof name === 'string' ? name : name[0]!),
    done: Promise.resolve(),
    abort: () => {},
  }),
  close: () => {},
};

export const openDB = async () => db;
export const deleteDB = async () => void stores.forEach((one) => void one.clear());

Object.assign(globalThis, {
  IDBKeyRange: {
    bound: (lower: Key, upper: Key, open = false): Range => ({ lower, upper, open }),
    lowerBound: (lower: Key, open = false): Range => ({ lower, open }),
  },
});
