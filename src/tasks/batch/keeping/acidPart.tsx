import { amountForPh, balanced } from '../../../core/acid/solution';
import { formatFixed, formatPlain, formatTyped, withLocalSign } from '../../../ui/format';
import { CurvePicture } from '../../../ui/plot/CurvePicture';
import { outcome } from '../../../workshop/attempt';
import { acidLikeCitric } from '../../../core/drink/syrup';
import { gram } from '../../../core/number/units';
import { acids } from '../../../tables/syrupAdditives';
import { answer } from '../../engine/answers';
import { chips } from '../../engine/card';
import type { RunState } from '../../engine/fold';
import type { Offer, SlotFacts } from '../../engine/task';
import { asked } from '../plan/asked';
import { amountIn, keepAsked } from '../plan/keepAsked';
import { planOf } from '../plan/plan';
import { acidityOf, HARDLY, measuredSour, MOST_ABV, type Acidity } from './acidity';
import type { KeepPart } from './part';

/** Which acid and how much of it, with its salt; pH, titratable acid and ratio that it comes to. */
export function acidPart(run: RunState): KeepPart {
  const { acid, acidity } = asked(run);
  const now = keepAsked(run);
  const hasAcid = answer(run, acid) !== 'none';
  const saltIs = answer(run, now.saltPerL) === null ? '' : ', {salt.g} of {salt}';
  const vitamin = answer(run, now.ascorbic) === null ? '' : ', {ascorbic} of ascorbic acid';
  const open = [now.saltPerL, now.ascorbic, now.alkalinity, now.ph, now.phTarget];
  const found = acidityOf(run);
  return {
    ask: [...(hasAcid ? [acidity] : []), acid, ...open.slice(0, 1), ...(saltIs ? [now.salt] : []), ...open.slice(1)],
    slots: slotsOf(run, found),
    section: {
      title: 'Acid',
      sentence: `${hasAcid ? '{acidity} of {acid}' : '{acid}'}${saltIs}${vitamin}${knownWords(run)}`,
      chips: open.map(({ name }) => name),
      lines: found ? acidWords(run, found) : [],
      folded: found ? ['How good this is.', ...soundness(run), ...EQUAL] : [],
      ...(found ? { picture: () => picture(run) } : {}),
    },
  };
}

/** What was said of the water and of the pH, in the sentence. */
function knownWords(run: RunState): string {
  const { alkalinity, ph, phTarget } = keepAsked(run);
  return [
    answer(run, alkalinity) === null ? '' : ', in water with {alkalinity} of alkalinity',
    answer(run, ph) === null ? '' : ', measured as {ph}',
    answer(run, phTarget) === null ? '' : ', to reach {ph.target}',
  ].join('');
}

function slotsOf(run: RunState, found: Acidity | null): Record<string, SlotFacts> {
  const { salt, ph, phTarget } = keepAsked(run);
  const [measured, target] = [answer(run, ph), answer(run, phTarget)];
  const offer = found ? targetOffer(run) : null;
  return {
    acidity: { usual: chips(['1', '1.5', '2', '2.5'], 'g/L') },
    'salt.g': { missing: 'buffer salt', optional: true, usual: chips(['0.2', '0.5', '1'], 'g/L'), beside: [salt] },
    ascorbic: { missing: 'vitamin C', optional: true, usual: chips(['100', '200', '300'], 'mg/L') },
    alkalinity: { missing: 'hard water', optional: true, usual: chips(['50', '100', '200', '300'], 'mg/L') },
    ph: {
      missing: 'measured pH',
      optional: true,
      ...(measured === null ? {} : { shows: `pH ${formatPlain(measured)}` }),
    },
    'ph.target': {
      missing: 'target pH',
      optional: true,
      usual: chips(['2.8', '3', '3.2', '3.5'], ''),
      ...(target === null ? {} : { shows: `pH ${formatPlain(target)}` }),
      ...(offer ? { offer } : {}),
    },
  };
}

