import type { RunEvent } from '../../../src/records/kind/run';
import { newRecord, takeIn } from '../../../src/records/shelf';
import type { SolventCopy } from '../../../src/records/kind/solvent';
import type { Vial } from '../../../src/records/kind/vial';
import { fold, type RunState } from '../../../src/tasks/engine/fold';
import { beginNote } from '../../../src/tasks/layer/notes';
import { solventsOnHand } from '../../../src/workshop/onHand';

/** A solvent of the bench, as a vial keeps it. */
function solventCopy(id: string): SolventCopy {
  const { liquid: _, foodPossible: __, ...copy } = solventsOnHand().find((solvent) => solvent.id === id)!;
  return copy;
}

/** A 1 % vial on the shelf. */
export function vialOnShelf(code: string, facts: { solvent?: string; strength?: number; name?: string } = {}): Vial {
  const { solvent = 'ethanol-96', strength = 0.01, name = `material of ${code}` } = facts;
  const exact = (value: number) => ({ value, sources: [] });
  const vial = newRecord('vial', {
    code,
    name,
    grade: 'fit for drinks' as const,
    madeOn: '2026-05-01',
    useBy: '',
    supplier: '',
    lot: '',
    contents: [{ material: `m-${code}`, name, strength: exact(strength) }],
    label: { value: 1, basis: '% w/v' },
    solvent: solventCopy(solvent),
    massG: exact(8),
    densityGPerMl: 0.81,
    sizeMl: 10,
    uses: [],
  });
  takeIn([vial]);
  return vial;
}

/** A run in which things happen at minutes after 10:00 on 4 May 2026. */
export function benchRun() {
  const events: RunEvent[] = [];
  const time = (minute: number): string => new Date(Date.UTC(2026, 4, 4, 10) + minute * 60_000).toISOString();
  return {
    happen(minute: number, type: RunEvent['type'], key: string, text?: string): void {
      events.push({
        run: 'r',
        seq: events.length,
        at: time(minute),
        type,
        key,
        ...(text === undefined ? {} : { text }),
      });
    },
    /** Picks a vial and dips it. */
    dip(minute: number, vial: Vial): void {
      this.happen(minute, 'typed', `pick.${vial.id}`, 'yes');
      this.happen(minute, 'mark', `dipped.${vial.id}`);
    },
    state: (): RunState => fold(events),
    /** ms since 1970 of a minute after 10:00. */
    at: (minute: number): number => Date.parse(time(minute)),
  };
}

/** Writes a note at a minute, of the fan or of some of its vials; returns its number. */
export function noteStrips(
  run: ReturnType<typeof benchRun>,
  minute: number,
  typed: Readonly<Record<string, string>>,
  some?: readonly string[],
): number {
  const { n, happenings } = beginNote(run.state(), run.at(minute), some);
  for (const { type, key, text } of happenings) run.happen(minute, type, key, text);
  for (const [part, text] of Object.entries(typed)) run.happen(minute, 'typed', `reading.${n}.${part}`, text);
  return n;
}
