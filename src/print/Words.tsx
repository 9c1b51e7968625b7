/** Text for paper: a number keeps its unit on its line, and fractions such as 3/16 are set as fractions. */
const BEFORE_UNIT = /(?<=[\d½¼¾]) (?=(?:mm|cm|in|%)(?![A-Za-z]))/g;
const BEFORE_FRACTION = /(?<=\d) (?=(?:[½¼¾]|\d+\/\d+))/g;
const FRACTION = /(\d+\/\d+)/;

export const tied = (text: string): string =>
  text.replaceAll(BEFORE_UNIT, "\u00A0").replaceAll(BEFORE_FRACTION, "\u00A0");

// The font's fraction feature makes small figures of all digits in reach, so each fraction is marked by itself.
export function Words({ children, inDrawing = false }: { readonly children: string; readonly inDrawing?: boolean }) {
  const Mark = inDrawing ? "tspan" : "span";
  return tied(children)
    .split(FRACTION)
    .map((part, index) =>
      FRACTION.test(part) ? (
        <Mark key={`${index} ${part}`} className="pc-fraction">
          {part}
        </Mark>
      ) : (
        part
      ),
    );
}
