import './fileButton.css';

interface Props {
  words: string;
  name: string;
  accept: string;
  /** Opens the camera of a phone at once. */
  camera?: boolean;
  /** Several files may be chosen. */
  multiple?: boolean;
  onFiles: (files: readonly File[]) => void;
}

/** A button that lets a file be chosen. The same file may be chosen again. */
export function FileButton({ words, name, accept, camera = false, multiple = false, onFiles }: Props) {
  return (
    <label class="second file-button">
      <input
        type="file"
        name={name}
        class="unseen"
        accept={accept}
        multiple={multiple}
        {...(camera && { capture: 'environment' })}
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = '';
          if (files.length > 0) onFiles(files);
        }}
      />
      {words}
    </label>
  );
}
