import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Material, MaterialFacts } from '../../records/kind/material';
import { find } from '../../records/shelf';
import type { CatalogueRow } from '../../tables/catalogue/row';
import { FieldInput } from '../../ui/controls/FieldInput';
import { asSolvent } from '../../workshop/asSolvent';
import { catalogue, catalogueGone, factsOf, loadCatalogue } from '../../workshop/catalogue';
import { cautionWords } from '../../workshop/cautionWords';
import { answer, asTyped, clears, types } from '../engine/answers';
import { textOf } from '../engine/fields';
import { leaving, withHappenings } from '../engine/leaving';
import type { Walk } from '../engine/task';
import { bottleFields as fields } from './bottleFields';
import { matchesOf } from './matches';
import './naming.css';
import { formatGiven } from '../../ui/format';

/** The naming of a new bottle, as a step draws it. */
export function drawNaming(walk: Walk) {
  return <Naming walk={walk} />;
}

const asked = { name: fields.name.name, title: 'Name, CAS or FEMA number', input: 'text' } as const;

/** What was chosen names the bottle, and the card of it follows by itself. */
async function choose(walk: Walk, texts: Record<string, string>): Promise<void> {
  const happened = asTyped(texts);
  const step = walk.step.peek();
  const named = withHappenings(walk.state.peek(), happened);
  await walk.happen(...happened, ...leaving(step, named, 'new-card'));
}

/** The name of a material, with what the Shelf and the catalogue have for it. */
function Naming({ walk }: { walk: Walk }) {
  const here = useRef<HTMLDivElement>(null);
  const onTheWay = useSignal<string | null>(null); // typed and not stored yet: the matches do not wait for the disk, or they move under the finger
  const run = walk.state.value;
  const name = textOf(run, fields.name);
  const own = find('material', answer(run, fields.material));
  const facts = answer(run, fields.facts);
  const chosen = own ?? facts;
  const type = (texts: Record<string, string>) => walk.happen(...asTyped(texts));
  useEffect(() => {
    void loadCatalogue();
    if (!chosen) here.current!.querySelector('input')?.focus({ preventScroll: true });
  }, []);
  const loose = { ...clears(fields.material), ...clears(fields.facts) };
  const onText = async (text: string) => {
    onTheWay.value = text;
    await type({ ...types(fields.name, text), ...(chosen ? loose : {}) });
    if (onTheWay.value === text) onTheWay.value = null;
  };
  return (
    <div class="naming" ref={here}>
      <FieldInput field={asked} text={name} problem={undefined} onText={onText} />
      {chosen ? (
        <Chosen facts={chosen} again={own !== undefined} onLoosen={() => void type(loose)} />
      ) : (
        <Matches
          query={onTheWay.value ?? name}
          onOwn={(one) =>
            void choose(walk, { ...loose, ...types(fields.name, one.name), ...types(fields.material, one.id) })
          }
          onRow={(row) =>
            void choose(walk, { ...loose, ...types(fields.name, row.name), ...types(fields.facts, factsOf(row)) })
          }
        />
      )}
    </div>
  );
}

interface MatchProps {
  query: string;
  onOwn: (material: Material) => void;
  onRow: (row: CatalogueRow) => void;
}

function Matches({ query, onOwn, onRow }: MatchProps) {
  const { own, rows } = matchesOf(query);
  const isFirst = (at: number) => at === 0 && query.trim() !== '';
  const leave = (then: () => void) => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur(); // the box then shows what was chosen
    then();
  };
  return (
    <>
      {catalogueGone.value && <Gone />}
      <ul class="list matches" aria-live="polite">
        {own.map((one, i) => (
          <Match
            first={isFirst(i)}
            title={`${one.code} · ${one.name}`}
            more="on the Shelf: another bottle of it"
            onPick={() => leave(() => onOwn(one))}
          />
        ))}
        {rows.map((row, i) => (
          <Match
            first={isFirst(own.length + i)}
            title={row.name}
            more={rowWords(row)}
            onPick={() => leave(() => onRow(row))}
          />
        ))}
      </ul>
      {query.trim().length >= 2 && own.length + rows.length === 0 && catalogue.value && (
        <p class="quiet">
          {asSolvent(query, undefined).length > 0
            ? 'That is a solvent: add it as one.'
            : 'Not in the catalogue: it becomes a material of your own.'}
        </p>
      )}
    </>
  );
}

function Gone() {
  return (
    <p class="trouble" role="alert">
      The catalogue could not be fetched; a name typed by hand does as well.{' '}
      <button class="second" onClick={() => location.reload()}>
        Open Minim again
      </button>
    </p>
  );
}

interface Hit {
  title: string;
  more: string;
  /** The best one: Enter takes it. */
  first: boolean;
  onPick: () => void;
}

function Match({ title, more, first, onPick }: Hit) {
  return (
    <li>
      <button class={first ? 'entry first-match' : 'entry'} onClick={onPick}>
        <b>{title}</b>
        <span>{more}</span>
      </button>
    </li>
  );
}

function rowWords(row: CatalogueRow): string {
  const is = asSolvent(row.name, row.cas?.[0]).length > 0 ? 'a solvent' : '';
  return [row.cas?.[0], is || (row.smells ?? []).slice(0, 3).join(', ') || row.botanical || row.family]
    .filter(Boolean)
    .join(' · ');
}

/** What comes along with the choice. */
function Chosen({ facts, again, onLoosen }: { facts: MaterialFacts; again: boolean; onLoosen: () => void }) {
  const { form, density, cas, cautions: care = [] } = facts;
  const line = [cas && `CAS ${cas}`, form, density && `${formatGiven(density.gPerMl)} g/mL at ${density.atC} °C`]
    .filter(Boolean)
    .join(' · ');
  return (
    <div class="chosen-material">
      <p>
        <b>{again ? 'Another bottle of it. ' : 'From the catalogue. '}</b>
        {line}
      </p>
      {density && <small>Density: {density.source}</small>}
      {cautionWords(care).map((words) => (
        <small>{words}</small>
      ))}
      <button class="second" onClick={onLoosen}>
        Not this one
      </button>
    </div>
  );
}
