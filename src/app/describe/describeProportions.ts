import type { RecordOf } from '../../records/kind/kinds';
import { list } from '../../records/shelf';
import { dropsHeading, dropsWords, limitsWords, unbroken } from '../../tasks/proportions/blends';
import { apartWords, repeatWords, resultOf } from '../../tasks/proportions/outcome';
import { foundIn, searchKept } from '../../tasks/proportions/search';
import { formatDayHead, formatMoment, formatPlain, formatShare } from '../../ui/format';
import { likingText } from '../../ui/likingText';
import { tagOfId } from '../../workshop/thing/labelled';
import { facts, type Description } from './description';
import { stripToDrink } from './stripToDrink';

type Proportions = RecordOf<'proportions'>;

/** A search for proportions in words: the best blend, whether it is told apart, and every blend that was judged. */
export function describeProportions(r: Proportions): Description {
  const vials = r.vials.map(({ id, code }) => ({ tag: tagOfId(id) ?? code }));
  const words = (drops: readonly number[]) => dropsWords(drops, vials);
  const liking = (of: Proportions['best']) => likingText({ value: of.expected, uncertainty: of.uncertainty });
  const blends = r.blends.length === 1 ? '1 blend' : `${r.blends.length} blends`;
  return {
    title: vials.map(({ tag }) => unbroken(tag)).join(' + '),
    line: `${blends}, best ${words(r.best.drops)}`,
    did: `${blends}; best ${words(r.best.drops)}, expected liking ${liking(r.best)} of 9`,
    facts: [
      ...facts(
        ['Question', r.question],
        ['Best', `${words(r.best.drops)}: ${liking(r.best)} of 9`],
        [
          'Shares',
          r.best.shares
            .flatMap((share, i) => (share > 0 ? unbroken(`${formatShare(share)} ${vials[i]!.tag}`) : []))
            .join(', '),
        ],
        ['Runner-up', r.runnerUp ? `${words(r.runnerUp.drops)}: ${liking(r.runnerUp)} of 9` : undefined],
        ['Clearly better than it', r.toldApart ? 'yes' : 'not yet'],
        ['Each blend', r.on === 'vial' ? 'in an empty vial' : 'on a strip'],
        ['Limits', limitsText(r)],
        ...r.blends.map((blend, i) => [`Blend ${i + 1}`, judgedWords(blend, r.blends[i - 1]?.at, vials)] as const),
      ),
      ...stripToDrink(r.vials.map(({ id }) => id)),
    ],
    get results() {
      return [resultOf(searchKept(r))]; // only where they are shown: lists would wait for them
    },
  };
}

/** A blend, how it was liked, its code; and when, where that is another day than that of the blend before. */
function judgedWords(
  { drops, liking, at, code }: Proportions['blends'][number],
  before: string | undefined,
  vials: readonly { readonly tag: string }[],
): string {
  const sameDay = at !== '' && before !== undefined && before !== '' && formatDayHead(at) === formatDayHead(before);
  const told = [`${formatPlain(liking)} of 9`, code && `code ${code}`, at && !sameDay && formatMoment(at)];
  return `${dropsWords(drops, vials)}: ${told.filter(Boolean).join(', ')}`;
}

function limitsText({ bounds, vials }: Proportions): string {
  const percent = (share: number, none: number) => (share === none ? null : share * 100);
  return bounds
    .map(({ least, most }, i) => [vials[i]!.code, limitsWords({ least: percent(least, 0), most: percent(most, 1) })])
    .flatMap(([tag, words]) => (words === '' ? [] : `${tag} ${words}`))
    .join('; ');
}

/** How far a layering has been taken: the searches for proportions that came from it, newest first. */
export function takenTo(layering: string): string[] {
  return list('proportions')
    .filter(({ from }) => from.includes(layering))
    .map((r) => {
      const vials = r.vials.map(({ id, code }) => ({ tag: tagOfId(id) ?? code }));
      return `proportions: ${r.blends.length} blends, best ${dropsWords(r.best.drops, vials)}, ${r.toldApart ? 'clearly better than the others' : 'not yet clearly better than the others'}`;
    });
}

/** What its page says under its name: the best blend, whether the best is told apart, and how well the nose repeats. */
export function standingWords(r: Proportions): string[] {
  const search = searchKept(r);
  const found = foundIn(search);
  const none = search.vials.flatMap(({ tag }, i) => (found.bestDrops[i] === 0 ? tag : []));
  const without = none.length > 0 ? `, without ${none.join(' and ')}` : '';
  const best = `Best: ${dropsHeading(found.bestDrops, search.vials)}${without}.`;
  return [best, apartWords(found, search), repeatWords(search)].filter(Boolean);
}
