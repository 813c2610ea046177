const LONGEST = 14; // signs, our choice: what is longer may go over two lines

/** An instruction; what is in ‹ › is an amount, or what is written on a vial, and is drawn so. */
export function Say({ text }: { text: string }) {
  return (
    <>
      {text
        .split(/[‹›]/)
        .map((part, i) =>
          i % 2 === 1 ? <b class={part.length > LONGEST ? 'amount long' : 'amount'}>{part}</b> : part,
        )}
    </>
  );
}
