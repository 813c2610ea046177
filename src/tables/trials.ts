/** Control sample, dated looks and a criterion set before: ISO 16779:2015, from memory. Days and conditions: common practice. */
const SOURCE = 'ISO 16779 for control and dated looks, from memory; days and conditions are common practice';

/** A trial that lasts. */
export interface TrialRow {
  readonly id: string;
  readonly name: string;
  /** Where the bottles are. */
  readonly under: string;
  /** Where its control is. */
  readonly control: string;
  /** Days after it begins on which it is looked at. */
  readonly days: readonly number[];
  readonly looks: string;
  readonly source: string;
}

const COLD = '4 °C, dark';

/** Trials of a finished drink: how bottles are kept, and when they are looked at. */
export const trials: readonly TrialRow[] = [
  { id: 'real time', name: 'Real time', under: '20 to 25 °C, dark', control: COLD, days: [28, 56, 84, 168, 252, 364], looks: 'Smell, taste, colour, haze, sediment, gas, lid.', source: SOURCE },
  { id: 'warm', name: 'Warm storage', under: '35 °C, dark', control: COLD, days: [7, 14, 28, 56, 84], looks: 'Cooked, flat or terpenic notes, browning. No rule turns warm weeks into months on a shelf: it ranks recipes, and warns early.', source: SOURCE },
  { id: 'light', name: 'Light', under: 'in daylight at a window, in the bottle that is sold', control: 'beside it, wrapped in foil', days: [1, 3, 7, 14, 28], looks: 'Lost colour, stale or sun-struck notes.', source: SOURCE },
  { id: 'freeze', name: 'Freeze and thaw', under: 'a day at −18 °C, a day at room temperature, three times; leave room in the bottle, no glass with gas', control: COLD, days: [2, 4, 6], looks: 'Oil or ring on top, sediment, haze after each thaw.', source: SOURCE },
  { id: 'ring', name: 'Ring and sediment', under: 'standing still at 20 to 25 °C', control: 'shaken just before', days: [1, 3, 7, 14, 28], looks: 'A ring at the neck, oil, a clear layer, sediment.', source: SOURCE },
];
