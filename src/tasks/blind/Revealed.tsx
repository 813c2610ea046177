import { isRight, samplesOf, type Answer } from './answers';
import type { Design } from './design';
import '../shared/codeList.css';

/** Every set with what was in the cups and what was answered. */
export function Revealed({ design, answers }: { design: Design; answers: readonly Answer[] }) {
  return (
    <details class="fold">
      <summary>What was in the cups</summary>
      <ol class="code-list">
        {answers.map((answer, i) => (
          <li>
            <span class="set">{i + 1}</span>
            {design.sets[i]!.card !== undefined && <b class="code card-code">{design.sets[i]!.card}</b>}
            {design.sets[i]!.cups.map(({ code, sample }) => (
              <span class="cup">
                <b class="code">{code === 0 ? 'R' : code}</b> {design.samples[sample]}
              </span>
            ))}
            <span class="answered">{answerText(design, i, answer)}</span>
          </li>
        ))}
      </ol>
    </details>
  );
}

function answerText(design: Design, i: number, answer: Answer): string {
  const right = isRight(design, i, answer);
  if (right !== null) return `you: ${answer.codes[0]} ${right ? '✓ right' : '✗ not it'}`;
  const names = samplesOf(design, i, answer).map((sample) => design.samples[sample]!);
  if (answer.liking.length > 0) return names.map((name, k) => `${name} ${answer.liking[k]}`).join(', ');
  return `you: ${names.join(' < ')}`;
}
