/** The figure of a measure: the page and the printed sheet draw the same one, each in its own colours. */
import "./tapeDrawing.css";
import { tapeFigure, type FigureLandmark, type FigureShape } from "../drawing/tapeFigure";
import type { MeasureName } from "../core/measures/measure";

const MIRROR = "scale(-1 1)";

function Shape({ kind, d, mirrored }: FigureShape) {
  return (
    <>
      <path className={`figure-${kind}`} d={d} />
      {mirrored === true && <path className={`figure-${kind}`} d={d} transform={MIRROR} />}
    </>
  );
}

function Landmark({ x, y, letter, mirrored }: FigureLandmark) {
  return (
    <g className="tape-landmark">
      <circle cx={x} cy={y} r="2.6" />
      {mirrored === true && <circle cx={-x} cy={y} r="2.6" />}
      <text x={letter.x} y={letter.y} textAnchor="middle">
        {letter.text}
      </text>
    </g>
  );
}

export function TapeDrawing({ measure }: { readonly measure: MeasureName }) {
  const { box, views } = tapeFigure(measure);
  return (
    <svg
      className="tape-figure light-paper"
      viewBox={[box.x, box.y, box.width, box.height].join(" ")}
      aria-hidden="true"
      focusable="false"
      data-measure={measure}
    >
      {views.map(({ side, shift, body, scale, near, far, landmarks }) => (
        <g key={side} transform={`translate(${shift} 0)`}>
          <g transform={`scale(${scale})`}>
            {body.map((shape) => (
              <Shape key={`${shape.kind} ${shape.d}`} {...shape} />
            ))}
          </g>
          {far !== undefined && <path className="tape-far" d={far} />}
          <path className="tape-band" d={near} />
          <path className="tape-marks" d={near} />
          {landmarks.map((landmark) => (
            <Landmark key={landmark.name} {...landmark} />
          ))}
        </g>
      ))}
    </svg>
  );
}
