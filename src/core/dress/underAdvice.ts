/** What goes under a cloth that shows through, and what of the sewing shows (common practice, no source). */
import type { Dress, SkirtKind, Under } from "../decisions/dress";
import type { Part } from "../parts/part";
import { isBasque } from "../pattern/pieceGroups";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import type { SeenFinish, Showing } from "../sewing/sewingStep";
import type { UnderAdvice } from "./dressPlan";

/** Skirts that follow the body: an underlining can be tacked to their pieces. */
const FITTED: readonly SkirtKind[] = ["aLine", "straight", "peplum"];

const isFitted = ({ skirt }: Dress): boolean => skirt === undefined || FITTED.includes(skirt.kind);

/**
 * A cloth that shows shapes is lined; of one that shows all, pieces that are fitted are laid double with their underlining, which
 * hides the seams too. Over a full skirt that would take its fall, and a lining would show seams of its own: a slip apart.
 */
function recommendedFor(dress: Dress): Under {
  switch (dress.opacity ?? "opaque") {
    case "opaque":
      return "nothing";
    case "sheer":
      return "lining";
    case "clear":
      return isFitted(dress) ? "underlining" : "slip";
  }
}

const FINISHES: Readonly<Record<Showing, SeenFinish>> = {
  // A curved seam lies badly enclosed in itself, and so does a dart: they are sewn twice and trimmed.
  side: "frenchSeam",
  princess: "narrow",
  darts: "narrow",
  waist: "bound",
  hem: "narrowHem",
  edges: "binding",
};

/** @param bodice of one half */
export function underAdvice(dress: Dress, bodice: PieceSet): UnderAdvice {
  const recommended = recommendedFor(dress);
  const chosen = dress.under ?? recommended;
  const isLined = dress.lining?.bodice === true || dress.lining?.skirt === true;
  const showing = (dress.opacity ?? "opaque") === "opaque" ? [] : showingOf(dress, bodice, chosen);
  return {
    recommended,
    chosen,
    isThere: chosen !== "lining" || isLined,
    showing,
    finishes: showing.map((of) => ({ of, by: FINISHES[of] })),
  };
}

function showingOf(dress: Dress, bodice: PieceSet, under: Under): readonly Showing[] {
  const pieces = piecesOf(bodice);
  const has: Readonly<Record<Showing, boolean>> = {
    side: true,
    princess: pieces.some(({ edges }) => edges.some(({ seam }) => seam === "princess")),
    waist: dress.skirt !== undefined || pieces.some(({ name }) => isBasque(name)),
    darts: pieces.some(({ darts }) => darts.length > 0),
    hem: dress.skirt !== undefined || pieces.some(({ name }) => isBasque(name)),
    edges: dress.lining?.bodice !== true,
  };
  // Between cloth and underlining allowances are hidden; a full skirt has none, and hems lie on the outside of it.
  const hidden: readonly Showing[] =
    under === "underlining"
      ? ["princess", "darts", "waist", "edges", ...(isFitted(dress) ? (["side"] as const) : [])]
      : [];
  return (["side", "princess", "darts", "waist", "hem", "edges"] as const).filter(
    (one) => has[one] && !hidden.includes(one),
  );
}

/** Where cloth is laid double: pieces of bodice and skirt cut once more. */
export const underliningParts = (parts: readonly Part[], under: Under): readonly Part[] =>
  under === "underlining"
    ? parts
        .filter(
          ({ kind, group, cloth }) => kind === "piece" && cloth === "main" && (group === "bodice" || group === "skirt"),
        )
        .map((part) => ({ ...part, key: `${part.key}-underlining`, group: "underlining", cloth: "underlining" }))
    : [];
