import { signal } from '@preact/signals';
import { idle } from '../../records/store/idle';
import { loadTask } from '../../tasks';
import type { Task } from '../../tasks/engine/task';
import { find, list } from '../../records/shelf';
import { ago } from '../../ui/ago';
import { formatPlain } from '../../ui/format';

/** Tasks that say themselves what they would open with; they come when the Bench has nothing else to do. */
const opening = signal<readonly Task[]>([]);
const OPENING = ['dilute', 'count', 'dose'];

/** Fetches what tells with what those tasks would open. */
export async function loadOpenings(): Promise<void> {
  for (const id of OPENING) {
    if (opening.peek().some((task) => task.id === id)) continue;
    await idle(2000);
    const task = await loadTask(id).catch(() => null); // the tile keeps its hint; it is said when the task is wanted
    if (task) opening.value = [...opening.peek(), task];
  }
}

/** What each task would do now, in a few words, by its id; one that has nothing to begin with has none. */
export function linesNow(tasks: readonly Task[] = opening.value): Record<string, string> {
  const all = { ...lines, ...Object.fromEntries(tasks.map((task) => [task.id, () => task.opening?.()])) };
  const found = Object.entries(all).flatMap(([id, line]) => {
    const words = known(line)?.replaceAll('-', '-\u2060'); // a lot is not broken at its hyphen
    return words ? [[id, words] as const] : [];
  });
  return Object.fromEntries(found);
}

/** A record that cannot be put into words says so on the Shelf; the tile keeps its hint. */
function known(line: () => string | undefined): string | undefined {
  try {
    return line();
  } catch {
    return undefined;
  }
}

const lines: Readonly<Record<string, () => string | undefined>> = {
  calibrate() {
    const [last] = list('calibration');
    const name = last && find('dropper', last.dropper)?.name;
    return name && `${name}: weighed ${since(last.made)}`;
  },
  layer() {
    const [last] = list('layering');
    const dipped = last?.strips.filter(({ takenOutAt }) => takenOutAt === null);
    const codes = dipped?.map(({ vial, code }) => find('vial', vial)?.code ?? code);
    return codes?.length ? `${codes.slice(0, 3).join(' + ')}${codes.length > 3 ? ' …' : ''} last time` : undefined;
  },
  batch() {
    const [last] = list('batch');
    return last && `${last.formula.name}, ${formatPlain(last.drink.litres.value, 3)} L`;
  },
  blind() {
    const [last] = list('test');
    return last && `Last ${since(last.made)}`;
  },
};

function since(made: string): string {
  return ago(Date.parse(made), Date.now());
}
