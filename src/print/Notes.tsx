const LINES = ["first", "second", "third"] as const;

/** Ruled lines for what the fitting shows; fewer where the sums stand under them. */
export function Notes({ few }: { readonly few: boolean }) {
  return (
    <section className="pc-notes">
      <h4>Notes</h4>
      {LINES.slice(0, few ? 3 : 2).map((line) => (
        <i key={line} aria-hidden="true" />
      ))}
    </section>
  );
}
