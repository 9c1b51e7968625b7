import { Fragment } from "react";
import { inchesTied, partedAtFractions } from "../../words/terms/setting";

/**
 * Text with lengths in it: each in one line, and its fraction drawn as one. The font has no sign for eighths and sixteenths, but
 * can draw them. It is one thing for what sets out its parts in a row or a column: a fraction stays in its line.
 */
export function Fractions({ text, inDrawing = false }: { readonly text: string; readonly inDrawing?: boolean }) {
  const Mark = inDrawing ? "tspan" : "span";
  const parts = partedAtFractions(inchesTied(text)).map((part, index) =>
    index % 2 === 1 ? (
      <Mark key={index} className="fraction">
        {part}
      </Mark>
    ) : (
      <Fragment key={index}>{part}</Fragment>
    ),
  );
  return parts.length > 1 && !inDrawing ? <span>{parts}</span> : parts;
}
