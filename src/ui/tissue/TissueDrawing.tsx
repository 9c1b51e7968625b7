import type { TissueLength } from "../../core/decisions/tissue";
import type { TissueFigure } from "../../drawing/tissueFigure";

export interface TissueDrawingProps {
  readonly figure: TissueFigure;
  /** The length whose field has the focus. */
  readonly lit: TissueLength | null;
  readonly measured: ReadonlySet<TissueLength>;
  /** "fold" or "centre front", along the centre line. */
  readonly centreWords: string;
  /** The name of the piece, on it. */
  readonly title: string;
}

/** Pixels. */
const LETTER = 12;
const RING = 3.2;
const DISC = 7.5;

/** A piece as it is printed, with a letter at each place where the tape is laid. */
export function TissueDrawing({ figure, lit, measured, centreWords, title }: TissueDrawingProps) {
  const { box, mmPerPixel, centre, next } = figure;
  const px = (pixels: number): number => pixels * mmPerPixel;
  const isOnNext = figure.tapes.some(({ length, onNext }) => onNext && length === lit);
  const inOrder = figure.tapes.toSorted((a, b) => Number(a.length === lit) - Number(b.length === lit));
  return (
    <svg
      className="tissue-figure light-paper"
      viewBox={[box.x, box.y, box.width, box.height].join(" ")}
      style={{ fontSize: `${px(LETTER)}px` }}
      aria-hidden="true"
      focusable="false"
      data-lit={lit ?? undefined}
    >
      {next !== null && (
        <g className="tissue-next" data-lit={isOnNext ? "" : undefined}>
          <path d={next.outline} />
          {isOnNext && next.darts.map((legs) => <path key={legs} d={legs} />)}
        </g>
      )}
      <path className="tissue-piece" d={figure.outline} />
      {centre.onFold && <path className="tissue-fold" d={centre.path} />}
      {figure.darts.map((legs) => (
        <path key={legs} className="tissue-dart" d={legs} />
      ))}
      {figure.bustPoint !== null && (
        <path
          className="tissue-bust"
          d={`M${figure.bustPoint.x - px(5)} ${figure.bustPoint.y}h${px(10)}M${figure.bustPoint.x} ${figure.bustPoint.y - px(5)}v${px(10)}`}
        />
      )}
      {centre.middle !== null && (
        <text
          className="tissue-words"
          transform={`translate(${centre.middle.x + px(11)} ${centre.middle.y}) rotate(-90)`}
          textAnchor="middle"
        >
          {centreWords}
        </text>
      )}
      <text className="tissue-title" x={figure.titleAt.x} y={figure.titleAt.y}>
        {title}
      </text>
      {inOrder.map(({ length, letter, tape, ends, letterAt }) => {
        const isLit = length === lit;
        return (
          <g
            key={length}
            className="tissue-tape"
            data-lit={isLit ? "" : undefined}
            data-measured={measured.has(length) ? "" : undefined}
          >
            <path className="tissue-band" d={tape} />
            {isLit && <path className="tissue-marks" d={tape} />}
            {isLit &&
              ends.map(({ x, y }, index) => <circle key={index} className="tissue-end" cx={x} cy={y} r={px(RING)} />)}
            <circle className="tissue-disc" cx={letterAt.x} cy={letterAt.y} r={px(DISC)} />
            <text className="tissue-letter" x={letterAt.x} y={letterAt.y + px(LETTER * 0.34)} textAnchor="middle">
              {letter}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
