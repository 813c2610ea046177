/** A box for a passphrase: not remembered by the browser, not corrected by the keyboard. */
export function PassphraseBox({
  title,
  help,
  onText,
}: {
  title: string;
  help: string;
  onText: (text: string) => void;
}) {
  return (
    <label class="field">
      <span class="title">{title}</span>
      <span class="box">
        <input
          name="passphrase"
          type="password"
          autoComplete="new-password"
          autoCapitalize="off"
          spellcheck={false}
          onInput={(event) => onText(event.currentTarget.value)}
        />
      </span>
      <span class="note">{help}</span>
    </label>
  );
}
