/** The lining of the bodice and of the skirt: sewn for itself, then joined and caught. */
import { allowanceOf } from "../cutting/usualAllowances";
import type { PieceName } from "../pattern/piece";
import { isBasque, isFrontPiece } from "../pattern/pieceGroups";
import { edgeLength } from "../geometry/edgeCurve";
import { openSeamOf } from "../lining/openSeam";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import { curveOf } from "../pattern/ring";
import type { SeamPair } from "../pattern/sewnTogether";
import type { LiningDraft } from "../lining/liningDraft";
import { BOTH_HALVES, centreSeams, dartSeams, edgeSeams, pairedSeams } from "./seamsSewn";
import type { SewnSeam } from "./sewingStep";
import { closedBelow, type SewnDress } from "./sewnDress";
import { inGroup, keysOf, plainSeam, step, stepOfSeams, type StepDraft } from "./stepDraft";

const isAbove = ({ first }: SeamPair): boolean => !first.some(isBasque);
const isOver = (name: PieceName): boolean => !isBasque(name);

export function liningSteps(dress: SewnDress): readonly StepDraft[] {
  const { lining } = dress;
  if (lining === null) return [];
  const steps = [
    ...(dress.isBodiceLined ? bodiceLining(dress, lining) : []),
    ...(dress.isSkirtLined ? skirtLining(dress, lining) : []),
  ];
  const along = alongOpening(dress);
  return steps.length === 0 || along === 0
    ? steps
    : [
        ...steps,
        step("handSewLining", keysOf(inGroup(dress.parts, "bodiceLining", "skirtLining")), {
          seams: [plainSeam(along, 2)],
        }),
      ];
}

function bodiceLining(dress: SewnDress, { bodice: own }: LiningDraft): readonly StepDraft[] {
  const { allowances, isSide, closedSides, openBelow, waist } = dress;
  const parts = inGroup(dress.parts, "bodiceLining");
  const hasBasque = own.some((half) => piecesOf(half).some(({ name }) => isBasque(name)));
  const side = allowanceOf(allowances, "side");
  const below = closedBelow(dress);
  return [
    ...stepOfSeams("liningDarts", parts, [...dartSeams(own)]),
    ...stepOfSeams(
      "liningSeams",
      parts,
      [
        ...pairedSeams(own, "princess"),
        ...pairedSeams(own, "underBust"),
        ...centreSeams(own, (name) => isOver(name) && (isFrontPiece(name) || isSide)),
      ],
      { allowance: allowanceOf(allowances, "princess") },
    ),
    ...stepOfSeams("liningShoulders", parts, pairedSeams(own, "shoulder"), {
      allowance: allowanceOf(allowances, "shoulder"),
    }),
    // Where the shell's sides are sewn in one with the lining's, that step is of both.
    ...(dress.hasShoulders
      ? []
      : stepOfSeams("liningSides", parts, pairedSeams(own, "side", isAbove, closedSides), { allowance: side })),
    ...(hasBasque
      ? [
          ...stepOfSeams(
            "liningBasque",
            parts,
            [
              ...pairedSeams(
                own,
                "side",
                ({ first }) => first.some(isBasque),
                isSide && openBelow === 0 ? BOTH_HALVES : closedSides,
              ),
              ...centreSeams(own, (name) => isBasque(name) && (isFrontPiece(name) || isSide || openBelow === 0)),
              ...(below > 0 ? [plainSeam(below)] : []),
              ...pairedSeams(own, "waist", ({ second }) => second.some(isBasque)),
            ],
            { allowance: side },
          ),
          step("hemLining", keysOf(parts), { seams: edgeSeams(own, "hem", isBasque) }),
        ]
      : [step("closeLiningWaist", keysOf(parts), { seams: [plainSeam(waist.whole)] })]),
  ];
}

function skirtLining(dress: SewnDress, { skirt: own, skirtFigures }: LiningDraft): readonly StepDraft[] {
  const { allowances, isSide, closedSides, dress: decided } = dress;
  const parts = inGroup(dress.parts, "skirtLining");
  const isFree = skirtFigures?.free != null;
  // The seam that opens is left open down to the end of its V.
  const sides = pairedSeams(own, "side", undefined, isSide && !isFree ? BOTH_HALVES : closedSides);
  const below = seamBelowFree(own[0], dress);
  return [
    ...stepOfSeams("liningSkirtDarts", parts, dartSeams(own), {
      way: decided.lining?.shaping === "pleats" ? "pleats" : undefined,
    }),
    ...stepOfSeams(
      "liningSkirtSeams",
      parts,
      [
        ...pairedSeams(own, "panel"),
        ...sides,
        ...centreSeams(own, (name) => isFrontPiece(name) || isSide),
        ...(below === null ? [] : [below]),
      ],
      { allowance: allowanceOf(allowances, "side") },
    ),
    step("liningSkirtToWaist", keysOf(parts), {
      seams: [plainSeam(skirtFigures?.waist ?? dress.waist.whole)],
      allowance: allowanceOf(allowances, "waist"),
    }),
    step("hemLining", keysOf(parts), { seams: [plainSeam(skirtFigures?.hem ?? 0)] }),
  ];
}

/** The seam that opens, from the end of its V down to the hem; null where none does. */
function seamBelowFree(left: PieceSet, { isSide, closure }: SewnDress): SewnSeam | null {
  for (const piece of piecesOf(left)) {
    const seam = openSeamOf(piece, closure.place);
    if (seam === null || isFrontPiece(piece.name)) continue;
    const atWaist = new Set(piece.edges.flatMap((edge) => (edge.seam === "waist" ? [edge.from, edge.to] : [])));
    const length = piece.edges
      .filter((edge) => edge.seam === seam && !atWaist.has(edge.from) && !atWaist.has(edge.to))
      .reduce((sum, edge) => sum + edgeLength(curveOf(piece, edge)), 0);
    return length > 0 ? { seam, pieces: [piece.name], half: isSide ? "left" : null, length, count: 1 } : null;
  }
  return null;
}

/** Along one side of the opening, as far as the lining reaches there. */
function alongOpening({ reading, openBelow, isBodiceLined, isSkirtLined, skirt, hasBasque }: SewnDress): number {
  const above = reading === null ? 0 : Math.max(0, reading.opening - openBelow);
  const isLinedBelow = isSkirtLined || (isBodiceLined && skirt === null && hasBasque);
  return (isBodiceLined ? above : 0) + (isLinedBelow ? openBelow : 0);
}
