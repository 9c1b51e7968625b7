/**
 * The lining of a skirt, whatever the skirt's shape: an A-line of two panels on the same finished waist, with ease over the hip to
 * sit and a hem to step, caught in the waist seam alone, its ends left free of the zip.
 */
import { STEPPING_OVER_HIPS } from "../opening/gettingThrough";

import type { Lining } from "../decisions/dress";
import type { Closure } from "../decisions/pattern";
import type { DressBody, FinishedWaist } from "../parts/dressBody";
import { piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import { fail, ok, type Result } from "../result";
import { draftALine, type ALineDraft } from "../skirts/draftALine";
import type { SkirtDraft, SkirtFailure, SkirtLevel } from "../skirts/skirtDraft";
import { READS_AS_NOTHING } from "../tolerance";
import { radiansFromDegrees, type Mm } from "../units";
import { leaveFree, type FreeEnd } from "./leaveFree";
import type { LiningDraft, LiningFailure, LiningNote } from "./liningDraft";
import { openAt, openSeamOf, type OpenAt } from "./openSeam";
import { KNEE_BELOW_HIP, STEP_OVER_HIP, USUAL_LINING_FLARE, USUAL_LINING_HIP_EASE, USUAL_SHORTER } from "./usualLining";

interface SkirtToLine {
  readonly lining: Lining;
  readonly waist: FinishedWaist;
  readonly body: DressBody;
  readonly closure: Closure;
  readonly skirt: SkirtDraft;
  readonly free: FreeEnd;
}

type Lined = Pick<LiningDraft, "skirt" | "skirtFigures" | "levels" | "notes">;

/** The hem that a step needs; mm all round. What ends above the knee is stepped in the easier, and above the hip not at all. */
export const stepNeeded = (hip: Mm, belowHip: Mm): Mm =>
  hip + STEP_OVER_HIP * Math.min(1, Math.max(0, belowHip / KNEE_BELOW_HIP));

export function lineSkirt({ lining, skirt, waist, body, closure, free }: SkirtToLine): Result<Lined, LiningFailure> {
  const { hip, hipDepth } = body;
  if (hip === null) return fail({ code: "lining/hip-missing" });
  const ease = lining.hipEase ?? USUAL_LINING_HIP_EASE;
  const shorter = lining.shorter ?? USUAL_SHORTER;
  const length = skirt.lengths.side - shorter;
  const belowHip = length - hipDepth;
  const needed = stepNeeded(hip, belowHip);
  const usualHem = Math.max(needed, hip + ease + 4 * belowHip * Math.tan(radiansFromDegrees(USUAL_LINING_FLARE)));
  const isLevelled = body.toFloor !== null;
  const made = draftALine({
    kind: "aLine",
    waist: waist.halves,
    hip,
    hipEase: ease,
    hipDepth,
    lengths: {
      side: length,
      front: isLevelled ? skirt.lengths.front - shorter : null,
      back: isLevelled ? skirt.lengths.back - shorter : null,
    },
    flare: { hem: lining.hemGirth ?? usualHem },
    shaping: lining.shaping ?? "darts",
    panels: 2,
    seams: { centreFront: false, centreBack: closure.place === "centreBack" },
  });
  if (!made.ok) return fail(failureOf(made.failure, { waist, hip: hip + ease }));
  const draft = made.value;
  const levels = cloth(draft.levels[closure.place], free);
  // Her hip line lies as far above the hem at the centre back as at the side.
  const hipBelow = hipDepth + (closure.place === "side" ? 0 : draft.lengths.back - draft.lengths.side);
  const lets = letsThrough(levels, free.below, hipBelow);
  const notes: LiningNote[] = [
    { code: "lining/over-hips", lets, needed: hip + STEPPING_OVER_HIPS, passes: lets >= hip + STEPPING_OVER_HIPS },
  ];
  if (draft.hem < needed - READS_AS_NOTHING) notes.push({ code: "lining/no-step", girth: draft.hem, needed });
  if (shorter < 0) notes.push({ code: "lining/longer-than-skirt", by: -shorter });
  return ok({
    skirt: freeHalves(draft, openAt("left", closure), openAt("right", closure), free),
    skirtFigures: {
      waist: waist.whole - 2 * free.beside,
      hip: draft.hip,
      hipLeast: hip + ease,
      hipDepth,
      hem: draft.hem,
      lengths: draft.lengths,
      free,
    },
    levels,
    notes,
  });
}

function freeHalves({ halves }: ALineDraft, left: OpenAt, right: OpenAt, free: FreeEnd): readonly [PieceSet, PieceSet] {
  const of = (pieces: PieceSet, at: OpenAt): PieceSet =>
    setOf(
      piecesOf(pieces).map((piece) => {
        const seam = openSeamOf(piece, at);
        return seam === null ? piece : leaveFree(piece, seam, free);
      }),
    );
  const one = of(halves[0], left);
  return [one, halves[1] === halves[0] && left === right ? one : of(halves[1], right)];
}

/** What of each level is cloth: beside the zip its ends stand apart. */
const cloth = (levels: readonly SkirtLevel[], free: FreeEnd): readonly SkirtLevel[] =>
  withLevelAt(levels, free.below).map(({ below, girth }) => ({
    below,
    girth: girth - 2 * free.beside * Math.max(0, 1 - below / free.below),
  }));

/** A level more, between two of them. */
function withLevelAt(levels: readonly SkirtLevel[], below: Mm): readonly SkirtLevel[] {
  const at = levels.findIndex((level) => level.below >= below);
  const [before, after] = [levels[at - 1], levels[at]];
  if (before === undefined || after === undefined || after.below === below) return levels;
  const share = (below - before.below) / (after.below - before.below);
  return levels.toSpliced(at, 0, { below, girth: before.girth + share * (after.girth - before.girth) });
}

/** The least loop that the hips go through: round each level down to their own line, and twice the way to where it is shut. */
function letsThrough(levels: readonly SkirtLevel[], end: Mm, hipBelow: Mm): Mm {
  const passed = withLevelAt(levels, hipBelow).filter(({ below }) => below <= hipBelow);
  return Math.min(...passed.map(({ below, girth }) => girth + 2 * Math.max(0, end - below)));
}

function failureOf(
  failure: SkirtFailure,
  { waist, hip }: { readonly waist: FinishedWaist; readonly hip: Mm },
): LiningFailure {
  switch (failure.code) {
    case "skirt/hip-missing":
      return { code: "lining/hip-missing" };
    case "skirt/length-out-of-range":
      return failure.length < failure.least
        ? { code: "lining/too-short", length: failure.length, least: failure.least }
        : { code: "lining/too-long", length: failure.length, most: failure.most };
    case "skirt/darts-too-wide":
      return { code: "lining/darts-too-wide", intake: failure.intake, most: failure.most };
    case "skirt/length-missing":
    case "skirt/ratio-out-of-range":
    case "skirt/share-out-of-range":
    case "skirt/tiers-deeper-than-skirt":
    case "skirt/cloth-too-narrow":
      return { code: "lining/length-missing" };
    case "skirt/waist-over-hip":
      return { code: "lining/waist-over-hip", waist: waist.whole, hip };
  }
}
