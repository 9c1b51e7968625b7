/** From a place on the piece, or a typed number, to the alteration that brings a dart there. */
import {
  isMadeOn,
  isRedraw,
  type Alteration,
  type AlterationKind,
  type DartEndAlteration,
  type DartMouthAlteration,
  type DartPlaceAlteration,
  type DartRedraw,
  type GiveBack,
  type Half,
  type Hold,
} from "../decisions/alteration";
import { redrawsOf } from "../decisions/seenAtDart";
import { apexOffset, mouthOffset } from "../dart/dartFrame";
import type { DartFigures } from "../dart/dartFigures";
import type { PiecePoint } from "../geometry/point";
import { isSameDart, type DartRef } from "../pattern/piece";
import { applyCommand, type Command } from "./commands";
import { type LengthUnit, type Work } from "../decisions/work";
import { MM_PER_INCH, type Mm } from "../units";
import { planOf } from "./planOf";
import { idOnHalf, isNothing } from "./putAlteration";

export type HandleEnd = "apex" | "inner" | "outer";

/** What an arrow key moves, and what a drag snaps to. */
export const snapStep = (unit: LengthUnit): Mm => (unit === "cm" ? 1 : MM_PER_INCH / 16);

export const snapToStep = (value: Mm, unit: LengthUnit): Mm => {
  const step = snapStep(unit);
  // Nothing is nothing: never minus nothing, which no file can keep.
  return Math.round(Math.round(value / step) * step * 1e4) / 1e4 + 0;
};

/** One alteration of each kind for each dart, on both halves or on each, so its id says which. */
export const alterationId = (kind: AlterationKind, { piece, dart }: DartRef, half?: Half): string =>
  idOnHalf(`${kind}-${piece}-${dart}`, half);

/** What a dart's end holds when it is first moved. */
export const USUAL_HOLD: Hold = "mouth";

type RedrawKind = DartRedraw["kind"];

/** As it stands on a half or, where there is one for both, for that half alone; half undefined: the one for both. */
function existing<K extends RedrawKind>(
  work: Work,
  kind: K,
  dart: DartRef,
  half: Half | undefined,
): Extract<DartRedraw, { kind: K }> | undefined {
  const isOne = (a: Alteration): a is Extract<DartRedraw, { kind: K }> =>
    a.kind === kind && isRedraw(a) && isSameDart(a.dart, dart);
  const found = work.alterations.filter(isOne).find((a) => (half === undefined ? a.half === half : isMadeOn(a, half)));
  return found === undefined || half === undefined || found.half === half ? found : { ...found, half };
}

const onHalf = (half: Half | undefined): { readonly half?: Half } => (half === undefined ? {} : { half });

/** @param half the half that it is to be for; undefined: both */
export const endOf = (work: Work, dart: DartRef, hold: Hold, half?: Half): DartEndAlteration =>
  existing(work, "dartEnd", dart, half) ?? {
    kind: "dartEnd",
    id: alterationId("dartEnd", dart, half),
    dart,
    shorten: 0,
    across: 0,
    hold,
    giveBack: sharesOf(work, dart, half),
    ...onHalf(half),
  };

export const mouthOf = (work: Work, dart: DartRef, half?: Half): DartMouthAlteration =>
  existing(work, "dartMouth", dart, half) ?? {
    kind: "dartMouth",
    id: alterationId("dartMouth", dart, half),
    dart,
    inner: 0,
    outer: 0,
    giveBack: sharesOf(work, dart, half),
    ...onHalf(half),
  };

export const placeOf = (work: Work, dart: DartRef, half?: Half): DartPlaceAlteration =>
  existing(work, "dartPlace", dart, half) ?? {
    kind: "dartPlace",
    id: alterationId("dartPlace", dart, half),
    dart,
    by: 0,
    how: "redraw",
    giveBack: sharesOf(work, dart, half),
    ...onHalf(half),
  };

/** The shares already set for this dart go for its other alterations too. */
export const sharesOf = (work: Work, dart: DartRef, half?: Half): GiveBack =>
  redrawsOf(work.alterations, dart).find(
    (a) => (half === undefined || isMadeOn(a, half)) && Object.keys(a.giveBack).length > 0,
  )?.giveBack ?? {};

/** Puts an alteration, or takes it out of the ledger where it would do nothing. */
export const putOrRemove = (alteration: DartRedraw): Command =>
  isNothing(alteration)
    ? { kind: "removeAlteration", id: alteration.id, ...onHalf(alteration.half) }
    : { kind: "putAlteration", alteration };

/** The dart as it is before the alteration that a handle sets (and those that come after it on the same dart). */
export function dartBefore(work: Work, dart: DartRef, end: HandleEnd, half: Half): DartFigures | null {
  const kinds: readonly RedrawKind[] = end === "apex" ? ["dartEnd"] : ["dartMouth", "dartEnd"];
  const before = kinds.reduce<Work>(
    (w, kind) => applyCommand(w, { kind: "removeAlteration", id: existing(w, kind, dart, half)?.id ?? "", half }),
    work,
  );
  const plan = planOf(before);
  return plan.ok ? (plan.value[half].darts.find((d) => isSameDart(d.ref, dart))?.drawn ?? null) : null;
}

/**
 * Starts moving a handle.
 *
 * @param half the half of the body that is looked at
 * @param on   the half that it is moved on; undefined: both
 * @returns a function from where the handle should be (piece frame) to the command that brings it there; null where
 *          there is no such dart now
 */
export function moverOf(
  work: Work,
  dart: DartRef,
  end: HandleEnd,
  hold: Hold,
  half: Half,
  on?: Half,
): ((to: PiecePoint) => Command) | null {
  const before = dartBefore(work, dart, end, half);
  if (before === null) return null;
  if (end === "apex") {
    const base = endOf(work, dart, hold, on);
    return (to) => {
      const { shorten, across } = apexOffset(before, to);
      return putOrRemove({ ...base, shorten: snapToStep(shorten, work.unit), across: snapToStep(across, work.unit) });
    };
  }
  const base = mouthOf(work, dart, on);
  return (to) => putOrRemove({ ...base, [end]: snapToStep(mouthOffset(before, end, to), work.unit) });
}
