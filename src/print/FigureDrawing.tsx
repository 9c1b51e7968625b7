/** A plain line drawing, on the page in its colours and on paper black on white. */
import "./figureDrawing.css";
import type { Figure, FigureMark } from "../drawing/figure";
import { Words } from "./Words";

interface FigureDrawingProps {
  readonly figure: Figure;
  /** What it shows; it stands beside words that say the same where there are none. */
  readonly label?: string;
  /** Without what is written on it, where it is small. */
  readonly wordless?: boolean;
}

export function FigureDrawing({ figure: { box, marks }, label, wordless = false }: FigureDrawingProps) {
  return (
    <svg
      className="line-figure light-paper"
      viewBox={[box.x, box.y, box.width, box.height].join(" ")}
      {...(label === undefined ? { "aria-hidden": true } : { role: "img", "aria-label": label })}
      focusable="false"
    >
      {marks.map((mark, at) => (wordless && mark.kind === "words" ? null : <Mark key={at} mark={mark} />))}
    </svg>
  );
}

function Mark({ mark }: { readonly mark: FigureMark }) {
  if (mark.kind === "line") return <path data-role={mark.role} d={mark.path} />;
  const { at, text, anchor, size, degrees, bold } = mark;
  return (
    <text
      x={at.x}
      y={at.y}
      fontSize={size}
      fontWeight={bold === true ? 700 : undefined}
      textAnchor={anchor}
      transform={degrees === undefined ? undefined : `rotate(${degrees} ${at.x} ${at.y})`}
    >
      <Words inDrawing>{text}</Words>
    </text>
  );
}
