import { descriptorFamilies } from '../../tables/descriptors';
import { choice, given, optionalAmount, whole, words, type Field } from '../engine/fields';
import { ROOM } from './clock';

/** The questions of a layering. The parts of a note are stored under the word of the first version, "reading". */
export const fields = {
  room: optionalAmount({
    name: 'room',
    title: 'Room',
    unit: '°C',
    ...ROOM,
    help: 'Optional. Strips dry faster in a warm room.',
  }),
  pick: (vial: string) => given(`pick.${vial}`, ['yes']),
  dips: (vial: string) => whole({ name: `dips.${vial}`, title: 'Dips', unit: 'dips', min: 1, max: 5, preset: '1' }),
  family: (vial: string) =>
    given(`family.${vial}`, ['none', ...descriptorFamilies.map(({ id }) => id)]) as Field<string>,
  /** Of which vials the next ones are proposed, and how many at once. */
  pool: given('next.pool', ['fan', 'shelf']),
  size: choice({
    name: 'next.size',
    title: 'Strips at once',
    preset: '2',
    options: [
      { value: '2', label: 'twos' },
      { value: '3', label: 'threes' },
      { value: '4', label: 'fours' },
      { value: '5', label: 'fives' },
    ],
  }),
  /** Whether a note is being written; of the first version none is. */
  state: (n: number) => given(`reading.${n}.state`, ['open', 'saved']),
  minute: (n: number) =>
    optionalAmount({ name: `reading.${n}.minute`, title: 'Time since the dip', unit: 'min', min: 0 }),
  /** The strips of the fan when the note was begun, those smelled, and those of them that were wet; ids of vials. */
  all: (n: number) => ids(`reading.${n}.all`),
  vials: (n: number) => ids(`reading.${n}.vials`),
  wet: (n: number) => ids(`reading.${n}.wet`),
  words: (n: number) =>
    words({
      name: `reading.${n}.words`,
      title: 'Words',
      optional: true,
      help: 'Separate words with commas. You can dictate with the keyboard microphone.',
      max: 500,
    }),
  strength: (n: number) =>
    optionalAmount({ name: `reading.${n}.intensity`, title: 'Strength', unit: 'of 10', min: 0, max: 10 }),
  liking: (n: number) => likingField(`reading.${n}.liking`),
  note: (n: number) => words({ name: `reading.${n}.note`, title: 'Note', optional: true, max: 1000 }),
  decision: choice({
    name: 'verdict.decision',
    title: 'What next?',
    options: [
      { value: 'keep', label: 'Keep', hint: 'worth a formula' },
      { value: 'try again', label: 'Try again', hint: 'other dips, another strip' },
      { value: 'drop', label: 'Reject', hint: 'not these together' },
    ],
  }),
  judged: ids('verdict.vials'),
  verdictLiking: likingField('verdict.liking'),
  verdictNote: words({ name: 'verdict.words', title: 'Note', optional: true, max: 500 }),
  /** Whether the layering goes on to a formula. */
  draft: given('draft', ['yes', 'no']),
};

function likingField(name: string): Field<number | null> {
  return optionalAmount({ name, title: 'Liking', unit: 'of 9', min: 1, max: 9 });
}

/** Ids of records, with a space between them; none where nothing is typed. */
function ids(name: string): Field<readonly string[]> {
  return { name, title: name, input: 'text', read: (text) => ({ ok: true, value: text.split(' ').filter(Boolean) }) };
}
