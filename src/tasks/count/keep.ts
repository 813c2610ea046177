import type { AnyRecord } from '../../records/kind/kinds';
import { plus, scaled } from '../../core/number/measured';
import { Refusal } from '../../core/text/refusal';
import { find, newId, newRecord } from '../../records/shelf';
import { forFile, formatMeasured } from '../../ui/format';
import { numberedVialCode } from '../../workshop/thing/vialCode';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { droppedBy, useOf } from '../../workshop/uses';
import { dayOfRun } from '../engine/runDay';
import { targetLines } from './planInstance';
import { formulaOfThen } from './exactly';
import { dropperOf, fields, wayOf } from './fields';
import { gradeOf, stopOf } from './fit';
import { calledSo, trialName } from './names';
import { usualSize } from './size';
import { countedIds, type Round, type Target } from './rounds';
import { dropOfStock, stockOf, strengthOf } from './stock';
import { solventOfTrial, trialOf, type Trial } from './trial';
import { learned } from './weights';

const MET = 0.02; // our choice, as for a dilution

/** The trial as a vial, with what it took; and the formula, where it was typed by hand; and what weighed drops taught. @throws Refusal when it is for a drink and may not go into one */
export function keepTrial(run: RunState, rounds: readonly Round[], asked: readonly Target[]): AnyRecord[] {
  const stop = stopOf(run, rounds);
  if (stop) throw new Refusal(stop.why);
  const token = newId();
  const trial = trialOf(run, [...rounds.map(({ id }) => id), ...countedIds(run)], token);
  const name = trialName(run);
  const formula = find('formula', wayOf(run)) ?? formulaOfThen(run) ?? typedFormula(run, asked, calledSo(run) || name);
  const dropper = find('dropper', dropperOf(run));
  const dropped = droppedBy(dropperOf(run));
  const from = [...trial.counted.map(({ stock }) => stock.id), formula.id, ...(dropper ? [dropper.id] : [])];
  const vial = newRecord('vial', {
    from,
    code: answer(run, fields.code) ?? numberedVialCode('T'),
    sort: 'trial',
    name,
    contents: trial.parts.map(({ material, name, strength }) => ({ material, name, strength })),
    label: { value: strengthOn(target(run, asked), trial), basis: '% w/w' },
    solvent: solventOfTrial(trial),
    massG: trial.total,
    densityGPerMl: trial.total.value / trial.volumeMl,
    sizeMl: answer(run, fields.size) ?? Number(usualSize(trial.volumeMl)),
    grade: gradeOf(run),
    madeOn: dayOfRun(run, 'count.'),
    useBy: earliest(trial),
    supplier: '',
    lot: '',
    uses: trial.counted.map(({ stock, drops, mass }) => useOf(stock.id, mass, { how: 'counted', drops, ...dropped })),
  });
  return [vial, ...(find('formula', formula.id) ? [] : [formula]), ...learned(run, trial.counted)];
}

/** The formula that was typed: parts of materials, or what drops of vials were meant to bring. */
function typedFormula(run: RunState, asked: readonly Target[], name: string) {
  const id = newId();
  const lines =
    wayOf(run) === 'materials'
      ? targetLines(run).map(({ parts, ...line }) => ({ ...line, share: parts }))
      : neatIn(run, asked);
  return newRecord('formula', { id, name, root: id, version: 1, lines, notes: '' });
}

/** The neat material that drops typed by hand were meant to bring, mg. */
function neatIn(run: RunState, asked: readonly Target[]) {
  const shares = new Map<string, { material: string; name: string; share: number }>();
  for (const { id: stockId, drops } of asked) {
    const stock = stockOf(stockId);
    if (!stock) continue;
    const mg = drops * dropOfStock(stock, dropperOf(run)).mgPerDrop.value;
    for (const part of stock.contents) {
      const before = shares.get(part.material)?.share ?? 0;
      shares.set(part.material, {
        material: part.material,
        name: part.name,
        share: before + mg * part.strength.value,
      });
    }
  }
  return [...shares.values()];
}

/** Strength that was asked for in the whole trial, % w/w to three digits, as it stands on the label. */
function target(run: RunState, asked: readonly Target[]): number {
  const lines = asked.flatMap(({ id, drops }) => {
    const stock = stockOf(id);
    return stock ? [{ mg: drops * dropOfStock(stock, dropperOf(run)).mgPerDrop.value, stock }] : [];
  });
  const total = lines.reduce((sum, { mg }) => sum + mg, 0);
  const active = lines.reduce((sum, { mg, stock }) => sum + mg * strengthOf(stock), 0);
  return Number(((active / total) * 100).toPrecision(3));
}

/** What the label says: the strength that the plan was to have, where it was met within 2 %, else the true one as far as its ± lets it be known. */
function strengthOn(planned: number, { parts }: Trial): number {
  const made = scaled(plus(...parts.map(({ strength }) => strength)), 100);
  return Math.abs(made.value / planned - 1) <= MET ? planned : Number(forFile(() => formatMeasured(made)).value);
}

function earliest({ counted }: Trial): string {
  return (
    counted
      .flatMap(({ stock }) => stock.useBy || [])
      .sort()
      .at(0) ?? ''
  );
}
