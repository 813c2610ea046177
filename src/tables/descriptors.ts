/**
 * Odour words as the trade uses them, by family: common practice, no source. They are offered beside the person's own
 * words; the families are also what the tips of drawn strips are coloured by.
 */
export interface DescriptorFamily {
  readonly id: string;
  readonly name: string;
  readonly words: readonly string[];
}

export const descriptorFamilies: readonly DescriptorFamily[] = [
  {
    id: 'citrus',
    name: 'citrus',
    words: ['lemon', 'lime', 'orange', 'grapefruit', 'mandarin', 'bergamot', 'peel', 'zesty', 'aldehydic'],
  },
  {
    id: 'fruit',
    name: 'fruit',
    words: ['apple', 'pear', 'peach', 'berry', 'cherry', 'banana', 'tropical', 'jammy', 'estery', 'overripe'],
  },
  {
    id: 'flower',
    name: 'flower',
    words: ['rose', 'violet', 'jasmine', 'orange blossom', 'elderflower', 'lilac', 'honeyed', 'powdery', 'soapy'],
  },
  {
    id: 'green',
    name: 'green',
    words: ['cut grass', 'leafy', 'cucumber', 'tomato leaf', 'green bean', 'stalky', 'galbanum', 'unripe', 'dewy'],
  },
  {
    id: 'herb',
    name: 'herb',
    words: ['minty', 'camphor', 'thyme', 'rosemary', 'basil', 'sage', 'anise', 'hay', 'tea', 'medicinal'],
  },
  {
    id: 'spice',
    name: 'spice',
    words: ['clove', 'cinnamon', 'cardamom', 'pepper', 'ginger', 'nutmeg', 'cumin', 'warm', 'pungent'],
  },
  {
    id: 'wood',
    name: 'wood',
    words: ['cedar', 'sandalwood', 'pine', 'resinous', 'earthy', 'mossy', 'rooty', 'leathery', 'dry'],
  },
  {
    id: 'sweet',
    name: 'sweet',
    words: ['vanilla', 'caramel', 'honey', 'creamy', 'buttery', 'coconut', 'almond', 'chocolate', 'malty'],
  },
  {
    id: 'roast',
    name: 'roast',
    words: ['smoky', 'coffee', 'toasted', 'nutty', 'burnt', 'bready', 'meaty', 'sulphury', 'onion'],
  },
  {
    id: 'fresh',
    name: 'fresh',
    words: ['watery', 'marine', 'cool', 'airy', 'ozone', 'salty', 'mineral', 'metallic', 'clean', 'sharp'],
  },
];
