import { write } from '../../records/door';
import { isOf, type AnyRecord, type KindName, type RecordOf } from '../../records/kind/kinds';
import { newRecord, takeIn } from '../../records/shelf';
import { loadTask } from '../../tasks';
import { catalogue, factsOf, loadCatalogue } from '../../workshop/catalogue';
import { today } from '../../workshop/today';
import { bottles, type BottleScript } from './bottles';
import { batch, dilutions, droppers, drinks, layerings, trial } from './script';
import { performed, type Act } from './performed';

/** What was made so far, by the names of the script. */
type Cast = Map<string, AnyRecord>;

const at = (daysAgo: number, hour: number) => `${today(-daysAgo)}T${String(hour).padStart(2, '0')}:10:00.000Z`;

async function play(task: string, act: Omit<Act, 'task'>): Promise<AnyRecord[]> {
  const { run, events, records } = performed({ ...act, task: (await loadTask(task))! });
  await write([...[...records, run].map((record) => ({ record })), ...events.map((event) => ({ event }))]);
  takeIn(records);
  return records;
}

/** The one of that kind among records; the script knows that it is there. */
function the<K extends KindName>(kind: K, records: readonly AnyRecord[]): RecordOf<K> {
  return records.find((record) => isOf(kind, record))!;
}

async function keepDemo(records: readonly AnyRecord[]): Promise<void> {
  const marked = records.map((record) => ({ ...record, demo: true as const }));
  await write(marked.map((record) => ({ record })));
  takeIn(marked);
}

/** Five readings each, whatever the advice after the third. */
const fiveReadings = Object.fromEntries(
  [1, 2, 3, 4, 5].map((n) => [
    `so-far.${n}`,
    [{ type: 'typed' as const, key: `more.${n}`, text: n < 5 ? 'yes' : 'no' }],
  ]),
);

/** Puts the made-up workshop onto the Shelf and into the Book. Every vial and drink is worked out by the tasks themselves. */
export async function setUpDemo(): Promise<void> {
  await loadCatalogue();
  if (!catalogue.value) throw new Error('the catalogue is not here');
  const cast: Cast = new Map();
  await supplies(cast);
  for (const bottle of bottles) await addBottle(cast, bottle);
  await weighDrops(cast);
  await dilute(cast);
  for (const one of layerings) await layer(cast, one);
  const aperitif = await formula(cast);
  await dose(cast);
  const dropper = cast.get('dropper P1')!.id;
  await play('count', { at: at(8, 10), typed: { ...trial, formula: aperitif, dropper } });
  const fresh = { [`lot.${cast.get('material PGF')!.id}`]: cast.get('bottle PGF')!.id };
  await play('batch', { at: at(5, 9), typed: { ...batch, what: aperitif, ...fresh } });
}

async function weighDrops(cast: Cast): Promise<void> {
  for (const [name, dropper] of Object.entries(droppers)) {
    const liquid = cast.get(dropper.liquid)?.id ?? dropper.liquid;
    const known = cast.get('dropper P1');
    const whose = known
      ? { dropper: known.id }
      : { dropper: 'new', newName: 'P1', newTip: 'glass', newOutlet: 'square tip' };
    const typed = { ...whose, liquid, readability: '0.001', ...dropper.typed };
    const made = await play('calibrate', { at: at(dropper.daysAgo, 8), typed, there: fiveReadings });
    if (!known) cast.set('dropper P1', the('dropper', made));
    cast.set(name, the('calibration', made));
  }
}

async function dilute(cast: Cast): Promise<void> {
  for (const one of dilutions) {
    const source = cast.get(one.from)!;
    const dropper = cast.get('dropper P1')!.id;
    const day = today(-one.daysAgo);
    const solvent = cast.get(one.typed['solvent']!)?.id ?? one.typed['solvent']!;
    const typed = { bottle: source.id, dropper, 'vial.made': day, ...one.typed, solvent };
    const made = await play('dilute', { at: at(one.daysAgo, one.hour), typed });
    cast.set(one.name, the('vial', made));
  }
}

