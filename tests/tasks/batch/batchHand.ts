import { typedText } from '../../../src/core/number/typed';
import { startWalking, type Walker } from '../walking';
import { batch } from '../../../src/tasks/batch/task';

/** One weighing as a hand did it: into which attempt at which vessel, what, and g. */
export interface Weighing {
  readonly vessel: string;
  readonly attempt: number;
  readonly id: string;
  readonly massG: number;
}

/** What a hand did in a run of a batch, apart from all that the program counts. */
export interface Did {
  readonly walker: Walker;
  /** Into concentrates ('c') and drinks ('s'): what is in the last attempts is in the batch. */
  readonly weighed: readonly Weighing[];
  /** Into small vessels: neat material and carrier. */
  readonly mixed: readonly (Weighing & { readonly thinG: number })[];
  /** Each weighing that went over, and what was done about it. */
  readonly slips: readonly { readonly id: string; readonly massG: number; readonly way: string }[];
  /** How often a vessel was emptied. */
  readonly emptied: number;
}

const WAYS = [
  [/^Scale all up/, 'All scaled up to it'],
  [/^Keep .* L; set/, 'The rest of the concentrate set aside'],
  [/^Keep it/, 'Left as it is'],
  [/^Begin this vessel again/, 'The vessel begun again'],
] as const;

/** A batch made by a hand that slips, goes on in any of the ways that are offered, begins again, and thinks better of it. */
export function madeByHand(typed: Readonly<Record<string, string>>, random: () => number): Did {
  const walker = startWalking(batch, { although: 'nobody drinks a test', ...typed }); // asked where it is over a limit
  const weighed: Weighing[] = [];
  const mixed: (Weighing & { thinG: number })[] = [];
  const slips: { id: string; massG: number; way: string; key: string }[] = [];
  const times: Record<string, number> = { c: 1, s: 1 };
  let emptied = 0;
  const take = (words: RegExp) => {
    const offer = walker.step().offers!.find((one) => words.test(one.words))!;
    for (const [name, text] of Object.entries(offer.type!)) walker.type(name, text);
    return offer.leave === true;
  };
  for (let n = 0; walker.step().key !== 'name'; n++) {
    if (n > 400) throw new Error('the batch goes in a circle');
    const { key, say, offers = [] } = walker.step();
    if (say.startsWith('Empty ')) {
      if (random() < 0.3 && offers.length > 0) {
        take(/^Undo/);
        const at = slips.findLastIndex((slip) => slip.key === key && slip.way === 'The vessel begun again');
        if (at >= 0) slips.splice(at, 1);
        weighed.splice(
          weighed.findLastIndex((one) => one.vessel === key[0] && one.id === nameIn(key)),
          1,
        ); // weighed on
        continue;
      }
      emptied++;
      const both = say.startsWith('Empty both');
      for (const vessel of both ? ['c', 's'] : [key.startsWith('c') ? 'c' : 's']) times[vessel]!++;
      walker.next();
      continue;
    }
    const [, kind, again] = /^([cstd])(\d*)\./.exec(key) ?? [];
    if (!kind) {
      walker.next();
      continue;
    }
    const vessel = kind === 'd' ? 's' : kind;
    expectTimes(vessel, again, times);
    const whole = offers.find(({ words }) => /xactly/.test(words));
    const slip = random() < 0.25 ? 1 + (random() - 0.2) * 0.3 : 1;
    const off = nameIn(key) === 'concentrate' ? Math.min(1, slip) : slip; // there is no more of it to pour
    for (const [name, text] of Object.entries(whole?.type ?? {}))
      walker.type(name, off === 1 ? text : typedText(Number((off * Number(text)).toFixed(3))));
    const grams = (name: string) => Number(walker.state().typed[`mass.${name}`]);
    const one = { vessel, attempt: times[vessel === 't' ? 'c' : vessel]!, id: nameIn(key), massG: grams(key) };
    if (kind === 't') mixed.push({ ...one, thinG: grams(`${key}.thin`) });
    else weighed.push(one);
    const isOver = walker.step().problem !== undefined;
    const ways = WAYS.filter(([words]) => walker.step().offers!.some((offer) => words.test(offer.words)));
    const isBegun = !isOver && kind !== 't' && emptied < 3 && random() < 0.08;
    if (!isOver && !isBegun) {
      walker.next();
      continue;
    }
    const usable = emptied < 3 ? ways : ways.filter(([, way]) => !way.includes('begun'));
    const [words, way] = isBegun ? WAYS[3] : usable[Math.floor(random() * usable.length)]!;
    if (isOver) slips.push({ id: one.id, massG: one.massG, way, key });
    if (take(words)) walker.next();
  }
  return { walker, weighed, mixed, slips, emptied };
}

/** 'linalool' of 'c2.linalool' and of 'c2.linalool.nutmeg'. */
function nameIn(key: string): string {
  return key.split('.')[1]!;
}

/** The keys of a vessel say which time it is filled. */
function expectTimes(vessel: string, again: string | undefined, times: Record<string, number>): void {
  const now = times[vessel === 't' ? 'c' : vessel]!;
  if (Number(again || 1) !== now) throw new Error(`the ${now}. time of ${vessel} has the keys of the ${again}.`);
}

/** g that left a bottle: all that was mixed into stocks of its material, or weighed as it is; of the carrier what it was diluted with too. */
export function leftBottle({ weighed, mixed }: Did, id: string, carrier: string): number {
  const sum = (all: readonly number[]) => all.reduce((grams, one) => grams + one, 0);
  const attempts = [
    ...new Set(weighed.filter(({ vessel }) => vessel === 'c').map(({ attempt }) => attempt)),
    ...new Set(mixed.map(({ attempt }) => attempt)),
  ];
  return sum(
    [...new Set(attempts)].map((attempt) => {
      const into = weighed.filter((one) => one.vessel === 'c' && one.attempt === attempt);
      const drawn = (of: string) => sum(into.filter((one) => one.id === of).map(({ massG }) => massG));
      const stocks = mixed.filter((one) => one.attempt === attempt);
      const times = (of: string) => {
        const own = stocks.filter((one) => one.id === of);
        return Math.max(1, drawn(of) / sum(own.map(({ massG, thinG }) => massG + thinG))); // more drawn than mixed: as much more was mixed
      };
      if (id === carrier) return drawn(id) + sum(stocks.map((one) => one.thinG * times(one.id)));
      const own = stocks.filter((one) => one.id === id);
      return own.length === 0 ? drawn(id) : sum(own.map(({ massG }) => massG)) * times(id);
    }),
  );
}
