import * as say from "../words/printedChecklist";
const LINES = ["first", "second", "third"] as const;

/** Ruled lines for what the fitting shows. */
export function Notes() {
  return (
    <section className="pc-notes">
      <h4>{say.notes}</h4>
      {LINES.map((line) => (
        <i key={line} aria-hidden="true" />
      ))}
    </section>
  );
}
