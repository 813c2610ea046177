import type { LabelLayout } from '../../core/label/label';
import type { PlacedText } from '../../core/label/labelContent';
import { BADGE_PAD } from '../../core/label/labelText';
import { flameField, flameFrame, flameShape } from '../flame';
import { darkRuns, type SquareCode } from './squareCode';
import './label.css';

interface Props {
  layout: LabelLayout;
  code: SquareCode | null;
  /** What it is, for those who do not see it. */
  name: string;
  /** Width on the screen or page, as in CSS; its true size in mm when left out. */
  width?: string;
}

/** A label as laid out, in mm. Black on white whatever the light, as it will be printed. */
export function Label({ layout, code, name, width }: Props) {
  const { widthMm, heightMm, texts, flame } = layout;
  return (
    <svg
      class="label"
      viewBox={`0 0 ${widthMm} ${heightMm}`}
      width={width ?? `${widthMm}mm`}
      height={width === undefined ? `${heightMm}mm` : undefined}
      role="img"
      aria-label={name}
    >
      <rect width={widthMm} height={heightMm} fill="#fff" />
      {texts.map((text) => (
        <Text text={text} />
      ))}
      {layout.code && code && (
        <path
          transform={`translate(${layout.code.x} ${layout.code.y}) scale(${layout.code.module})`}
          d={darkRuns(code)
            .map(({ x, y, length }) => `M${x} ${y}h${length}v1h${-length}z`)
            .join('')}
          shape-rendering="crispEdges"
        />
      )}
      {flame && (
        <g transform={`translate(${flame.x} ${flame.y}) scale(${flame.side / 100})`}>
          <path d={flameFrame} fill="#c8102e" />
          <path d={flameField} fill="#fff" />
          <path d={flameShape} />
        </g>
      )}
    </svg>
  );
}

function Text({ text: { x, y, width, size, face, text } }: { text: PlacedText }) {
  return (
    <>
      {face === 'badge' && (
        <rect x={x - BADGE_PAD * size} y={y - 0.8 * size} width={width + 2 * BADGE_PAD * size} height={1.06 * size} />
      )}
      <text
        class={`face-${face}`}
        x={x}
        y={y}
        font-size={size}
        textLength={width}
        lengthAdjust="spacingAndGlyphs"
        fill={face === 'badge' ? '#fff' : '#000'}
      >
        {text}
      </text>
    </>
  );
}
