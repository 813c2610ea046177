import { isOf, type AnyRecord, type RecordOf } from '../../records/kind/kinds';
import { fullOf, leftOf } from '../../records/stock';
import { hueOf } from '../../ui/drawn/hue';
import { Bottle, Vial } from '../../ui/drawn/Vial';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { calledOf, labelShareOf } from '../../workshop/thing/labelled';

/** Whether a record is a thing that is drawn. */
export function isPictured(record: AnyRecord): record is RecordOf<'vial' | 'bottle'> {
  return isOf('vial', record) || isOf('bottle', record);
}

/** A vial or bottle as it is on the bench: level, label, tone of its material, the band of what may only be smelled. The words beside it say the same. */
export function Pictured({ record, size }: { record: RecordOf<'vial' | 'bottle'>; size: number }) {
  const { code, strength } = calledOf(record);
  const hue = hueOf(code); // a bottle and its dilutions have one code
  const seen = { size, smellOnly: isSmellOnly(record), level: levelOf(record) };
  if (isOf('bottle', record)) return <Bottle {...seen} tag={{ code, strength }} hue={hue} />;
  return <Vial {...seen} tag={{ code, strength, share: labelShareOf(record) }} hue={hue} />;
}

/** How full: of a vial against its size, of a bottle against what was in it at first; null where no one said. */
export function levelOf(record: RecordOf<'vial' | 'bottle' | 'supply'>): number | null {
  const left = leftOf(record);
  if (!left) return null;
  if (isOf('vial', record)) return left.value / record.densityGPerMl / record.sizeMl;
  const full = fullOf(record);
  return full && left.value / full.value;
}
