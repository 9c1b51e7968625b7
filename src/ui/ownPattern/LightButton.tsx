import { OWN_WORDS } from "../../words/ownPattern";
import { useOwnView, type Lit } from "./ownView";

const isSameLit = (a: Lit | null, b: Lit): boolean =>
  a !== null &&
  a.kind === b.kind &&
  (a.kind === "lines" ? b.kind === "lines" && a.value === b.value : b.kind !== "lines" && a.id === b.id);

/** Lights something on the sheet, until it is pressed again. @param of what it is, for those who do not see it beside */
export function LightButton({ lit, of }: { readonly lit: Lit; readonly of: string }) {
  const now = useOwnView((view) => view.lit);
  const light = useOwnView((view) => view.light);
  const isLit = isSameLit(now, lit);
  return (
    <button
      type="button"
      className="button small quiet"
      aria-pressed={isLit}
      aria-label={`${OWN_WORDS.show}: ${of}`}
      onClick={() => light(isLit ? null : lit)}
    >
      {OWN_WORDS.show}
    </button>
  );
}
