import type { LabelLayout } from '../../core/label/label';
import type { PlacedText } from '../../core/label/labelContent';
import { BAR } from '../../core/label/labelText';
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
  /** The printer has black only: the frame of the flame is black too. */
  black?: boolean;
}

/** A label as laid out, in mm. Black on white whatever the light, as it will be printed. */
export function Label({ layout, code, name, width, black = false }: Props) {
  const { widthMm, heightMm, texts, rings, flame } = layout;
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
      {rings.map((ring) => (
        <rect {...ring} />
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
          <path d={flameFrame} fill={black ? '#000' : '#c8102e'} />
          <path d={flameField} fill="#fff" />
          <path d={flameShape} />
        </g>
      )}
    </svg>
  );
}

function Text({ text: { x, y, width, size, face, text, bar } }: { text: PlacedText }) {
  return (
    <>
      {bar && <rect {...bar} y={y - BAR.above * size} height={BAR.height * size} />}
      <text
        class={`face-${face}`}
        x={x}
        y={y}
        font-size={size}
        textLength={width}
        lengthAdjust="spacingAndGlyphs"
        fill={bar ? '#fff' : '#000'}
      >
        {text}
      </text>
    </>
  );
}
