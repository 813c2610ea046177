import { ICON_BOX } from './iconHtml';

interface Props {
  /** The path of an icon: firstIcons.ts, actionIcons.ts. */
  of: string;
  /** What it says where no words are beside it. Without it the icon is decoration. */
  title?: string;
}

/** An icon in the colour of its words: 24 × 24 with lines of 2, sized in CSS (base.css: .icon). */
export function Icon({ of, title }: Props) {
  const told = title === undefined ? { 'aria-hidden': true } : { role: 'img' as const, 'aria-label': title };
  return (
    <svg class="icon" viewBox={ICON_BOX} {...told}>
      <path d={of} />
    </svg>
  );
}
