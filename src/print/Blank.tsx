/** A line to write on. */
export function Blank({ label }: { readonly label: string }) {
  return (
    <p className="pc-blank">
      <span>{label}</span>
      <i aria-hidden="true" />
    </p>
  );
}
