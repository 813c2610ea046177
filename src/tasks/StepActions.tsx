import { LabelButton, labelVerdict } from './LabelCheck';
import type { Walk } from './run';
import type { Offer } from './task';

/** What can be done at a step: cautions and sentences first, then the other ways out, then the main button at the foot. */
export function StepActions({
  walk,
  onDone,
  onStart,
  onScan,
  wrong,
}: {
  walk: Walk;
  onDone: () => void;
  onStart: (start: NonNullable<Offer['start']>) => void;
  onScan: () => void;
  wrong: string | undefined;
}) {
  const step = walk.step.value;
  const take = async ({ type = {}, leave, go, start }: Offer) => {
    const typed = Object.entries(type).map(([key, text]) => ({ type: 'typed' as const, key, text }));
    if (typed.length > 0 && !(await walk.happen(...typed))) return;
    if (go) await walk.goTo(go, true);
    if (leave) onDone();
    if (start) onStart(start);
  };
  const count = step.pad ? (walk.state.value.drops[step.pad.counter] ?? 0) : 0;
  return (
    <footer class="actions">
      {step.cautions && step.cautions.length > 0 && (
        <ul class="cautions">
          {step.cautions.map((caution) => (
            <li>{caution}</li>
          ))}
        </ul>
      )}
      {[walk.trouble.value, wrong].map(
        (sentence) =>
          sentence && (
            <p class="trouble" role="alert">
              {sentence}
            </p>
          ),
      )}
      {step.offers?.map((offer) => (
        <button class="second" onClick={() => take(offer)}>
          {offer.words}
        </button>
      ))}
      {step.pad?.expects && labelVerdict(walk.state.value, step) !== 'wrong' && (
        <LabelButton state={walk.state.value} step={step} onScan={onScan} />
      )}
      <div class="row">
        {step.pad && (
          <button
            class="second"
            disabled={count === 0}
            onClick={() => void walk.happen({ type: 'undo', key: step.pad!.counter })}
          >
            Undo
          </button>
        )}
        <button class="main" onClick={onDone}>
          {step.done ?? (step.pad ? `Finish at ${count}` : 'Done')}
        </button>
      </div>
    </footer>
  );
}
