import { find } from '../../records/shelf';
import { hueOf } from '../../ui/drawn/hue';
import { Bottle, Vial } from '../../ui/drawn/Vial';
import { calledOf } from '../../workshop/thing/labelled';
import './count.css';
import { strengthOf, type Stock } from './stock';

const HEIGHT = 72; // CSS px

/** The vial that is to be taken, for a look before the first drop: drawn in the tone of its material, and what is in it. */
export function VialToTake({ stock }: { stock: Stock }) {
  const { id, name, what, smellOnly, solvent } = stock;
  const record = find('vial', id) ?? find('bottle', id);
  const called = record ? calledOf(record) : { code: '?', strength: '' };
  const tag = { code: called.code, strength: called.strength, share: solvent ? strengthOf(stock) : undefined };
  const hue = hueOf(tag.code);
  const Glass = solvent ? Vial : Bottle;
  return (
    <div class="vial-to-take" style={{ '--hue': hue }}>
      <Glass size={HEIGHT} level={0.7} tag={tag} hue={hue} smellOnly={smellOnly} />
      <p>
        <b>{name}</b>
        <span>{what}</span>
        {smellOnly && <span class="smell-only">smell only</span>}
      </p>
    </div>
  );
}
