import type { SumLine } from "../../words/sumLine";
import { Fractions } from "./Fractions";

/** The sum behind a figure, one tap away, written out as on the back of an envelope. */
export function Sum({
  question,
  lines,
  note,
}: {
  readonly question: string;
  readonly lines: readonly SumLine[];
  readonly note?: string;
}) {
  return (
    <details className="sum">
      <summary>{question}</summary>
      <dl>
        {lines.map((line) => (
          <div key={line.words} data-total={line.total === true ? "" : undefined}>
            <dt>
              <Fractions text={line.words} />
            </dt>
            <dd>
              <Fractions text={line.figure} />
            </dd>
          </div>
        ))}
      </dl>
      {note !== undefined && (
        <p>
          <Fractions text={note} />
        </p>
      )}
    </details>
  );
}
