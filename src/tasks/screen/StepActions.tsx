import { useAwake } from './awake';
import { LabelButton, labelVerdict } from './LabelCheck';
import { asTyped } from '../engine/answers';
import type { Offer, Step, Walk } from '../engine/task';

/** What a touch on an offer does: it types, goes, leaves, or starts another task. */
export function useOffers(
  walk: Walk,
  { onDone, onStart }: Pick<OffersProps, 'onDone' | 'onStart'>,
): (offer: Offer<string>) => Promise<void> {
  return async ({ type = {}, leave, go, start, instead }) => {
    const happened = asTyped(type);
    if (happened.length > 0 && !(await walk.happen(...happened))) return;
    if (go) await walk.goTo(go, true);
    if (leave) return onDone(start);
    if (start) onStart(start, instead);
  };
}

interface OffersProps {
  walk: Walk;
  /** Leaves the step as done; what is to begin once the run has ended with it. */
  onDone: (then?: Offer['start']) => void;
  onStart: (start: NonNullable<Offer['start']>, instead?: true) => void;
  onScan: () => void;
}

/** Cautions and the other ways out of a step. They scroll with the step, so that they never push it off a small screen. */
export function StepOffers({ walk, onDone, onStart, onScan }: OffersProps) {
  const step = walk.step.value;
  const take = useOffers(walk, { onDone, onStart });
  const scans = step.pad?.expects && labelVerdict(walk.state.value, step) !== 'wrong';
  if (!step.cautions?.length && offersAt(step).length === 0 && !scans) return null;
  return (
    <div class="offers">
      {step.cautions && step.cautions.length > 0 && (
        <ul class="cautions">
          {step.cautions.map((caution) => (
            <li>{caution}</li>
          ))}
        </ul>
      )}
      {offersAt(step).map((offer) => (
        <button class="second" onClick={() => take(offer)}>
          {offer.words}
        </button>
      ))}
      {scans && <LabelButton state={walk.state.value} step={step} onScan={onScan} />}
    </div>
  );
}

/** The offers of a step that are drawn at a place; without one, those on its page. */
export function offersAt({ offers = [] }: Step, place?: Offer['place']): readonly Offer<string>[] {
  return offers.filter((offer) => offer.place === place);
}

interface ActionsProps {
  walk: Walk;
  onDone: () => void;
  onStart: OffersProps['onStart'];
  /** Why the step cannot be left. */
  wrong: string | undefined;
}

/** What went wrong, in a sentence each; nothing where there is none. */
export function Trouble({ sentences }: { sentences: readonly (string | undefined)[] }) {
  return sentences.map(
    (sentence) =>
      sentence && (
        <p class="trouble" role="alert">
          {sentence}
        </p>
      ),
  );
}

/** Words on the main button where a step brings none: the last one of a run that is kept saves. */
function usualWords({ task, steps, step: { value: step }, index }: Walk, count: number): string {
  if (step.pad && count !== step.pad.target) return `Stop at ${count}`;
  const isLast = task.recorded && !step.next && !step.act && index.value === steps.value.length - 1;
  if (isLast) return 'Save';
  return step.pad || step.ask ? 'Next' : 'Done';
}

/** The foot of a step: what went wrong, and the main button. */
export function StepActions({ walk, onDone, onStart, wrong }: ActionsProps) {
  const take = useOffers(walk, { onDone, onStart });
  const step = walk.step.value;
  const count = step.pad ? (walk.state.value.drops[step.pad.counter] ?? 0) : 0;
  const awake = useAwake(count);
  if (step.foot)
    return (
      <footer class="actions">
        <Trouble sentences={[walk.trouble.value, wrong]} />
        {step.foot(walk)}
      </footer>
    );
  return (
    <footer class={step.pad ? 'actions off-pad' : 'actions'}>
      <Trouble sentences={[walk.trouble.value, wrong]} />
      <div class="row">
        {step.pad && (
          <button
            class="second"
            disabled={count === 0}
            onClick={(touch) => void (awake(touch) && walk.happen({ type: 'undo', key: step.pad!.counter }))}
          >
            Undo
          </button>
        )}
        {offersAt(step, 'row').map((offer) => (
          <button class="second" disabled={count === 0} onClick={(touch) => void (awake(touch) && take(offer))}>
            {offer.words}
          </button>
        ))}
        <button class={step.drawnFirst ? 'second aside' : 'main'} onClick={(touch) => awake(touch) && onDone()}>
          {step.done ?? usualWords(walk, count)}
        </button>
      </div>
    </footer>
  );
}
