import { allWords } from './translation.ts';

// Prints every text of Minim as a translation that says the same: `npx tsx src/words/list.ts > de.json` is what a translator begins with.
const { written, data } = allWords();
const texts = [...new Set([...written, ...data])].sort();
console.log(JSON.stringify(Object.fromEntries(texts.map((text) => [text, text])), null, 2));
