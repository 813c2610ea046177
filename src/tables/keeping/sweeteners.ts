/** Sweeteners: how many times as sweet as sugar by mass, lowest and highest, and what goes wrong with each. */
export interface Sweetener {
  readonly id: string;
  readonly name: string;
  readonly cas: string;
  readonly eNumber: string;
  readonly times: readonly [low: number, high: number];
  /** What is known to go wrong. */
  readonly note: string;
  readonly source: string;
}

const READ = 'a table of sweeteners in Public Health Nutr. 26 (2023) 952 (PMC10346066)';

/** Sweetness falls as a drink gets sweeter, and two together are often sweeter than their sum: ranges, never one number. CAS numbers from memory. */
export const sweeteners: readonly Sweetener[] = [
  { id: 'acesulfame-k', name: 'acesulfame K', cas: '55589-62-3', eNumber: 'E 950', times: [130, 200], note: 'bitter where there is much of it; better with another', source: `${READ}: 200; 130 from memory` },
  { id: 'aspartame', name: 'aspartame', cas: '22839-47-0', eNumber: 'E 951', times: [150, 200], note: 'does not bear heat, and fades in months; the label names phenylalanine', source: READ },
  { id: 'sodium-cyclamate', name: 'sodium cyclamate', cas: '139-05-9', eNumber: 'E 952', times: [30, 50], note: 'not allowed in the US', source: READ },
  { id: 'sodium-saccharin', name: 'sodium saccharin', cas: '128-44-9', eNumber: 'E 954', times: [300, 500], note: 'leaves a bitter and metallic taste', source: READ },
  { id: 'sucralose', name: 'sucralose', cas: '56038-13-2', eNumber: 'E 955', times: [550, 750], note: 'sweet for long after the sip', source: READ },
  { id: 'rebaudioside-a', name: 'steviol glycosides, as rebaudioside A', cas: '58543-16-1', eNumber: 'E 960', times: [250, 350], note: 'leaves a taste of liquorice; limits count steviol, a third of it', source: READ },
];
