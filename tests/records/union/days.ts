import { expect } from 'vitest';
import { exact } from '../../../src/core/number/measured';
import type { Stored } from '../../../src/records/kind/record';
import type { BackupContent } from '../../../src/records/backup/backupFile';
import { shelf, takeIn } from '../../../src/records/shelf';
import { leftOf } from '../../../src/records/stock';
import { apartOf, settled } from '../../../src/records/union/apart';
import { seeded } from '../../core/seeded';
import { vialOf } from '../../tasks/count/countShelf';
import * as on from '../backup/histories';
import type { Any, Device } from '../backup/histories';

/** What was written into a field of a thing, and what of it the device knew then. */
interface Said {
  readonly of: string;
  readonly key: string;
  readonly value: unknown;
  readonly over: ReadonlySet<Said>;
}

/** What a person really did to a bottle, and what of it that device had heard of. */
interface Deed {
  readonly bottle: string;
  readonly is: 'taking' | 'weighing';
  readonly over: ReadonlySet<Deed>;
}

/** A device, and beside it what a person who keeps a book on paper knows that it has heard of, record by record. */
interface Bench extends Device {
  heard: Map<string, Set<Said | Deed>>;
}
interface File {
  content: BackupContent;
  heard: Map<string, Set<Said | Deed>>;
}

/** The book on paper: it knows nothing of counters, joins and stored shapes. */
interface Book {
  /** Ids of all that was ever made, and of what of it was erased. */
  made: Set<string>;
  erased: Set<string>;
  marks: Set<string>;
  said: Said[];
  deeds: Deed[];
  /** Grams that are really in each bottle. */
  grams: Map<string, number>;
  steps: { run: string; key: string }[];
}

export interface Day {
  readonly seed: number;
  readonly devices: number;
  /** Whether clocks are off by up to two years either way, and set while the day goes on. */
  readonly wrongClocks: boolean;
  readonly acts?: number;
}

const FIELDS = ['box', 'row', 'supplier', 'lowAt'] as const;
const YEAR = 366 * 86_400_000; // ms

/** Plays one history and holds it to the book; throws where they differ. */
export class History {
  readonly benches: Bench[];
  readonly book: Book = {
    made: new Set(),
    erased: new Set(),
    marks: new Set(),
    said: [],
    deeds: [],
    grams: new Map(),
    steps: [],
  };
  readonly chance: (below: number) => number;
  private readonly files: File[] = [];
  private count = 0;

  constructor(readonly day: Day) {
    const random = seeded(day.seed);
    this.chance = (below) => Math.floor(random() * below);
    const material = {
      ...on.bottle('m'),
      kind: 'material',
      name: 'rhubarb',
      code: 'RHU',
      sort: 'natural',
      form: 'liquid',
      cautions: [],
    };
    const shared = [material, on.bottle('b0'), on.bottle('b1')] as Any[];
    this.benches = Array.from({ length: day.devices }, () => ({ ...on.device(shared), heard: new Map() }));
    for (const { id } of shared) this.book.made.add(id);
    for (const id of ['b0', 'b1']) this.book.grams.set(id, 20);
    for (const bench of this.benches) this.setClock(bench);
  }

  private setClock(bench: Bench): void {
    if (this.day.wrongClocks) bench.off = this.chance(4 * YEAR) - 2 * YEAR;
  }

  private pick<T>(list: readonly T[]): T | undefined {
    return list[this.chance(list.length)];
  }

  private of(bench: Bench, ...kinds: string[]): Any[] {
    return [...bench.records.values()].filter(({ kind }) => kinds.includes(kind));
  }

  private heardOf(bench: Bench, id: string): Set<Said | Deed> {
    const there = bench.heard.get(id) ?? new Set();
    bench.heard.set(id, there);
    return there;
  }

  private newId(kind: string): string {
    const id = `${kind}-${this.count++}`;
    this.book.made.add(id);
    return id;
  }

  private deed(bench: Bench, deed: Omit<Deed, 'over'>, at: string): void {
    const all = [...bench.heard.values()].flatMap((set) => [...set]);
    const over = new Set(all.filter((one): one is Deed => 'is' in one && one.bottle === deed.bottle));
    const done = { ...deed, over };
    this.book.deeds.push(done);
    this.heardOf(bench, at).add(done);
  }

  private say(bench: Bench, id: string, key: string, value: unknown): void {
    const over = new Set([...this.heardOf(bench, id)].filter((one): one is Said => 'key' in one && one.key === key));
    const said = { of: id, key, value, over };
    this.book.said.push(said);
    this.heardOf(bench, id).add(said);
  }

