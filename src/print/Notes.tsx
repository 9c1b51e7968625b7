const LINES = ["first", "second", "third", "fourth"] as const;

/** Ruled lines for what the fitting shows; fewer where the rest of the sheet is short enough for one page. */
export function Notes({ few }: { readonly few: boolean }) {
  return (
    <section className="pc-notes">
      <h4>Notes</h4>
      {LINES.slice(0, few ? 3 : LINES.length).map((line) => (
        <i key={line} aria-hidden="true" />
      ))}
    </section>
  );
}
