/** The bodice sewn together, with its basque where it has one. */
import { allowanceOf } from "../cutting/usualAllowances";
import type { PieceName } from "../pattern/piece";
import { isBasque, isFrontPiece } from "../pattern/pieceGroups";
import { BOTH_HALVES, centreSeams, dartSeams, edgeSeams, gatheredDarts, pairedSeams } from "./seamsSewn";
import type { SewnDress } from "./sewnDress";
import { inGroup, keysOf, pieceNameOf, step, stepOfSeams, type StepDraft } from "./stepDraft";
import type { SeamPair } from "../pattern/sewnTogether";

const isOver = (name: PieceName): boolean => !isBasque(name) && name !== "strap";
const isAbove = ({ first }: SeamPair): boolean => !first.some(isBasque);
const isBelow = ({ first }: SeamPair): boolean => first.some(isBasque);

export function bodiceSteps(dress: SewnDress): readonly StepDraft[] {
  const { bodice, allowances, isSide, closedSides, isTurnedThrough } = dress;
  const parts = inGroup(dress.parts, "bodice");
  const of = (seam: Parameters<typeof allowanceOf>[1]) => ({ allowance: allowanceOf(allowances, seam) });
  const backCentres = centreSeams(bodice, (name) => isOver(name) && !isFrontPiece(name));
  const others = parts.filter((part) => pieceNameOf(part)?.startsWith("other") === true);
  return [
    ...stepOfSeams("stayStitch", parts, [
      ...edgeSeams(bodice, "neck", isOver),
      ...edgeSeams(bodice, "armhole", isOver),
    ]),
    ...stepOfSeams("sewDarts", parts, dartSeams(bodice)),
    ...stepOfSeams("drawUpGathers", parts, gatheredDarts(bodice)),
    ...stepOfSeams("princessSeams", parts, pairedSeams(bodice, "princess"), of("princess")),
    ...stepOfSeams("bandToCups", parts, pairedSeams(bodice, "underBust"), of("underBust")),
    ...stepOfSeams(
      "centreFrontSeam",
      parts,
      centreSeams(bodice, (name) => isOver(name) && isFrontPiece(name)),
      of("centre"),
    ),
    ...(isSide ? stepOfSeams("centreBackSeam", parts, backCentres, of("centre")) : []),
    ...stepOfSeams("shoulderSeams", parts, pairedSeams(bodice, "shoulder"), of("shoulder")),
    ...stepOfSeams(
      "bodiceSides",
      isTurnedThrough ? inGroup(dress.parts, "bodice", "bodiceLining", "facing") : parts,
      pairedSeams(bodice, "side", isAbove, closedSides),
      { ...of("side"), way: isTurnedThrough ? (dress.isBodiceLined ? "withLining" : "withFacing") : undefined },
    ),
    ...(others.length === 0 ? [] : [step("otherPieces", keysOf(others))]),
    ...(dress.hasBasque && dress.skirt === null ? basqueSteps(dress) : []),
  ];
}

function basqueSteps({ bodice, allowances, parts, isSide, closedSides, openBelow }: SewnDress): readonly StepDraft[] {
  const own = inGroup(parts, "bodice");
  // The seam that opens is sewn after the zip, below it; where the opening ends at the waist, with the others.
  const sides = pairedSeams(bodice, "side", isBelow, openBelow > 0 ? closedSides : BOTH_HALVES);
  const centres = centreSeams(bodice, (name) => isBasque(name) && (isFrontPiece(name) || isSide || openBelow === 0));
  return [
    ...stepOfSeams("basqueSeams", own, [...sides, ...centres], { allowance: allowanceOf(allowances, "side") }),
    ...stepOfSeams("basqueToBodice", own, pairedSeams(bodice, "waist", isWaistToBasque), {
      allowance: allowanceOf(allowances, "waist"),
    }),
  ];
}

const isWaistToBasque = ({ second }: SeamPair): boolean => second.some(isBasque);
