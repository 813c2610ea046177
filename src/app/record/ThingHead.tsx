import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { leftOf, isStocked, runsLow } from '../../records/stock';
import { resultFigures, type Result } from '../../ui/controls/result';
import { formatDay } from '../../ui/format';
import { leftPhrase } from '../../ui/left';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { useByOf } from '../../workshop/useBy';
import type { Description } from '../describe/description';
import { placeWords } from '../describe/ShelfEntry';
import { Part } from '../fault/Part';
import { go } from '../nav/route';
import type { Thing } from './thing';
import { ThingPicture } from './ThingPicture';

interface Props {
  record: AnyRecord;
  description: Description;
  thing: Thing;
  /** Whether it is over a limit today: then it is not called fit for drinks. */
  over: boolean;
}

/** The thing itself: drawn, with its label on it, and beside it what it is, how strong, whether it may be drunk and what is left. */
export function ThingHead({ record, description, thing, over }: Props) {
  const { code, grade } = description;
  return (
    <section class="thing-head">
      <ThingPicture record={record} />
      <div class="thing-words">
        {code && <p class="thing-code">{code}</p>}
        <Part of={record}>
          <Lead record={record} results={description.results ?? []} />
        </Part>
        {(grade || over) && (
          <p class={!isSmellOnly(record) && !over ? 'fit' : 'smell-only'}>{gradeHead(over, isSmellOnly(record))}</p>
        )}
        {thing.own.length > 0 && <p class="own">{thing.own.join(' · ')}</p>}
        {thing.under.filter(Boolean).map((line) => (
          <p class="quiet">{capital(line)}</p>
        ))}
        <Part of={record}>
          <Standing record={record} />
        </Part>
        {record.demo && <p class="quiet">Demo: made up</p>}
      </div>
    </section>
  );
}

/** Which of its numbers a thing is known by: of a trial none, its parts are in a table. */
export function leadOf(record: AnyRecord, results: readonly Result[]): number {
  return isOf('vial', record) && results.length > 1 ? -1 : 0;
}

/** The number that a thing is known by, large, with its ± and the way to how it was worked out. */
function Lead({ record, results }: { record: AnyRecord; results: readonly Result[] }) {
  const index = leadOf(record, results);
  const result = results[index];
  if (!result) return null;
  const { value, uncertainty } = resultFigures(result);
  const unit = result.words === undefined ? result.unit : '';
  const [sign, basis] = unit.startsWith('%') ? ['%', unit.slice(1).trim()] : [unit, ''];
  const words = [basis, uncertainty ? `± ${uncertainty}` : result.bound ? 'a bound' : ''].filter(Boolean).join(', ');
  return (
    <div class="lead">
      <p class="lead-number">
        {value} <span class={sign.length > 2 ? 'unit' : undefined}>{sign}</span>
      </p>
      {results.length > 1 && <p class="quiet">{result.label}</p>}
      <button class="why" onClick={() => go(['record', record.id, 'how', String(index)])}>
        {words && `${words} · `}
        {uncertainty ? 'why ±?' : 'how?'}
        <span class="unseen"> {result.label}</span>
      </button>
    </div>
  );
}

/** What is left, until when it keeps and where it is. */
function Standing({ record }: { record: AnyRecord }) {
  const left = isStocked(record) ? leftOf(record) : null;
  const unit = isOf('supply', record) ? record.unit : 'g';
  const useBy = useByOf(record);
  const place = placeWords(record);
  return (
    <>
      {useBy && <p class="quiet">Use by {formatDay(useBy.day)}</p>}
      {place && <p class="quiet">{capital(place)}</p>}
      {left && (
        <button class="why left" onClick={() => go(['record', record.id, 'how', 'left'])}>
          {capital(leftPhrase(left, unit))}
          {isStocked(record) && runsLow(record) && ', running low'}
          <span class="unseen">: how this was worked out</span>
        </button>
      )}
    </>
  );
}

/** Whether it may be drunk, as a line of its own. */
function gradeHead(over: boolean, smellOnly: boolean): string {
  if (smellOnly) return 'Smell only'; // before all else, as on its label
  return over ? 'Over a limit' : 'Fit for drinks';
}

function capital(words: string): string {
  return `${words.charAt(0).toLocaleUpperCase()}${words.slice(1)}`;
}