  private readonly deeds: readonly ((bench: Bench) => void)[] = [
    (bench) => {
      const id = this.newId('bottle');
      this.book.grams.set(id, 20);
      on.put(bench, { ...on.bottle(id), written: undefined, made: on.told(bench) } as Any);
    },
    (bench) => this.dilute(bench),
    (bench) => this.dilute(bench),
    (bench) => this.weigh(bench),
    (bench) => this.weigh(bench),
    (bench) => this.edit(bench),
    (bench) => this.edit(bench),
    (bench) => {
      const thing = this.pick(this.of(bench, 'bottle', 'vial'))!;
      if (thing['smellOnly']) return;
      this.book.marks.add(thing.id);
      on.write(bench, thing.id, { smellOnly: { at: on.told(bench), why: `spilled ${this.count++}` } });
    },
    (bench) => {
      const thing = this.pick(this.of(bench, 'bottle', 'vial'))!;
      const { archived, ...rest } = thing;
      const value = archived ? undefined : on.told(bench);
      on.put(bench, (value ? { ...rest, archived: value } : rest) as Any);
      this.say(bench, thing.id, 'archived', value);
    },
    (bench) => {
      const [photo, picture] = [this.newId('photo'), this.newId('picture')];
      const facts = { v: 1, made: on.told(bench), from: [] };
      on.put(bench, { ...facts, id: picture, kind: 'picture', type: 'image/jpeg', data: btoa(photo.repeat(20)) });
      on.put(bench, {
        ...facts,
        id: photo,
        kind: 'photo',
        of: 'b0',
        taken: facts.made,
        width: 9,
        height: 9,
        bytes: 99,
        picture,
      });
    },
    (bench) => {
      const photo = this.pick(this.of(bench, 'photo'));
      for (const id of photo ? [photo.id, photo['picture']] : []) {
        this.book.erased.add(id);
        on.erase(bench, id);
      }
    },
    (bench) => {
      const id = this.newId('run');
      on.put(bench, {
        id,
        kind: 'run',
        v: 1,
        made: on.told(bench),
        from: [],
        task: 'count',
        open: 1,
        kept: [],
        title: 'Count',
      });
      this.step(bench, id);
    },
    ...Array.from({ length: 4 }, () => (bench: Bench) => {
      const run = this.pick(this.of(bench, 'run').filter(({ open }) => open));
      if (run) this.step(bench, run.id);
    }),
    (bench) => {
      const run = this.pick(this.of(bench, 'run').filter(({ open }) => open));
      if (!run) return;
      const id = this.step(bench, run.id); // the last tap ends it
      const vial = this.newId('vial');
      on.put(bench, { ...vialOf(vial, 0.01, { material: 'm' }), made: on.told(bench), from: [id] } as never as Any);
      const { open, ...rest } = bench.records.get(id)!;
      on.put(bench, { ...rest, endedAt: on.told(bench), kept: [vial] } as never as Any);
    },
    (bench) => {
      const settings = bench.records.get('settings') ?? {
        id: 'settings',
        kind: 'settings',
        v: 1,
        from: [],
        hand: 'right',
        basis: '% w/v',
      };
      this.book.made.add('settings');
      on.put(bench, { ...settings, made: on.told(bench), theme: this.pick(['dark', 'light', 'system']) } as Any);
    },
    (bench) => {
      const thing = this.pick([...bench.records.values()].filter((record) => apartOf(record).length > 0));
      if (!thing) return;
      const chosen = apartOf(thing).map(({ key, sides }) => ({ key, value: this.pick(sides)!.value }));
      on.put(bench, settled(thing, chosen));
      for (const { key, value } of chosen) this.say(bench, thing.id, key, value);
    },
    (bench) => this.setClock(bench),
  ];

  private dilute(bench: Bench): void {
    const bottle = this.pick(this.of(bench, 'bottle'))!.id;
    const id = this.newId('vial');
    this.book.grams.set(bottle, this.book.grams.get(bottle)! - 0.01);
    on.put(bench, {
      ...vialOf(id, 0.01, { material: 'm' }),
      made: on.told(bench),
      uses: [{ id: bottle, massG: 0.01 }],
    } as never as Any);
    this.deed(bench, { bottle, is: 'taking' }, id);
  }

  /** Something was spilled, and the scale finds what is really left. */
  private weigh(bench: Bench): void {
    const bottle = this.pick(this.of(bench, 'bottle'))!;
    const left = this.book.grams.get(bottle.id)! - this.chance(10) / 100;
    this.book.grams.set(bottle.id, left);
    on.write(bench, bottle.id, { weighed: [...(bottle['weighed'] ?? []), { at: on.told(bench), left: exact(left) }] });
    this.deed(bench, { bottle: bottle.id, is: 'weighing' }, bottle.id);
  }

  private edit(bench: Bench): void {
    const thing = this.pick(this.of(bench, 'bottle', 'vial'))!;
    const key = this.pick(FIELDS)!;
    const value = key === 'lowAt' ? this.chance(3) : `${key} ${this.chance(3)}`;
    if (bench.records.get(thing.id)![key] === value) return;
    on.write(bench, thing.id, { [key]: value });
    this.say(bench, thing.id, key, value);
  }

  private step(bench: Bench, id: string): string {
    const key = `tap ${this.count++}`;
    const run = on.step(bench, id, key);
    this.book.made.add(run);
    this.book.steps.push({ run, key });
    return run;
  }

