/** An instruction; what is in ‹ › is an amount and is drawn so. */
export function Say({ text }: { text: string }) {
  return <>{text.split(/[‹›]/).map((part, i) => (i % 2 === 1 ? <b class="amount">{part}</b> : part))}</>;
}
