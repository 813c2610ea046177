/** What has to be seen before anything else on a card, right under its sentence. */
export function underSentence(words: string) {
  return () => <p class="advice">{words}</p>;
}
