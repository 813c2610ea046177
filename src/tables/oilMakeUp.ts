/**
 * What natural oils mainly are, g/g, where it is not terpene hydrocarbons: by that it is judged how much of them water holds. By CAS
 * number of the oil; each constituent by its own CAS number, with the least and the most of it. From memory, but for peppermint: the
 * limits of the European Pharmacopoeia, older edition, as quoted. What is left over counts as terpenes.
 */
export const oilMakeUp: readonly {
  readonly oil: readonly string[];
  readonly parts: readonly (readonly [cas: string, low: number, high: number])[];
}[] = [
  { oil: ['8006-90-4'], parts: [['2216-51-5', 0.3, 0.55], ['89-80-5', 0.14, 0.32], ['470-82-6', 0.035, 0.14]] }, // peppermint: menthol, menthone, cineole
  { oil: ['68917-18-0'], parts: [['2216-51-5', 0.3, 0.5], ['89-80-5', 0.17, 0.35]] }, // cornmint
  { oil: ['8008-79-5'], parts: [['6485-40-1', 0.55, 0.75]] }, // spearmint: carvone
  { oil: ['8000-42-8'], parts: [['2244-16-8', 0.47, 0.65]] }, // caraway: carvone
  { oil: ['8000-34-8', '8015-97-2'], parts: [['97-53-0', 0.75, 0.92]] }, // clove bud and leaf: eugenol
  { oil: ['8006-77-7', '8015-96-1'], parts: [['97-53-0', 0.6, 0.85]] }, // pimento, cinnamon leaf: eugenol
  { oil: ['8007-80-5', '8015-91-6'], parts: [['104-55-2', 0.55, 0.9]] }, // cassia, cinnamon bark: cinnamaldehyde
  { oil: ['8007-70-3', '68952-43-2'], parts: [['4180-23-8', 0.85, 0.95]] }, // aniseed, star anise: anethole
  { oil: ['8006-84-6'], parts: [['4180-23-8', 0.5, 0.8]] }, // fennel: anethole
  { oil: ['8008-52-4'], parts: [['78-70-6', 0.65, 0.78]] }, // coriander: linalool
  { oil: ['8000-28-0', '8022-15-9'], parts: [['78-70-6', 0.25, 0.4], ['115-95-7', 0.25, 0.45]] }, // lavender, lavandin: linalool, linalyl acetate
  { oil: ['8014-17-3'], parts: [['115-95-7', 0.4, 0.6], ['78-70-6', 0.2, 0.3]] }, // petitgrain
  { oil: ['8000-48-4'], parts: [['470-82-6', 0.6, 0.85]] }, // eucalyptus: 1,8-cineole
  { oil: ['8007-02-1', '68855-99-2'], parts: [['5392-40-5', 0.65, 0.85]] }, // lemongrass, litsea cubeba: citral
  { oil: ['8014-19-5'], parts: [['106-24-1', 0.7, 0.85]] }, // palmarosa: geraniol
  { oil: ['8007-01-0'], parts: [['106-22-9', 0.2, 0.45], ['106-24-1', 0.1, 0.25]] }, // rose: citronellol, geraniol
  { oil: ['8007-46-3'], parts: [['89-83-8', 0.35, 0.55]] }, // thyme: thymol
];
