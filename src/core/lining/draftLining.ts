/** The lining of what is chosen to be lined. */
import type { Allowances } from "../decisions/allowances";
import type { Lining } from "../decisions/dress";
import type { Closure } from "../decisions/pattern";
import type { DressBody, FinishedWaist } from "../parts/dressBody";
import { isBasque } from "../pattern/pieceGroups";
import type { Piece } from "../pattern/piece";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import { ok, type Result } from "../result";
import type { SkirtDraft } from "../skirts/skirtDraft";
import { bodiceLining } from "./bodiceLining";
import type { LiningDraft, LiningFailure } from "./liningDraft";
import { liningParts } from "./liningParts";
import type { FreeEnd } from "./leaveFree";
import { openAt, openSeamOf, type OpenAt } from "./openSeam";
import { lineSkirt } from "./skirtLining";
import { FREE_LEAST, USUAL_BODICE_EASE, USUAL_FREE_BELOW, USUAL_FREE_BESIDE } from "./usualLining";

export interface LiningAsked {
  readonly lining: Lining;
  /** The finished bodice, the wearer's left half first. */
  readonly bodice: readonly [PieceSet, PieceSet];
  /** null: there is no skirt to be lined. */
  readonly skirt: SkirtDraft | null;
  readonly waist: FinishedWaist;
  readonly body: DressBody;
  readonly closure: Closure;
  readonly allowances: Allowances;
}

const NONE: PieceSet = {};

/** Side seams of the whole bodice: of a front and a back, on either side. */
const SIDES = 4;

export function draftLining(asked: LiningAsked): Result<LiningDraft, LiningFailure> {
  const { lining, skirt, closure } = asked;
  const isBodice = lining.bodice === true;
  const isSkirt = lining.skirt === true && skirt !== null;
  const free = {
    beside: lining.freeBeside ?? USUAL_FREE_BESIDE,
    below: Math.max(Math.max(closure.belowWaist, 0) + (lining.freeBelow ?? USUAL_FREE_BELOW), FREE_LEAST),
  };
  const lined = isSkirt ? lineSkirt({ ...asked, skirt, free }) : null;
  if (lined?.ok === false) return lined;
  const bodice = isBodice ? bodiceHalves(asked, free) : ([NONE, NONE] as const);
  const below = lined?.value ?? { skirt: [NONE, NONE] as const, skirtFigures: null, levels: [], notes: [] };
  return ok({
    ...below,
    bodice,
    free: below.skirtFigures?.free ?? (opensBelow(bodice, closure) ? free : null),
    beside: isBodice || isSkirt ? free.beside : 0,
    parts: [...liningParts(bodice, "bodiceLining"), ...liningParts(below.skirt, "skirtLining")],
  });
}

/** Whether a basque of it has a seam that opens. */
const opensBelow = ([left, right]: LiningDraft["bodice"], closure: Closure): boolean =>
  [...openIn(left, openAt("left", closure)), ...openIn(right, openAt("right", closure))].length > 0;

const openIn = (half: PieceSet, at: OpenAt): readonly Piece[] =>
  piecesOf(half).filter((piece) => isBasque(piece.name) && openSeamOf(piece, at) !== null);

function bodiceHalves({ lining, bodice, closure }: LiningAsked, free: FreeEnd): readonly [PieceSet, PieceSet] {
  // A side that opens has no room for ease: the other one takes it all.
  const ease = (lining.bodiceEase ?? USUAL_BODICE_EASE) / (closure.place === "side" ? SIDES / 2 : SIDES);
  const [left, right] = [openAt("left", closure), openAt("right", closure)];
  const one = bodiceLining({ pieces: bodice[0], at: left, ease, ...free });
  return [
    one,
    bodice[1] === bodice[0] && left === right ? one : bodiceLining({ pieces: bodice[1], at: right, ease, ...free }),
  ];
}
