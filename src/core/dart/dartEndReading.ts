/**
 * Where a dart ends against the bust point, read in the dart's own axes: how far short of it along the axis, and how far
 * beside the axis the bust point lies. Checks, notes, sheets and reports all go by this one reading.
 */
import type { PiecePoint } from "../geometry/point";
import { DART_ASIDE_MOST, DART_ASIDE_USUAL, DART_STOP_LEAST, DART_STOP_MOST, READS_AS_NOTHING } from "../tolerance";
import type { Mm } from "../units";
import type { Stop } from "./dartEnd";
import { apexAfter, apexOffset, type DartCorners } from "./dartFrame";

export interface DartEndReading {
  /** From the end on along the axis, away from the mouth, to abreast of the bust point: so far short of it; negative: past it. */
  readonly along: Mm;
  /**
   * How far beside the axis the bust point lies: positive towards the inner mouth end (the centre line; of a dart along the
   * bust line, above), negative towards the other (the side; below).
   */
  readonly across: Mm;
}

/** Reads where a dart ends against a bust point. */
export function readDartEnd(dart: DartCorners, bustPoint: PiecePoint): DartEndReading {
  const { shorten, across } = apexOffset(dart, bustPoint);
  return { along: 0 - shorten, across };
}

/** The bust point that a reading tells of: the inverse of `readDartEnd`. */
export const bustPointOfReading = (dart: DartCorners, { along, across }: DartEndReading): PiecePoint =>
  apexAfter(dart, { shorten: -along, across });

/** Straight from the end to the bust point, mm; negative where the end lies past it. */
export const straightToBustPoint = ({ along, across }: DartEndReading): Mm =>
  (along < 0 ? -1 : 1) * Math.hypot(along, across);

export interface JudgedDartEnd {
  /** `past`: beyond the bust point. `near` and `far` are out of the usual and still work; `tooNear` and `tooFar` fail. */
  readonly along: "past" | "tooNear" | "near" | "usual" | "far" | "tooFar";
  /** `aside`: out of the usual, and still works; `tooFarAside` fails. */
  readonly across: "usual" | "aside" | "tooFarAside";
}

/** What is said of a dart's end; less than is told in whole millimetres is no doubt. */
export const judgeDartEnd = ({ along, across }: DartEndReading, usual: Stop): JudgedDartEnd => ({
  along: judgeAlong(along, usual),
  across: Math.abs(across) > DART_ASIDE_MOST ? "tooFarAside" : isAside(across) ? "aside" : "usual",
});

/** Whether a bust point lies further beside a dart's axis than is usual. */
export const isAside = (across: Mm): boolean => Math.abs(across) >= DART_ASIDE_USUAL + READS_AS_NOTHING;

function judgeAlong(along: Mm, { least, most }: Stop): JudgedDartEnd["along"] {
  if (along < 0) return "past";
  if (along < DART_STOP_LEAST) return "tooNear";
  if (along > DART_STOP_MOST) return "tooFar";
  if (along <= least - READS_AS_NOTHING) return "near";
  return along >= most + READS_AS_NOTHING ? "far" : "usual";
}

/** Whether a check fails of it. */
export const endFails = ({ along, across }: JudgedDartEnd): boolean =>
  along === "past" || along === "tooNear" || along === "tooFar" || across === "tooFarAside";

export const endsAsUsual = ({ along, across }: JudgedDartEnd): boolean => along === "usual" && across === "usual";
