/** Skirts drafted to the hip: A-line and straight. */
import type { Allowances } from "../decisions/allowances";
import { partsOfHalves } from "../parts/halfParts";
import type { PiecePart } from "../parts/part";
import type { Piece } from "../pattern/piece";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import { fail, ok, type Result } from "../result";
import { radians, radiansFromDegrees, type Mm } from "../units";
import { draftALine, type ALineAsked, type ALineDraft } from "./draftALine";
import { pockets } from "./gathered";
import type { SkirtAsked, SkirtDraft, SkirtFailure, SkirtNote } from "./skirtDraft";
import { skirtLength } from "./skirtLength";
import {
  FLARE_MOST,
  STEP_OVER_HIP,
  USUAL_FLARE,
  USUAL_HIP_EASE,
  USUAL_VENT,
  VENT_BELOW,
  VENT_LEAST,
} from "./skirtPractice";
import { withVent } from "./vent";

export function aLine(asked: SkirtAsked): Result<SkirtDraft, SkirtFailure> {
  const { skirt, closure } = asked;
  const panels = skirt.panels ?? 2;
  const isShut = skirt.darts === false && panels !== 6;
  const drafted = onHip(asked, {
    flare: radiansFromDegrees(Math.min(Math.max(skirt.flare ?? USUAL_FLARE, 0), FLARE_MOST)),
    shaping: isShut ? "shut" : "darts",
    panels,
    seams: { centreFront: panels === 4, centreBack: panels === 4 || closure.place === "centreBack" },
  });
  if (!drafted.ok) return drafted;
  const { draft, notes } = drafted.value;
  const hangs: readonly SkirtNote[] = isShut ? [{ code: "skirt/hang-before-hemming" }] : [];
  return ok(skirtOf(asked, draft, [...notes, ...stepOf(asked, draft.hem), ...hangs, ...pockets(skirt)], null));
}

export function straight(asked: SkirtAsked): Result<SkirtDraft, SkirtFailure> {
  const { skirt, closure, body } = asked;
  const flat = { flare: radians(0), shaping: "darts", panels: 2 } as const;
  const drafted = onHip(asked, { ...flat, seams: { centreFront: false, centreBack: true } });
  if (!drafted.ok) return drafted;
  const { draft, notes } = drafted.value;
  const needed = (body.hip ?? 0) + STEP_OVER_HIP;
  const most =
    draft.lengths.back - Math.max(body.hipDepth, closure.place === "centreBack" ? closure.belowWaist : 0) - VENT_BELOW;
  const vent = ventOf(skirt.vent ?? (draft.hem < needed ? USUAL_VENT : 0), most);
  if (vent > 0) return ok(skirtOf(asked, draft, [...notes, ...pockets(skirt)], vent));
  // Without a vent the back has a seam only where it opens.
  const whole =
    closure.place === "centreBack"
      ? drafted
      : onHip(asked, { ...flat, seams: { centreFront: false, centreBack: false } });
  if (!whole.ok) return whole;
  return ok(skirtOf(asked, whole.value.draft, [...notes, ...stepOf(asked, draft.hem), ...pockets(skirt)], null));
}

/** As high as asked, but no less than can be sewn and no higher than there is room; 0: none. */
const ventOf = (asked: Mm, most: Mm): Mm =>
  asked > 0 && most >= VENT_LEAST ? Math.min(Math.max(asked, VENT_LEAST), most) : 0;

interface OnHip {
  readonly draft: ALineDraft;
  readonly notes: readonly SkirtNote[];
}

function onHip(
  asked: SkirtAsked,
  shape: Pick<ALineAsked, "flare" | "shaping" | "panels" | "seams">,
): Result<OnHip, SkirtFailure> {
  const { skirt, waist, body, dartPlaces } = asked;
  if (body.hip === null) return fail({ code: "skirt/hip-missing", kind: skirt.kind });
  const length = skirtLength(asked);
  if (!length.ok) return length;
  const { side, level, notes } = length.value;
  const draft = draftALine({
    ...shape,
    kind: skirt.kind,
    waist: waist.halves,
    hip: body.hip,
    hipEase: skirt.hipEase ?? USUAL_HIP_EASE,
    hipDepth: body.hipDepth,
    lengths: { side, front: level?.front ?? null, back: level?.back ?? null },
    ...(dartPlaces === undefined ? {} : { dartPlaces }),
  });
  if (!draft.ok) return draft;
  const usual: readonly SkirtNote[] = body.isHipDepthUsual
    ? [{ code: "skirt/hip-depth-usual", depth: body.hipDepth }]
    : [];
  return ok({ draft: draft.value, notes: [...notes, ...usual] });
}

/** Whether its hem is wide enough to step. */
function stepOf({ body }: SkirtAsked, hem: Mm): readonly SkirtNote[] {
  const needed = (body.hip ?? 0) + STEP_OVER_HIP;
  return hem < needed ? [{ code: "skirt/no-step", girth: hem, needed }] : [];
}

function skirtOf(
  { skirt, closure }: SkirtAsked,
  draft: ALineDraft,
  notes: readonly SkirtNote[],
  vent: Mm | null,
): SkirtDraft {
  const [left, right] = draft.halves;
  const vented = (set: PieceSet): PieceSet => {
    const { skirtBack } = set;
    return vent === null || skirtBack === undefined ? set : { ...set, skirtBack: withVent(skirtBack, vent) };
  };
  const one = vented(left);
  const halves = [one, left === right ? one : vented(right)] as const;
  const { lengths, hem, levels, suppression, flare } = draft;
  // Her other allowances are laid on where it is cut: of a toile they are wider.
  const own = skirt.hem === undefined ? null : { hem: skirt.hem };
  const made = { kind: skirt.kind, lengths, hem, halves, suppression, flare, notes };
  return {
    ...made,
    parts: partsOf(halves, own),
    levels: closure.place === "side" ? levels.side : levels.centreBack,
    ...(vent === null ? {} : { vent }),
  };
}

function partsOf([left, right]: readonly [PieceSet, PieceSet], own: Allowances | null): readonly PiecePart[] {
  return piecesOf(left).flatMap((piece) =>
    partsOfHalves(piece, right[piece.name] ?? null, (one, half) => partOf(one, half, own)),
  );
}

function partOf(piece: Piece, half: "left" | "right" | null, own: Allowances | null): PiecePart {
  const onFold = piece.centreOnFold;
  const part: PiecePart = {
    kind: "piece",
    key: half === null ? piece.name : `${piece.name}-${half}`,
    group: "skirt",
    cloth: "main",
    cut: { onFold, count: onFold || half !== null ? 1 : 2 },
    half,
    grain: "along",
    piece,
  };
  return own === null ? part : { ...part, allowances: own };
}
