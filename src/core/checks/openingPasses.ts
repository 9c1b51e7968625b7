/**
 * The garment can be got on and off: what stays closed when it is open passes over what of the body must go through. Of a
 * bodice with its basque; one that a skirt hangs on is read with it, in the checks of the dress, by the very same rule.
 */
import type { Closure } from "../decisions/pattern";
import type { LevelName, PieceName } from "../pattern/piece";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import type { WayIn } from "../opening/gettingIn";
import { getThrough, longerBy, tightestOf, type Passage } from "../opening/gettingThrough";
import { remember } from "../remember";
import type { Mm } from "../units";
import type { CheckResult } from "./check";
import type { Check } from "./context";

/** It is of the whole garment: asked for the second half it is known. */
const passing = remember(["left", "right", "closure", "bust", "hip"], openingOf);

export const openingPasses: Check = ({ halves: [left, right], closure, body: { bust, hip } }) =>
  passing({ left, right, closure, bust, hip });

interface Opening {
  readonly left: PieceSet;
  readonly right: PieceSet;
  readonly closure: Closure;
  readonly bust: Mm;
  readonly hip: Mm | null;
}

function openingOf({ left, right, closure, ...body }: Opening): readonly CheckResult[] {
  const through = getThrough({
    halves: [left, right],
    closure,
    body,
    skirt: [],
    lining: [],
    liningFree: 0,
    strapLengths: null,
    isNeckUntied: false,
  });
  const [easier] = through.ways;
  if (easier === undefined) return [];
  const { way, passages } = easier;
  const isApart = closure.place === "side";
  return [passages.filter(({ below }) => below === null), passages.filter(({ below }) => below !== null)]
    .filter((_, at) => at === 1 || isApart)
    .flatMap((some) => {
      const tightest = tightestOf(some);
      if (tightest === null) return [];
      return [resultOf({ way, tightest, left, longer: longerBy(some, through) })];
    });
}

interface Tightest {
  readonly way: WayIn;
  readonly tightest: Passage;
  readonly left: PieceSet;
  readonly longer: Mm;
}

function resultOf({ way, tightest, left, longer }: Tightest): CheckResult {
  const { lets, needed, below } = tightest;
  return {
    name: "openingPasses",
    ok: lets >= needed,
    measured: lets,
    expected: needed,
    tolerance: 0,
    unit: "mm",
    ...placeOf(tightest, left),
    ...(below === null ? {} : { tightest: { way, belowWaist: below, longer } }),
  };
}

function placeOf(
  { at, below }: Passage,
  left: PieceSet,
): { readonly pieces: readonly PieceName[]; readonly level: LevelName } {
  if (at === "neck") {
    const round = piecesOf(left).filter((piece) => piece.edges.some(({ seam }) => seam === "neck"));
    return { level: "neck", pieces: round.map(({ name }) => name) };
  }
  const above = below ?? 0;
  const level = at ?? (above > 0 ? "hip" : above < 0 ? "bust" : "waist");
  return { level, pieces: above < 0 ? [] : ["frontBasque", "backBasque"] };
}
