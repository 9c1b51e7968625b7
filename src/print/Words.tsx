/** Text for paper: a number keeps its unit on its line, and fractions such as 3/16 are set as fractions. */
import { partedAtFractions, tied } from "../words/terms/setting";

// The font's fraction feature makes small figures of all digits in reach, so each fraction is marked by itself.
export function Words({ children, inDrawing = false }: { readonly children: string; readonly inDrawing?: boolean }) {
  const Mark = inDrawing ? "tspan" : "span";
  return partedAtFractions(tied(children)).map((part, index) =>
    index % 2 === 1 ? (
      <Mark key={`${index} ${part}`} className="fraction">
        {part}
      </Mark>
    ) : (
      part
    ),
  );
}
