/** What the Bench says of a task. */
export interface BenchCard {
  readonly id: string;
  readonly name: string;
  /** A few words under the name. */
  readonly hint: string;
}

/** The tasks of the Bench, in order; they stand in the page itself too, so that it is there before any script runs. */
export const benchCards = [
  { id: 'dilute', name: 'Dilute', hint: 'Neat to 1 % in a vial' },
  { id: 'calibrate', name: 'Calibrate drops', hint: 'Once per dropper' },
  { id: 'layer', name: 'Layer strips', hint: 'Smell them together' },
  { id: 'count', name: 'Count drops', hint: 'A formula, drop by drop' },
  { id: 'dose', name: 'Dose a drink', hint: 'Live ppm in a glass' },
  { id: 'batch', name: 'Make a batch', hint: 'Concentrate to drink' },
  { id: 'blind', name: 'Blind test', hint: 'Can they tell?' },
  { id: 'lookup', name: 'Look up ppm', hint: 'Just the sum' },
] as const satisfies readonly BenchCard[];
