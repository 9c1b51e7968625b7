import type { SumLine } from "../../words/sumLine";
import { Fractions } from "../fields/Fractions";

/** Figures of a part of the dress, always in view: they are what she chooses by. */
export function DressFigures({ lines, label }: { readonly lines: readonly SumLine[]; readonly label: string }) {
  return (
    <dl className="dress-figures" aria-label={label}>
      {lines.map(({ words, figure, total }) => (
        <div key={words} data-total={total === true ? "" : undefined}>
          <dt>
            <Fractions text={words} />
          </dt>
          <dd>
            <Fractions text={figure} />
          </dd>
        </div>
      ))}
    </dl>
  );
}
