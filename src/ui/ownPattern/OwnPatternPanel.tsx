/** Outlines read from a file, and what she says of them. */
export function OwnPatternPanel() {
  return <p className="field-hint">Files of outlines are not read yet.</p>;
}
