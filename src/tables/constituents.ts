import type { ConstituentRange } from '../core/limits/exposure';
import type { Level } from '../core/limits/figure';
import type { MassFraction } from '../core/number/units';

/**
 * What natural materials bring that a rule limits: lowest, highest and usual content, % w/w of the material as printed, g/g in
 * the rows; null where the source gives none. For a first warning only: the lot's own analysis beats every row.
 * `oil` are CAS numbers of the material (FDA inventory or catalogue; those of cinnamon leaf, cassia, laurel leaf, clove leaf, mace
 * and tonka from memory), `cas` that of the constituent (from memory, check digit only). Sage and the like list alpha- and
 * beta-thujone apart; a row "thujone" is the sum and carries the alpha number.
 */
export interface ConstituentRow extends ConstituentRange {
  readonly material: string;
  readonly oil: readonly string[];
}

type Packed = readonly [string, readonly string[], string, string, number | null, number | null, number | null, Level, string];

const share = (percent: number | null) => (percent === null ? null : ((percent / 100) as MassFraction));

/** material, its CAS, constituent, its CAS, lowest %, highest %, usual %, level, source */
const packed: readonly Packed[] = [
  ['Nutmeg oil', ['8008-45-5'], 'myristicin', '607-91-0', null, 12, null, 'primary', 'EFSA FEEDAP 2023, EFSA Journal 21:8066'],
  ['Nutmeg oil', ['8008-45-5'], 'safrole', '94-59-7', null, 2.3, null, 'primary', 'EFSA FEEDAP 2023, EFSA Journal 21:8066'],
  ['Nutmeg oil', ['8008-45-5'], 'elemicin', '487-11-6', null, 0.4, null, 'primary', 'EFSA FEEDAP 2023, EFSA Journal 21:8066'],
  ['Nutmeg oil', ['8008-45-5'], 'methyleugenol', '93-15-2', null, 0.33, null, 'primary', 'EFSA FEEDAP 2023, EFSA Journal 21:8066'],
  ['Nutmeg oil', ['8008-45-5'], 'safrole', '94-59-7', null, 2.8, 2.8, 'secondary', 'Mallavarapu 1998, as quoted'],
  ['Nutmeg oil', ['8008-45-5'], 'methyleugenol', '93-15-2', null, 1.6, 1.6, 'secondary', 'Mallavarapu 1998, as quoted'],
  ['Nutmeg oil', ['8008-45-5'], 'safrole', '94-59-7', null, null, 0.53, 'secondary', 'Gopalakrishnan 1992, as quoted'],
  ['Nutmeg oil', ['8008-45-5'], 'methyleugenol', '93-15-2', null, null, 0.14, 'secondary', 'Gopalakrishnan 1992, as quoted'],
  ['Nutmeg oil', ['8008-45-5'], 'myristicin', '607-91-0', null, null, 3.28, 'secondary', 'Gopalakrishnan 1992, as quoted'],
  ['Mace oil', ['8007-12-3'], 'safrole', '94-59-7', null, null, 0.67, 'secondary', 'Gopalakrishnan 1992, as quoted'],
  ['Mace oil', ['8007-12-3'], 'methyleugenol', '93-15-2', null, null, 0.22, 'secondary', 'Gopalakrishnan 1992, as quoted'],
  ['Mace oil', ['8007-12-3'], 'myristicin', '607-91-0', null, null, 5.92, 'secondary', 'Gopalakrishnan 1992, as quoted'],
  ['Laurel leaf oil (Laurus nobilis)', ['8002-41-3', '8007-48-5'], 'methyleugenol', '93-15-2', null, 4, null, 'primary', 'EFSA FEEDAP 2023, EFSA Journal 21:7875'],
  ['Clove bud / clove leaf oil', ['8000-34-8', '8015-97-2'], 'methyleugenol', '93-15-2', null, 0.13, null, 'primary', 'PMC10375362'],
  ['Star anise oil', ['68952-43-2'], 'estragole', '140-67-0', 1, null, null, 'primary', 'EFSA FEEDAP 2023, star anise and anise oils'],
  ['Anise oil', ['8007-70-3'], 'estragole', '140-67-0', 1, null, null, 'primary', 'EFSA FEEDAP 2023, star anise and anise oils'],
  ['Star anise terpenes fraction', [], 'estragole', '140-67-0', null, 25, null, 'primary', 'EFSA FEEDAP 2023, star anise and anise oils'],
  ['Cumin oil', ['8014-13-9'], 'estragole', '140-67-0', null, 0.05, null, 'primary', 'Reg. (EU) 2024/260 specification (feed)'],
  ['Tarragon oil', ['8016-88-4'], 'estragole', '140-67-0', 60, 75, null, 'secondary', 'encyclopaedia'],
  ['Basil oil (exotic type)', ['8015-73-4'], 'estragole', '140-67-0', 23, 88, null, 'secondary', 'encyclopaedia'],
  ['Anise oil', ['8007-70-3'], 'estragole', '140-67-0', null, null, 2, 'secondary', 'encyclopaedia'],
  ['Cinnamon bark oil (C. verum)', ['8015-91-6', '8007-80-5'], 'safrole', '94-59-7', null, null, 0.4, 'secondary', 'ECHA dossier text'],
  ['Peppermint oil (Mentha x piperita, Ph. Eur. older edition)', ['8006-90-4'], 'menthofuran', '494-90-6', 1.0, 9.0, null, 'secondary', 'Ph. Eur., older edition, as quoted'],
  ['Peppermint oil (Mentha x piperita, Ph. Eur. older edition)', ['8006-90-4'], 'pulegone', '89-82-7', null, 4.0, null, 'secondary', 'Ph. Eur., older edition, as quoted'],
  ['Peppermint oil (Mentha x piperita, Ph. Eur. older edition)', ['8006-90-4'], 'menthol', '2216-51-5', 30, 55, null, 'secondary', 'Ph. Eur., older edition, as quoted'],
  ['Peppermint oil (Mentha x piperita, Ph. Eur. older edition)', ['8006-90-4'], 'menthone', '89-80-5', 14, 32, null, 'secondary', 'Ph. Eur., older edition, as quoted'],
  ['Peppermint oil (Mentha x piperita, Ph. Eur. older edition)', ['8006-90-4'], '1,8-cineole', '470-82-6', 3.5, 14, null, 'secondary', 'Ph. Eur., older edition, as quoted'],
  ['Peppermint oil (Mentha x piperita, Ph. Eur. older edition)', ['8006-90-4'], 'limonene', '5989-27-5', 1, 5, null, 'secondary', 'Ph. Eur., older edition, as quoted'],
  ['Peppermint oil (Mentha x piperita, Ph. Eur. older edition)', ['8006-90-4'], 'carvone', '99-49-0', null, 1, null, 'secondary', 'Ph. Eur., older edition, as quoted'],
  ['Peppermint oil (Mentha x piperita)', ['8006-90-4'], 'menthofuran', '494-90-6', 1, 8, null, 'secondary', 'data page'],
  ['Pennyroyal oil', ['8013-99-8', '8007-44-1'], 'pulegone', '89-82-7', 60, 96, null, 'secondary', 'three data pages, widest range'],
  ['Calamus oil, triploid (European)', ['8015-79-0'], 'beta-asarone', '5273-86-9', null, null, 5, 'secondary', 'JECFA FAS 16, as quoted'],
  ['Calamus oil, tetraploid (Jammu)', ['8015-79-0'], 'beta-asarone', '5273-86-9', null, 96, 75, 'secondary', 'JECFA FAS 16, as quoted'],
  ['Bergamot oil, expressed', ['8007-75-8'], '5-methoxypsoralen (bergapten)', '484-20-8', null, null, 0.35, 'secondary', 'assay page'],
  ['Cassia bark powder', [], 'coumarin', '91-64-5', 0.21, 0.44, null, 'secondary', 'Sri Lankan standard page, as quoted'],
  ['Ceylon cinnamon powder', [], 'coumarin', '91-64-5', null, 0.0015, null, 'secondary', 'Sri Lankan standard page, as quoted'],
  ['Cedar leaf / thuja oil', ['8007-20-3'], 'thujone (alpha + beta)', '546-80-5', 55, 58, null, 'secondary', 'two trade pages'],
  ['Cedar leaf / thuja oil', ['8007-20-3'], 'fenchone', '1195-79-5', null, null, 15, 'secondary', 'two trade pages'],
  ['Wormwood herb (plant)', [], 'thujone', '546-80-5', null, null, 0.0239, 'secondary', 'university page'],
  ['Cedar tips (plant)', [], 'thujone', '546-80-5', null, null, 0.532, 'secondary', 'university page'],
  ['Lemon oil', ['8008-56-8'], 'citral', '5392-40-5', 1.6, 5, null, 'secondary', 'trade page'],
  ['Lime oil', ['8008-26-2'], 'citral', '5392-40-5', 6, 9, null, 'secondary', 'trade page'],
  ['Lemongrass oil', ['8007-02-1'], 'citral', '5392-40-5', 65, 85, null, 'secondary', 'trade page'],
  ['Litsea cubeba oil', ['68855-99-2'], 'citral', '5392-40-5', 70, 85, null, 'secondary', 'trade page'],
  ['Petitgrain citronnier oil', ['8048-51-9'], 'citral', '5392-40-5', null, 36, null, 'secondary', 'trade page'],
  ['Anise oil (Ph. Eur.)', ['8007-70-3'], 'estragole', '140-67-0', 0.5, 5, null, 'memory', 'usual range, not read'],
  ['Star anise oil (Ph. Eur.)', ['68952-43-2'], 'estragole', '140-67-0', 0.5, 6, null, 'memory', 'usual range, not read'],
  ['Bitter fennel oil (Ph. Eur.)', ['8006-84-6'], 'estragole', '140-67-0', null, 6, null, 'memory', 'usual range, not read'],
  ['Sweet fennel oil', ['8006-84-6'], 'estragole', '140-67-0', null, 10, null, 'memory', 'usual range, not read'],
  ['Cassia oil', ['8007-80-5'], 'coumarin', '91-64-5', 1.5, 4, null, 'memory', 'usual range, not read'],
  ['Cinnamon leaf oil', ['8015-91-6'], 'safrole', '94-59-7', null, 3, null, 'memory', 'usual range, not read'],
  ['Cinnamon bark oil (Ph. Eur.)', ['8015-91-6', '8007-80-5'], 'safrole', '94-59-7', null, 0.5, null, 'memory', 'usual range, not read'],
  ['Cinnamon bark oil (Ph. Eur.)', ['8015-91-6', '8007-80-5'], 'coumarin', '91-64-5', null, 0.5, null, 'memory', 'usual range, not read'],
  ['Nutmeg oil (Ph. Eur.)', ['8008-45-5'], 'safrole', '94-59-7', null, 2.5, null, 'memory', 'usual range, not read'],
  ['Sassafras oil', ['8006-80-2'], 'safrole', '94-59-7', 80, 90, null, 'memory', 'usual range, not read'],
  ['Camphor oil, brown/yellow', ['8008-51-3'], 'safrole', '94-59-7', null, 80, null, 'memory', 'usual range, not read'],
  ['Sage oil, Dalmatian (ISO 9909)', ['8022-56-8'], 'alpha-thujone', '546-80-5', 18, 43, null, 'memory', 'usual range, not read'],
  ['Sage oil, Dalmatian (ISO 9909)', ['8022-56-8'], 'beta-thujone', '471-15-8', 3, 8.5, null, 'memory', 'usual range, not read'],
  ['Wormwood oil', ['8008-93-3'], 'beta-thujone', '471-15-8', null, 60, null, 'memory', 'usual range, not read'],
  ['Tansy oil', ['8016-87-3'], 'beta-thujone', '471-15-8', 60, 90, null, 'memory', 'usual range, not read'],
  ['Buchu oil', ['68650-46-4'], 'pulegone', '89-82-7', 3, 50, null, 'memory', 'usual range, not read'],
  ['Tonka bean', ['8046-22-8'], 'coumarin', '91-64-5', 1, 3, null, 'memory', 'usual range, not read'],
  ['Lime oil, expressed', ['8008-26-2'], 'bergapten', '484-20-8', null, 0.3, null, 'memory', 'usual range, not read'],
  ['Grapefruit oil, expressed', ['8016-20-4'], 'bergapten', '484-20-8', null, 0.02, null, 'memory', 'usual range, not read'],
  ['Lemon oil, expressed', ['8008-56-8'], 'bergapten', '484-20-8', null, 0.04, null, 'memory', 'usual range, not read'],
  ['Bitter orange oil, expressed', ['68916-04-1'], 'bergapten', '484-20-8', null, 0.07, null, 'memory', 'usual range, not read'],
  ['Rose oil', ['8007-01-0'], 'methyleugenol', '93-15-2', 0.5, 3.3, null, 'memory', 'usual range, not read'],
  ['Pimento (allspice) leaf/berry oil', ['8006-77-7'], 'methyleugenol', '93-15-2', null, 9, null, 'memory', 'usual range, not read'],
  ['Basil oil, linalool type', ['8015-73-4'], 'methyleugenol', '93-15-2', null, 5, null, 'memory', 'usual range, not read'],
  ['Tarragon oil', ['8016-88-4'], 'methyleugenol', '93-15-2', null, 1.5, null, 'memory', 'usual range, not read'],
  ['Spearmint oil', ['8008-79-5'], 'pulegone', '89-82-7', null, 0.5, null, 'memory', 'usual range, not read'],
  ['Cornmint oil', ['68917-18-0'], 'pulegone', '89-82-7', 0.5, 3, null, 'memory', 'usual range, not read'],
  ['Hyssop oil', ['8006-83-5'], 'pinocamphone + isopinocamphone', '547-60-4', 30, 60, null, 'memory', 'usual range, not read'],
  ['Quassia wood', [], 'quassin', '76-78-8', 0.05, 0.2, null, 'memory', 'usual range, not read'],
];

/** All rows. */
export const constituents: readonly ConstituentRow[] = packed.map(([material, oil, name, cas, low, high, typical, level, source]) => ({
  material,
  oil,
  name,
  cas,
  low: share(low),
  high: share(high),
  typical: share(typical),
  level,
  source,
}));
