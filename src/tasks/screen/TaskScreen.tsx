import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import type { AnyRecord } from '../../records/kind/kinds';
import { FieldInput } from '../../ui/controls/FieldInput';
import { ResultLine } from '../../ui/controls/ResultLine';
import { Say } from '../../ui/controls/Say';
import { TapPad } from '../../ui/controls/TapPad';
import { keepAwake } from '../../ui/device/wakeLock';
import { inRun, textOf } from '../engine/fields';
import { GuardedStep } from './BrokenStep';
import { CardScreen } from './CardScreen';
import { useHandsBusy } from './handsBusy';
import { LabelScan, WrongThing, labelVerdict } from './LabelCheck';
import { problemsOf } from '../engine/leaving';
import { enterGoesOn } from './enter';
import { HandsOffer } from './HandsOffer';
import { RunHead } from './RunHead';
import { StepActions, StepOffers } from './StepActions';
import { TypedNotice } from './TypedNotice';
import './beside.css';
import type { Offer, Step, Walk } from '../engine/task';

interface Props {
  walk: Walk;
  /** One step back; from the first one to where the run was started. */
  onBack: () => void;
  onPause: () => void;
  onDiscard: () => void;
  onHow: (result: number) => void;
  /** What the run ended in, and what is to begin in place of its page. */
  onFinished: (records: readonly AnyRecord[], then?: Offer['start']) => void;
  onStart: (start: NonNullable<Offer['start']>, instead?: true) => void;
}

/** Shows one step of a task at a time. All state is in the walk; this only draws it and hands back what was done. */
export function TaskScreen({ walk, onBack, onPause, onDiscard, onHow, onFinished, onStart }: Props) {
  useEffect(() => keepAwake(), []);
  useEffect(() => enterGoesOn(walk), [walk]);
  const step = walk.step.value;
  const tried = useSignal('');
  const scanning = useSignal(false);
  const onScan = () => void (scanning.value = true);
  const wrong = tried.value === step.key ? step.problem : undefined;
  const problems = tried.value === step.key ? problemsOf(step, walk.state.value) : {};

  const leaveStep = useOneAtATime(async (then?: Offer['start']) => {
    await walk.settled(); // the last letter typed may still be on its way to the disk
    const now = walk.step.peek(); // after a choice, the step as it is with it
    tried.value = now.key;
    if (walk.fault.peek() || Object.keys(problemsOf(now, walk.state.peek())).length > 0 || now.problem) return;
    if (now.act) return void (await now.act(walk));
    const records = await walk.leave();
    if (records) onFinished(records, then);
  });

  useHandsBusy(walk, leaveStep, !scanning.value && !walk.fault.value);
  const onDone = (then?: Offer['start']) => void leaveStep(then);
  const ways = { onHow, onStart, onDone };
  if (scanning.value && step.pad?.expects)
    return <LabelScan walk={walk} expects={step.pad.expects} onClose={() => (scanning.value = false)} />;
  return (
    <main class="run">
      <RunHead walk={walk} ways={ways} onBack={onBack} onPause={onPause} onDiscard={onDiscard} />
      <TypedNotice walk={walk} />
      {walk.steps.value.every(({ card }) => !card) && <Progress at={walk.index.value} of={walk.steps.value.length} />}
      <GuardedStep walk={walk} questions={() => <Questions walk={walk} problems={problems} onOnlyChoice={onDone} />}>
        {step.card ? (
          <CardScreen key={step.key} walk={walk} wrong={wrong} {...ways} />
        ) : (
          <OneStep walk={walk} problems={problems} wrong={wrong} onScan={onScan} {...ways} />
        )}
      </GuardedStep>
    </main>
  );
}

interface StepProps extends Pick<Props, 'walk' | 'onHow' | 'onStart'> {
  problems: Record<string, string>;
  wrong: string | undefined;
  onScan: () => void;
  onDone: (then?: Offer['start']) => void;
}

/** One instruction: what it says, asks and counts, its other ways out, and the foot. */
function OneStep({ walk, problems, wrong, onHow, onScan, onStart, onDone }: StepProps) {
  return (
    <>
      <Body
        key={walk.step.value.key}
        walk={walk}
        problems={problems}
        onHow={onHow}
        onScan={onScan}
        onOnlyChoice={() => onDone()}
      >
        <StepOffers walk={walk} onDone={onDone} onStart={onStart} onScan={onScan} />
      </Body>
      <StepActions walk={walk} onDone={onDone} onStart={onStart} wrong={wrong} />
    </>
  );
}

