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

/** What the indexes of records go by. */
const indexed: Readonly<Record<string, (row: Row) => unknown>> = {
  kind: (row) => row['kind'],
  open: (row) => row['open'],
  ended: (row) => (typeof row['endedAt'] === 'string' ? [row['endedAt'], row['id']] : undefined),
  discarded: (row) => (typeof row['discarded'] === 'string' ? [row['discarded'], row['id']] : undefined),
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
  /** Rows in the order of an index, with what they stand there by. */
  private by(name: string, asked?: unknown): { by: Key; key: Key; row: Row }[] {
    const all = this.sorted().flatMap(([key, row]) => {
      const by = indexed[name]!(row as Row) as Key | undefined;
      return by === undefined ? [] : [{ by, key, row: row as Row }];
    });
    const isAsked = (by: Key) => asked == null || (isRange(asked) ? isIn(by, asked) : by === asked);
    return all.filter(({ by }) => isAsked(by)).sort((a, b) => compare(a.by, b.by) || compare(a.key, b.key));
  }
  index = (name: string) => ({
    getAll: async (asked?: unknown, count = Infinity) => this.by(name, asked).map(({ row }) => row).slice(0, count), // prettier-ignore
    getAllKeys: async (asked?: unknown) => this.by(name, asked).map(({ key }) => key),
    openKeyCursor: async () => {
      const keys = [...new Set(this.by(name).map(({ by }) => by))];
      return cursorOver(keys.map((key) => ({ key })));
    },
    openCursor: async (_: null, way: 'prev') => {
      const all = this.by(name).map(({ by, row }) => ({ key: by, value: row }));
      return cursorOver(way === 'prev' ? all.reverse() : all);
    },
  });
}

function isRange(asked: unknown): asked is Range {
  return typeof asked === 'object' && asked !== null && 'open' in asked;
}

function cursorOver(all: readonly object[]): object | null {
  const at = (i: number): object | null => (i < all.length ? { ...all[i], continue: async () => at(i + 1) } : null);
  return at(0);
}

const stores = new Map(['records', 'events', 'meta'].map((name) => [name, new Store(name)]));
const store = (name: string) => stores.get(name)!;

const db = {
  get: (name: string, key: Key) => store(name).get(key),
  getAll: (name: string, range?: Range, count?: number) => store(name).getAll(range, count),
  put: (name: string, row: unknown, key?: Key) => store(name).put(row, key),
  getAllFromIndex: (name: string, index: string, asked: unknown, count?: number) =>
    store(name).index(index).getAll(asked, count),
  getAllKeysFromIndex: (name: string, index: string, value: unknown) => store(name).index(index).getAllKeys(value),
  transaction: (name: string | readonly string[]) => ({
    objectStore: store,
    store: store(typeof name === 'string' ? name : name[0]!),
    done: Promise.resolve(),
    abort: () => {},
  }),
  close: () => {},
};

export const unwrap = <T>(wrapped: T) => wrapped;
export const openDB = async () => db;
export const deleteDB = async () => void stores.forEach((one) => void one.clear());

Object.assign(globalThis, {
  IDBKeyRange: {
    bound: (lower: Key, upper: Key, open = false): Range => ({ lower, upper, open }),
    lowerBound: (lower: Key, open = false): Range => ({ lower, open }),
  },
});
