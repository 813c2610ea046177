import { casProblem, tidyCas } from '../../core/limits/cas';
import { rowsAbout } from '../../core/limits/plant';
import type { Bottle } from '../../records/kind/material';
import type { AnyRecord } from '../../records/kind/kinds';
import { find } from '../../records/shelf';
import { constituents } from '../../tables/constituents';
import { formatPlain, formatTyped } from '../../ui/format';
import { optionalAmount, valueOf, words, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { bottleWithMaterial } from '../../workshop/onHand';
import type { Step, Task } from '../engine/task';
import { Refusal } from '../../core/text/refusal';

type Line = NonNullable<Bottle['constituents']>[number];

/** What the rules limit in this kind of oil, and what the certificate named before. */
function knownLines(bottle: Bottle | undefined): Pick<Line, 'cas' | 'name'>[] {
  const published = rowsAbout(constituents, find('material', bottle?.material) ?? {});
  const all = [...published, ...(bottle?.constituents ?? [])].map(({ cas, name }) => [cas, { cas, name }] as const);
  return [...new Map(all).values()];
}

function shareField(bottle: Bottle | undefined, { cas, name }: Pick<Line, 'cas' | 'name'>): Field<number | null> {
  const before = bottle?.constituents?.find((line) => line.cas === cas)?.share;
  const preset = before === undefined ? '' : formatTyped(before * 100, 6);
  return optionalAmount({ name: `share.${cas}`, title: name, unit: '% w/w', min: 0, max: 100, preset });
}

const own = {
  name: words({ name: 'own.name', title: 'Another constituent', optional: true, max: 80 }),
  cas: { ...words({ name: 'own.cas', title: 'Its CAS number', optional: true, max: 20 }), read: readCas },
  share: optionalAmount({ name: 'own.share', title: 'Its share', unit: '% w/w', min: 0, max: 100 }),
};

function readCas(text: string) {
  const problem = text.trim() === '' ? null : casProblem(text);
  return problem ? { ok: false as const, why: problem } : { ok: true as const, value: tidyCas(text) };
}

/** What the certificate says, the lines left empty taken out. @throws Refusal when it adds to more than the whole */
function linesOf(run: RunState): Line[] {
  const bottle = find('bottle', run.typed['bottle']);
  const lines = knownLines(bottle).flatMap((line) => {
    const percent = valueOf(run, shareField(bottle, line));
    return percent === null ? [] : [{ ...line, share: percent / 100 }];
  });
  const [name, cas, percent] = [valueOf(run, own.name), valueOf(run, own.cas), valueOf(run, own.share)];
  const all = name && cas && percent !== null ? [...lines, { name, cas, share: percent / 100 }] : lines;
  const sum = all.reduce((total, { share }) => total + share, 0);
  if (sum > 1)
    throw new Refusal('Together that is {percent} %, more than the whole oil.', {
      percent: { value: sum * 100, digits: 4 },
    });
  return all;
}

function steps(run: RunState): Step[] {
  const found = bottleWithMaterial(run.typed['bottle']);
  if (!found) return [{ key: 'shares', say: 'This bottle is not on the Shelf.', problem: 'Choose a bottle first.' }];
  const known = knownLines(found.bottle);
  const sum = known.reduce((total, line) => total + (valueOf(run, shareField(found.bottle, line)) ?? 0), 0);
  return [
    {
      key: 'shares',
      say: `What does the certificate of ${found.material.name} say?`,
      more: [
        known.length > 0
          ? 'These are limited in drinks. Left empty, the highest published content is counted.'
          : 'Nothing limited is published for it; what the certificate names is counted.',
      ],
      ask: known.map((line) => shareField(found.bottle, line)),
      ...(sum > 100 ? { problem: `Together that is ${formatPlain(sum)} %, more than the whole oil.` } : {}),
    },
    {
      key: 'own',
      say: 'Does it name another that matters?',
      more: ['Optional.'],
      ask: [own.name, own.cas, own.share],
      done: 'Save',
    },
  ];
}

/** What the certificate of a lot says of the constituents that rules limit. */
export const certificate: Task = {
  id: 'certificate',
  recorded: true,
  title: (run) => ['Certificate', bottleWithMaterial(run.typed['bottle'])?.material.name].filter(Boolean).join(' · '),
  steps,
  keep(run): AnyRecord[] {
    const bottle = find('bottle', run.typed['bottle']);
    if (!bottle) throw new Refusal('This bottle is not on the Shelf.');
    return [{ ...bottle, constituents: linesOf(run) }];
  },
};