/** How much of which salt, or of the acid, reaches the target. */
function targetOffer(run: RunState): Offer | null {
  const target = answer(run, keepAsked(run).phTarget);
  const plan = outcome(() => planOf(run)).value;
  if (target === null || !plan) return null;
  const salt = answer(run, keepAsked(run).salt)!;
  const withSalt = outcome(() => ({ gPerL: amountForPh(target, 20, (more) => measuredSour(run, plan, { [salt]: more })) })).value; // prettier-ignore
  if (withSalt) {
    const grams = formatTyped(withSalt.gPerL, 3);
    return { words: `Take ${withLocalSign(grams)} g/L of the salt`, type: { 'salt.g': grams } };
  }
  const acid = acidOf(run);
  const more = acid && outcome(() => ({ gPerL: amountForPh(target, 30, (g) => measuredSour(run, plan, { [acid.id]: g })) })).value; // prettier-ignore
  if (!acid || !more) return null;
  const asCitric = formatTyped(more.gPerL / pureLikeCitric(acid), 3);
  return { words: `Take ${withLocalSign(asCitric)} g/L of acid`, type: { acidity: asCitric } };
}

function acidOf(run: RunState) {
  return acids.find(({ id }) => id === answer(run, asked(run).acid));
}

/** g of pure acid that titrate like a gram of citric acid. */
function pureLikeCitric({ acid, strength = 1 }: (typeof acids)[number]): number {
  return acidLikeCitric(acid, gram(1)) * strength;
}

function acidWords(run: RunState, { ph, isMeasured, computed, acidGPerL, ratio }: Acidity): string[] {
  const two = (value: number) => formatFixed(value, 1);
  if (!isMeasured && acidGPerL < HARDLY)
    return ['Hardly any acid: its pH is that of the water and of what is in it.', ...targetWords(run)];
  const isStrong = (answer(run, asked(run).abv) ?? 0) > MOST_ABV;
  const first = isMeasured
    ? `Measured ‹pH ${formatPlain(ph)}›; computed it is ${two(computed)}.`
    : isStrong
      ? `About ‹pH ${two(ph)}› if it were water: with so much alcohol measure it.`
      : `About ‹pH ${two(ph)}›, computed: measure it before you rely on it.`;
  const titrates = `It titrates as ‹${formatPlain(acidGPerL, 2)} g/L› of citric acid`;
  const over =
    Number.isFinite(ratio) && acidGPerL > HARDLY && ratio > 0 ? `; °Brix over acid ‹${formatPlain(ratio, 2)}›` : '';
  return [first, `${titrates}${over}.`, ...targetWords(run), ...apart(isMeasured, ph, computed)];
}

/** What reaches the target, or that nothing here does. */
function targetWords(run: RunState): string[] {
  const target = answer(run, keepAsked(run).phTarget);
  if (target === null) return [];
  const offer = targetOffer(run);
  const words = offer
    ? `${offer.words} for it: tap the target to take it`
    : 'no amount of this salt or acid reaches it';
  return [`Target ‹pH ${formatPlain(target)}›: ${words}.`];
}

/** Measured and computed far apart: something is in it that is not in the list. */
function apart(isMeasured: boolean, ph: number, computed: number): string[] {
  if (!isMeasured || Math.abs(ph - computed) < 0.4) return [];
  return [
    'Measured and computed are far apart: hard water, juice, or a meter that needs calibrating. The measured one counts.',
  ];
}

/** What the sum rests on. */
function soundness(run: RunState): string[] {
  const sum =
    'The pH is the balance of all acids and salts in the list, at 25 °C in water, with the activities of Davies: buffers of this kind come out within 0.2.';
  const known = amountIn(run, keepAsked(run).alkalinity) > 0;
  return known
    ? [sum]
    : [sum, 'The water counts as soft: if it is hard, enter its alkalinity, which takes some of the acid away.'];
}

const EQUAL = ['What is equal in titratable acid is neither equal in pH nor equally sour: taste each acid by itself.'];

/** pH against acid, with the drink on it. */
function picture(run: RunState) {
  const plan = outcome(() => planOf(run)).value;
  const acid = acidOf(run);
  const now = answer(run, asked(run).acidity);
  if (!plan || !acid || !now) return null;
  const most = Math.max(3, now * 1.5);
  const points = Array.from({ length: 24 }, (_, i) => {
    const x = (most * (i + 1)) / 24;
    const sour = measuredSour(run, plan, { [acid.id]: x * pureLikeCitric(acid) });
    return outcome(() => ({ x, y: balanced(sour).ph })).value;
  }).flatMap((point) => point ?? []);
  const at = outcome(() => balanced(measuredSour(run, plan))).value?.ph;
  const target = answer(run, keepAsked(run).phTarget);
  return (
    <CurvePicture
      title="pH against acid, g/L as citric"
      words="The computed pH gets lower as acid is added, less and less."
      points={points}
      {...(at === undefined ? {} : { here: { x: now, y: at } })}
      {...(target === null ? {} : { line: { y: target, words: 'target' } })}
    />
  );
}
