import type { RunState } from './fold';
import type { Field } from './fields';
import type { Step } from './task';

/**
 * A part of a run that is walked like a run of its own: one vial of a rack. What belongs to it alone is kept under its name and a
 * point ('2.source'); what was answered for all is read through it, and `given` stands before that.
 */
export interface Part {
  readonly name: string;
  readonly given: Readonly<Record<string, string>>;
}

/** The run as the part sees it. */
export function withinPart(run: RunState, { name, given }: Part): RunState {
  const own = <T>(all: Readonly<Record<string, T>>) => entriesOf(all, name);
  return {
    ...run,
    at: run.at.startsWith(`${name}.`) ? run.at.slice(name.length + 1) : '',
    typed: { ...run.typed, ...given, ...own(run.typed) },
    presets: { ...run.presets, ...own(run.presets) },
    drops: own(run.drops),
    marks: own(run.marks),
    done: own(run.done),
  };
}

function entriesOf<T>(all: Readonly<Record<string, T>>, name: string): Record<string, T> {
  return Object.fromEntries(
    Object.entries(all).flatMap(([key, value]) =>
      key.startsWith(`${name}.`) ? [[key.slice(name.length + 1), value]] : [],
    ),
  );
}

/** A step of the part as a step of the whole run: its key, fields, counters and offers go by the part's name. */
export function asPart(step: Step, name: string): Step {
  const named = (key: string) => `${name}.${key}`;
  const typed = (all: Readonly<Record<string, string>>) =>
    Object.fromEntries(Object.entries(all).map(([key, text]) => [named(key), text]));
  const field = (one: Field): Field => ({ ...one, name: named(one.name) }); // a scale is that of the whole run
  return {
    ...step,
    key: named(step.key),
    ...(step.ask ? { ask: step.ask.map(field) } : {}),
    ...(step.pad ? { pad: { ...step.pad, counter: named(step.pad.counter) } } : {}),
    ...(step.types ? { types: typed(step.types) } : {}),
    ...(step.next === undefined ? {} : { next: named(step.next) }),
    ...(step.offers
      ? {
          offers: step.offers.map((offer) => ({
            ...offer,
            ...(offer.type ? { type: typed(offer.type) } : {}),
            ...(offer.go === undefined ? {} : { go: named(offer.go) }),
          })),
        }
      : {}),
  };
}
