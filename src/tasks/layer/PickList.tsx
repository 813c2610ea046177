import { useSignal } from '@preact/signals';
import { list } from '../../records/shelf';
import type { Vial } from '../../records/vial';
import { clockOf } from './clock';
import './layer.css';

interface Props {
  vials: readonly Vial[];
  picked: readonly string[];
  onPick: (vial: Vial) => void;
  /** One sentence when the last tap did not count. */
  trouble?: string;
}

const SEARCH_FROM = 9; // our choice: what a thumb scrolls past at once

/** Vials as big rows; one tap picks one. */
export function PickList({ vials, picked, onPick, trouble }: Props) {
  const search = useSignal('');
  const wanted = search.value.trim().toLowerCase();
  const shown = vials.filter(({ code, name }) => `${code} ${name}`.toLowerCase().includes(wanted));
  return (
    <>
      {vials.length >= SEARCH_FROM && (
        <label class="field">
          <span class="title">Find</span>
          <span class="box">
            <input
              value={search.value}
              autoComplete="off"
              onInput={(event) => (search.value = event.currentTarget.value)}
            />
          </span>
        </label>
      )}
      {trouble && (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
      <ul class="list">
        {shown.map((vial) => (
          <li>
            <PickRow vial={vial} picked={picked.includes(vial.id)} onPick={onPick} />
          </li>
        ))}
      </ul>
      {shown.length === 0 && <p class="quiet">{noneWords()}</p>}
    </>
  );
}

function noneWords(): string {
  return list('vial').length === 0
    ? 'No vial stands on the shelf yet. Dilute a material first; its vial is then here.'
    : 'No other vial of that name.';
}

function PickRow({ vial, picked, onPick }: { vial: Vial; picked: boolean; onPick: Props['onPick'] }) {
  return (
    <button class={picked ? 'vial-row picked' : 'vial-row'} aria-pressed={picked} onClick={() => onPick(vial)}>
      <span class="vial-tick" aria-hidden="true">
        {picked ? '✓' : ''}
      </span>
      <span>
        <b class="mono">{vial.code}</b> {vial.name}
        <small>
          {vial.label.value} {vial.label.basis}
          {vial.solvent ? ` in ${vial.solvent.name}` : ''}, {clockOf(vial, null).words}
        </small>
      </span>
    </button>
  );
}
