import type { MeasureName } from "../../core/measures/measure";
import { measureWords } from "../../words/measures";
import { TAPE_LINES } from "./tapeLines";

// One side of the figure from the neck to below the hip; the other side is its mirror image.
const SIDE = [
  "M0 7 L9 7 C8.8 14 9.4 19.6 11.8 24 C19 28 29 30.5 36.6 34 C41 36 43.4 41 43.3 48.5 C43.2 56 39.6 63.6 34.6 67",
  "C35.4 74 36 80 35.4 86 C34.4 99 28.4 112 27.5 126 C27 140 37.6 152 39.4 171 C40.3 182 39.6 194 38.4 205 C26 209 13 210.5 0 210.5",
].join(" ");

/** A dressmaker's figure with the tape laid where this measure is taken. */
export function TapeFigure({ measure }: { readonly measure: MeasureName }) {
  const line = TAPE_LINES[measure];
  const front = line.view === "front";
  return (
    <svg className="tape-figure" viewBox="-52 0 104 216" aria-hidden="true" focusable="false">
      {[1, -1].map((side) => (
        <g key={side} transform={`scale(${side} 1)`}>
          <path className="figure-skin" d={`${SIDE} Z`} />
          <path className="figure-edge" d={SIDE} />
          <path className="figure-seam" d="M34.6 67 C29.5 61.5 29.5 43 36.6 34" />
          {front ? (
            <>
              <path className="figure-seam" d="M24 30 C22 54 17 74 14.5 89 C12.5 104 12.2 116 12.2 129.6 C14 152 17.4 180 18.4 208.6" />
              <path className="figure-shade" d="M5.5 97 C12 102.5 22.5 101.5 29.5 93" />
            </>
          ) : (
            <>
              <path className="figure-seam" d="M24 30 C22 60 14 100 13 129.6 C14 152 18.4 180 19.4 208.6" />
              <path className="figure-shade" d="M12 60 C15.5 68 21 71 26.5 70.5" />
            </>
          )}
        </g>
      ))}
      <path className="figure-seam" d={front ? "M0 30 L0 210.5" : "M0 21 L0 210.5"} />
      <path className="figure-edge" d={front ? "M-11.8 24 C-9 32 9 32 11.8 24" : "M-11.8 24 C-8 20 8 20 11.8 24"} />
      <ellipse className="figure-cap" cx="0" cy="7" rx="9" ry="2.6" />
      {line.far !== undefined && <path className="tape-far" d={line.far} />}
      <path className="tape-band" d={line.near} />
      <path className="tape-marks" d={line.near} />
      {line.landmarks.map((mark, index) => (
        <g key={`${mark.name} ${mark.x}`} className="tape-landmark">
          <circle cx={mark.x} cy={mark.y} r="2.6" />
          <text x={mark.x + 4.4} y={mark.y - 3.4}>
            {letter(index)}
          </text>
        </g>
      ))}
    </svg>
  );
}

const letter = (index: number): string => String.fromCodePoint(97 + index);

/** The same in words, for everyone. */
export function TapeGuidance({ measure }: { readonly measure: MeasureName }) {
  const line = TAPE_LINES[measure];
  return (
    <>
      <p className="tape-view">{line.view === "front" ? "Seen from the front" : "Seen from the back"}</p>
      <p>{measureWords(measure).where}</p>
      {line.landmarks.length > 0 && (
        <ul className="tape-letters">
          {line.landmarks.map((mark, index) => (
            <li key={`${mark.name} ${mark.x}`}>
              <b>{letter(index)}</b> {mark.name}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