/** The work, which is not begun again while it is under way: a second touch in that moment is meant for what the first one saw. */
function useOneAtATime<A extends unknown[]>(work: (...given: A) => Promise<void>): (...given: A) => Promise<void> {
  const underWay = useRef(false);
  return async (...given) => {
    if (underWay.current) return;
    underWay.current = true;
    await work(...given).finally(() => (underWay.current = false));
  };
}

const SAID = 'step-said';

/** Whether a step asks for one figure that it cannot do without, and nothing else: what a scale shows, what was poured. */
function isFigure({ ask = [], drawn = [], pad }: Step): boolean {
  const [one, ...others] = ask.filter(({ name }) => !drawn.includes(name));
  if (pad || !one || others.length > 0) return false;
  return (one.input === 'decimal' || one.input === 'numeric') && !one.read('').ok;
}

interface BodyProps {
  walk: Walk;
  problems: Record<string, string>;
  onHow: (result: number) => void;
  onScan: () => void;
  onOnlyChoice: () => void;
  children: ComponentChildren;
}

/**
 * What the step says, shows and asks, and its other ways out. The words take the focus, so that a screen reader reads them; where only a
 * number is to be typed, its field does, and they are read with it.
 */
function Body({ walk, problems, onHow, onScan, onOnlyChoice, children }: BodyProps) {
  const said = useRef<HTMLHeadingElement>(null);
  const step = walk.step.value;
  useLayoutEffect(() => {
    const field = isFigure(step) ? said.current?.parentElement?.querySelector<HTMLElement>('.questions input') : null;
    (field ?? said.current)?.focus({ preventScroll: true }); // before anything can be tapped or typed
  }, []);
  return (
    <div class={step.pad ? 'body counting' : 'body'}>
      <h2 class="say" id={SAID} tabIndex={-1} ref={said}>
        <Say text={step.say} />
      </h2>
      {step.more?.map((line) => (
        <p class="quiet">
          <Say text={line} />
        </p>
      ))}
      {step.results?.map((result, i) => (
        <ResultLine result={result} big={i === 0} onHow={() => onHow(i)} />
      ))}
      {step.draw?.(walk)}
      <Questions walk={walk} problems={problems} onOnlyChoice={onOnlyChoice} />
      {!step.pad && children}
      {step.pad && labelVerdict(walk.state.value, step) === 'wrong' && <WrongThing walk={walk} onScan={onScan} />}
      {step.pad && labelVerdict(walk.state.value, step) !== 'wrong' && (
        <>
          {children}
          <HandsOffer />
          <Counter walk={walk} step={step} />
        </>
      )}
    </div>
  );
}

function Progress({ at, of }: { at: number; of: number }) {
  return (
    <div
      class="progress"
      role="progressbar"
      aria-valuemin={1}
      aria-valuemax={of}
      aria-valuenow={at + 1}
      aria-valuetext={`${at + 1} of ${of}`}
      aria-label="Step"
    >
      {Array.from({ length: of }, (_, i) => (
        <i class={i <= at ? 'past' : ''} />
      ))}
    </div>
  );
}

function Questions({
  walk,
  problems,
  onOnlyChoice,
}: {
  walk: Walk;
  problems: Record<string, string>;
  onOnlyChoice: () => void;
}) {
  const { drawn = [], pad, draw, results, ...step } = walk.step.value;
  const ask = (step.ask ?? []).filter(({ name }) => !drawn.includes(name));
  const onlyChoice = ask.length === 1 && ask[0]!.input === 'choice' && !pad && !draw && !results;
  return (
    <div class="questions">
      {ask.map((field) => (
        <FieldInput
          key={field.name}
          field={inRun(walk.state.value, field)}
          text={textOf(walk.state.value, field)}
          problem={problems[field.name]}
          about={SAID}
          onText={async (text, sure) => {
            const stored = await walk.happen({ type: 'typed', key: field.name, text });
            if (stored && onlyChoice && sure) onOnlyChoice();
          }}
        />
      ))}
    </div>
  );
}

function Counter({ walk, step }: { walk: Walk; step: Step }) {
  const { counter, target, live } = step.pad!;
  const count = walk.state.value.drops[counter] ?? 0;
  return (
    <TapPad
      count={count}
      target={target}
      live={live(count)}
      onTap={() => void walk.happen({ type: 'drop', key: counter })}
    />
  );
}