async function dose(cast: Cast): Promise<void> {
  for (const { daysAgo, vial, typed, drops } of drinks) {
    const dropper = cast.get('dropper P1')!.id;
    const base = cast.get('base')?.id ?? 'new';
    const made = await play('dose', {
      at: at(daysAgo, 15),
      typed: { vial: cast.get(vial)!.id, dropper, base, ...typed },
      there: { 'glass.1': [{ type: 'count', key: 'drops', by: drops }] },
    });
    if (base === 'new') cast.set('base', the('base', made));
  }
}

async function addBottle(cast: Cast, { name, row, typed, code, daysAgo }: BottleScript): Promise<void> {
  const facts = row && JSON.stringify(factsOf(catalogue.value!.rows.get(row)!));
  const naming = [
    { type: 'typed' as const, key: 'new.name', text: name },
    ...(facts ? [{ type: 'typed' as const, key: 'new.facts', text: facts }] : []),
    { type: 'typed' as const, key: 'new.code', text: code },
  ];
  const material = cast.get(`material ${code}`);
  const known = [
    { type: 'typed' as const, key: 'new.name', text: name },
    { type: 'typed' as const, key: 'new.material', text: material?.id ?? '' },
  ];
  const there = { 'new-material': material ? known : naming };
  const received = { 'new.received': today(-daysAgo), 'new.unit': 'g' };
  const made = await play('bottle', { at: at(daysAgo, 9), typed: { ...received, ...typed }, there });
  cast.set(code, the('bottle', made));
  cast.set(`bottle ${code}`, the('bottle', made));
  if (!material) cast.set(`material ${code}`, the('material', made));
}

async function layer(cast: Cast, script: (typeof layerings)[number]): Promise<void> {
  const vials = script.codes.map((code) => cast.get(code)!.id);
  const reading = Object.entries(script.reading).map(([part, text]) => ({
    type: 'typed' as const,
    key: `reading.1.${part}`,
    text: part === 'vials' ? vials.join(' ') : text,
  }));
  const made = await play('layer', {
    at: at(script.daysAgo, 11),
    typed: script.typed,
    there: {
      pick: vials.map((id) => ({ type: 'typed', key: `pick.${id}`, text: 'yes' })),
      dip: vials.map((id) => ({ type: 'mark', key: `dipped.${id}` })),
      fan: [{ type: 'mark', key: 'reading.1' }, ...reading],
      verdict: [
        { type: 'typed', key: 'verdict.liking', text: script.liking },
        { type: 'typed', key: 'draft', text: 'draft.name' in script.typed ? 'yes' : 'no' },
      ],
    },
  });
  cast.set(script.name, the('layering', made));
  const draft = made.find((record) => isOf('formula', record));
  if (draft) cast.set('draft', draft);
}

/** The formula that came of the liked strips, in its second version. Hands back its id. */
async function formula(cast: Cast): Promise<string> {
  const material = (code: string) => the('material', [cast.get(`material ${code}`)!]);
  const lines = [['PGF', 60] as const, ['RHU', 30] as const, ['CARD', 8] as const, ['HEX3', 2] as const];
  const draft = the('formula', [cast.get('draft')!]);
  const second = newRecord('formula', {
    from: [draft.id, cast.get('liked')!.id],
    name: draft.name,
    root: draft.root,
    version: 2,
    lines: lines.map(([code, share]) => ({ material: material(code).id, name: material(code).name, share })),
    notes: 'Grapefruit first, rhubarb under it, cardamom last; a trace of leaf for lift.',
  });
  await keepDemo([{ ...second, made: at(9, 12) }]);
  return second.id;
}

async function supplies(cast: Cast): Promise<void> {
  const spirit = newRecord('supply', {
    name: 'ethanol 96 % vol',
    sort: 'solvent',
    solvent: 'ethanol-96',
    unit: 'g',
    amount: 800,
    grade: 'fit for drinks',
    supplier: 'Pebblewick Spirit Store',
    lot: 'E-5512',
    box: 'cupboard',
  });
  const strips = newRecord('supply', {
    name: 'paper strips',
    sort: 'strips',
    unit: 'pieces',
    amount: 8,
    supplier: 'Gannet Row Papers',
    lot: '',
    box: 'drawer',
  });
  await keepDemo([spirit, strips].map((one) => ({ ...one, made: at(60, 8) })));
  cast.set('spirit', spirit);
}
