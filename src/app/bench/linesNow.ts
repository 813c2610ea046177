import { find, list } from '../../records/shelf';
import { ago } from '../../ui/ago';
import { formatPlain } from '../../ui/format';
import { calledOf } from '../../workshop/thing/labelled';

/** What each task would do now, in a few words, by its id; a task that has not been done before has none. */
export function linesNow(): Record<string, string> {
  const found = Object.entries(lines).flatMap(([id, line]) => {
    const words = known(line);
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
  dilute() {
    const last = list('vial')
      .map(calledOf)
      .find(({ strength }) => strength !== '');
    return last && `${last.code} to ${last.strength}, as last time`;
  },
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
  count() {
    const [formula] = list('formula');
    return formula && `${formula.name}, version ${formula.version}`;
  },
  dose() {
    const [last] = list('tasting');
    return last && `${last.base.name}, ${formatPlain(last.base.volumeMl, 3)} mL`;
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
