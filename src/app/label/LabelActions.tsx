import { useSignal } from '@preact/signals';
import { labelPng } from '../../ui/label/labelPng';
import { Refused } from '../../workshop/attempt';
import type { ReadyLabel } from './readyLabel';
import { placesOf } from './LabelPrint';
import { noteLabelled } from './unlabelled';
import type { LabelJob } from './labelSetUp';

interface Props {
  labels: readonly ReadyLabel[];
  job: LabelJob;
}

/** Print, and for label printers the pictures of exact dots, to share or to save. */
export function LabelActions({ labels, job }: Props) {
  const trouble = useSignal('');
  const pages = job.sheet ? placesOf(job.sheet, job, labels.length) : labels;
  const problem = pages instanceof Refused ? pages.problem : '';
  const sheets = job.sheet && !problem;
  const { length } = sheets ? (pages as readonly object[]) : labels;
  const one = length === 1;
  return (
    <footer class="actions">
      {[problem, trouble.value].map(
        (sentence) =>
          sentence && (
            <p class="trouble" role="alert">
              {sentence}
            </p>
          ),
      )}
      {!job.sheet && <Pictures labels={labels} dpi={job.dpi} onTrouble={(words) => (trouble.value = words)} />}
      <button
        class="main"
        disabled={problem !== ''}
        onClick={() => {
          window.print();
          void noteLabelled(idsOf(labels));
        }}
      >
        Print {length} {sheets ? (one ? 'sheet' : 'sheets') : one ? 'label' : 'labels'}
      </button>
    </footer>
  );
}

function idsOf(labels: readonly ReadyLabel[]): string[] {
  return labels.map(({ record }) => record.id);
}

interface PicturesProps {
  labels: readonly ReadyLabel[];
  dpi: number;
  onTrouble: (words: string) => void;
}

/** For label printers that do not take what a browser prints: pictures of exact dots. */
function Pictures({ labels, dpi, onTrouble }: PicturesProps) {
  const trying = (work: typeof share) => () => {
    onTrouble('');
    const done = () => noteLabelled(idsOf(labels));
    work(labels, dpi).then(done, (error: unknown) => {
      if (error instanceof DOMException && error.name === 'AbortError') return; // the share sheet was closed
      onTrouble(`That did not work: ${error instanceof Error ? error.message : String(error)}.`);
    });
  };
  return (
    <div class="row">
      {mayShare() && (
        <button class="second" onClick={trying(share)}>
          Share picture
        </button>
      )}
      <button class="second" onClick={trying(save)}>
        Save picture
      </button>
    </div>
  );
}

function mayShare(): boolean {
  const probe = new File([''], 'label.png', { type: 'image/png' });
  return navigator.canShare?.({ files: [probe] }) ?? false;
}

async function share(labels: readonly ReadyLabel[], dpi: number): Promise<void> {
  await navigator.share({ files: await pictures(labels, dpi) });
}

async function save(labels: readonly ReadyLabel[], dpi: number): Promise<void> {
  for (const file of await pictures(labels, dpi)) {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(file);
    link.download = file.name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  }
}

function pictures(labels: readonly ReadyLabel[], dpi: number): Promise<File[]> {
  return Promise.all(
    labels.map(async ({ layout, code, title }) => {
      const name = `${title.replace(/[^\p{L}\p{N}.]+/gu, '-')}-${layout.widthMm}x${layout.heightMm}mm-${dpi}dpi.png`;
      return new File([(await labelPng(layout, code, dpi)) as BlobPart], name, { type: 'image/png' });
    }),
  );
}
