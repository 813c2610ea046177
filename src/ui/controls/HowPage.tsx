import { budget, standardUncertainty } from '../../core/number/measured';
import { formatPart, formatPlain } from '../format';
import { BackButton } from '../BackButton';
import { resultText } from './result';
import type { Result } from './result';

/** How this was worked out: formula in words, inputs with their sources, and which uncertainty contributes how much. */
export function HowPage({ result, onClose }: { result: Result; onClose: () => void }) {
  return (
    <main class="page how-page">
      <header class="top">
        <BackButton onBack={onClose} />
        <h1>How this was worked out</h1>
      </header>
      <p class="label">{result.label}</p>
      <p class="headline">{resultText(result)}</p>
      {result.how.words.map((sentence) => (
        <p>{sentence}</p>
      ))}
      <h2>What went in</h2>
      <dl class="facts">
        {result.how.inputs.map((input) => (
          <div>
            <dt>{input.words}</dt>
            <dd>
              {input.text}
              <small>{input.source}</small>
            </dd>
          </div>
        ))}
      </dl>
      <Budget result={result} />
    </main>
  );
}

/** Which source of uncertainty contributes how much, largest first. */
function Budget({ result }: { result: Result }) {
  const lines = budget(result.amount);
  return (
    <>
      <h2>Where the ± comes from</h2>
      {lines.length === 0 && <p>Nothing here is uncertain: it is counted or defined.</p>}
      <ul class="budget">
        {lines.map((line) => (
          <li>
            <span>{line.words}</span>
            <span class="share">{formatPart(line.share)}</span>
            <span class="bar" aria-hidden="true">
              <i style={{ width: `${line.share * 100}%` }} />
            </span>
          </li>
        ))}
      </ul>
      {lines.length > 0 && (
        <p class="quiet">
          Standard uncertainty {formatPlain(standardUncertainty(result.amount), 2)} {result.unit}; the ± is twice that
          (coverage factor k = 2, about 95 in 100). Sources are combined to first order, as in the GUM (JCGM 100:2008,
          5.1.2).
        </p>
      )}
    </>
  );
}