  private fileOf(bench: Bench): File {
    return { content: on.backupOf(bench), heard: new Map([...bench.heard].map(([id, set]) => [id, new Set(set)])) };
  }

  private take(to: Bench, { content, heard }: File): void {
    on.bring(content, to);
    for (const record of content.records as Stored[])
      for (const one of heard.get(record.id) ?? []) this.heardOf(to, record.id).add(one);
  }

  /** A parcel from one to the other; now and then only the first half of it arrives. */
  private send(from: Bench, to: Bench, isWhole = true): void {
    const content = on.parcelFor(to, from);
    const half = (list: readonly unknown[]) => list.slice(0, Math.ceil(list.length / 2));
    const cut = isWhole ? content : { ...content, records: half(content.records), events: half(content.events) };
    this.take(to, { content: cut, heard: this.fileOf(from).heard });
  }

  play(): this {
    for (let i = 0; i < (this.day.acts ?? 45); i++) {
      const bench = this.pick(this.benches)!;
      const other = this.pick(this.benches.filter((one) => one !== bench))!;
      const what = this.chance(10);
      if (what < 7) this.pick(this.deeds)!(bench);
      else if (what === 7) this.send(bench, other, this.chance(3) > 0);
      else if (what === 8 && this.chance(2) > 0) this.files.push(this.fileOf(bench));
      else if (this.files.length > 0) this.take(other, this.pick(this.files)!);
    }
    for (const file of this.files) if (this.chance(2) > 0) this.take(this.pick(this.benches)!, file);
    return this;
  }

  /** Everyone hears of everything, in some order; some by whole files, some by what they lack. */
  meet(): this {
    const pairs = this.benches.flatMap((a) => this.benches.filter((b) => b !== a).map((b) => [a, b] as const));
    for (let round = 0; round < 2; round++)
      for (const [a, b] of [...pairs].sort(() => this.chance(3) - 1))
        if (this.chance(2) > 0) this.send(a, b);
        else this.take(b, this.fileOf(a));
    return this;
  }

  async check(): Promise<void> {
    const where = `seed ${this.day.seed}`;
    const texts = await Promise.all(this.benches.map(on.exported));
    for (const text of texts) expect(text === texts[0], `${where}: one export is not as the other`).toBe(true);
    for (const from of this.benches)
      for (const to of this.benches) {
        if (from !== to) expect(on.parcelFor(to, from), where).toMatchObject({ records: [], events: [] });
        expect(on.bring(on.backupOf(from), to).changes, where).toEqual([]);
      }
    for (const file of this.files) expect(on.bring(file.content, this.benches[0]!).changes, where).toEqual([]);
    this.checkThings(this.benches[0]!, where);
    this.checkAmounts(this.benches[0]!, where);
  }

  private checkThings({ records, events }: Bench, where: string): void {
    const { made, erased, marks, said, steps } = this.book;
    const there = [...records.values()].filter(({ kind }) => kind !== 'gone').map(({ id }) => id);
    expect(there.sort(), where).toEqual([...made].filter((id) => !erased.has(id)).sort());
    for (const id of marks) expect(records.get(id)!['smellOnly'], `${where}: the mark of ${id}`).toBeTruthy();
    const taps = new Set(events.map(({ run, key }) => `${run} ${key}`));
    for (const { run, key } of steps) expect(taps.has(`${run} ${key}`), `${where}: ${key} of ${run}`).toBe(true);
    for (const run of there.filter((id) => id.startsWith('run'))) {
      const places = events.filter((event) => event.run === run).map(({ seq }) => seq);
      expect(
        places.sort((a, b) => a - b),
        where,
      ).toEqual(places.map((_, i) => i));
    }
    const last = said.filter((one) => !said.some(({ over }) => over.has(one)));
    for (const { of, key } of last) {
      const record = records.get(of)!;
      const values = last.filter((one) => one.of === of && one.key === key).map(({ value }) => value);
      const apart = apartOf(record).find((one) => one.key === key);
      const shown = apart ? apart.sides.map(({ value }) => value) : [record[key]];
      expect(new Set(shown), `${where}: ${key} of ${of}`).toEqual(new Set(values));
      expect(record[key], where).toEqual(shown[0]);
    }
  }

  /** Where clocks are right every amount is; where they are wrong, of each bottle whose deeds are in an order that someone knew. */
  private checkAmounts({ records }: Bench, where: string): void {
    shelf.records.value = new Map();
    takeIn([...records.values()]);
    for (const [bottle, grams] of this.book.grams) {
      const deeds = this.book.deeds.filter((deed) => deed.bottle === bottle);
      const isKnown = (a: Deed, b: Deed) => a === b || a.over.has(b) || b.over.has(a);
      const weighings = deeds.filter(({ is }) => is === 'weighing');
      if (this.day.wrongClocks && !weighings.every((one) => deeds.every((other) => isKnown(one, other)))) continue;
      amountsChecked.count++;
      expect(leftOf(shelf.records.value.get(bottle) as never)!.value, `${where}: ${bottle}`).toBeCloseTo(grams, 9);
    }
  }
}

export const amountsChecked = { count: 0 };
