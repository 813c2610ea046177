import { useLayoutEffect } from 'preact/hooks';
import { sheetPlaces } from '../../core/label/labelSheet';
import { attempt, Refused } from '../../workshop/attempt';
import { Label } from '../../ui/label/Label';
import type { ReadyLabel } from './readyLabel';
import type { LabelJob } from './labelSetUp';

interface Props {
  labels: readonly ReadyLabel[];
  job: LabelJob;
}

/** What the browser prints: one label to a page of its exact size, or sheets of labels. Not seen on the screen. */
export function LabelPrint({ labels, job }: Props) {
  const page = job.sheet ?? job;
  usePageSize(page);
  return (
    <div class="label-print" aria-hidden="true">
      {job.sheet ? (
        <Sheets labels={labels} job={job} sheet={job.sheet} />
      ) : (
        labels.map((label) => <Single {...label} />)
      )}
    </div>
  );
}

function Single({ layout, code, title }: ReadyLabel) {
  return (
    <div class="print-page" style={{ width: `${layout.widthMm}mm`, height: `${layout.heightMm}mm` }}>
      <Label layout={layout} code={code} name={title} black />
    </div>
  );
}

function Sheets({ labels, job, sheet }: Props & { sheet: NonNullable<LabelJob['sheet']> }) {
  const places = placesOf(sheet, job, labels.length);
  if (places instanceof Refused) return null; // the actions say why
  const before = places.map((_, page) => places.slice(0, page).reduce((sum, { length }) => sum + length, 0));
  return (
    <>
      {places.map((page, i) => (
        <div class="print-page" style={{ width: `${sheet.widthMm}mm`, height: `${sheet.heightMm}mm` }}>
          {page.map(({ x, y }, at) => (
            <div class={sheet.marginMm ? 'place' : 'place cut'} style={{ left: `${x}mm`, top: `${y}mm` }}>
              <Placed {...labels[before[i]! + at]!} />
            </div>
          ))}
        </div>
      ))}
    </>
  );
}

function Placed({ layout, code, title }: ReadyLabel) {
  return <Label layout={layout} code={code} name={title} />;
}

/** Where the labels lie, or why they cannot. */
export function placesOf(
  sheet: NonNullable<LabelJob['sheet']>,
  { widthMm, heightMm }: LabelJob,
  count: number,
): ReturnType<typeof sheetPlaces> | Refused {
  return attempt(() => sheetPlaces({ ...sheet, labelWidthMm: widthMm, labelHeightMm: heightMm }, count));
}

/** Sets the size of the printed page while this is shown: together with what is printed, or a quick finger prints it on the size of before. */
function usePageSize({ widthMm, heightMm }: { widthMm: number; heightMm: number }): void {
  useLayoutEffect(() => {
    const rules = new CSSStyleSheet(); // made here, not parsed from the page: the content policy lets it pass
    rules.replaceSync(`@page { size: ${widthMm}mm ${heightMm}mm; margin: 0 }`);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== rules);
    };
  }, [widthMm, heightMm]);
}
