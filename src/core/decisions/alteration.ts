/** What the wearer decided to alter: records only; what each does to the pieces is told by src/core/alterations. */
import { isSameDart, type DartHome, type DartRef } from "../pattern/piece";
import type { Mm } from "../units";
import { WHOLE_FITS, type FitName } from "./fitNames";

/** The wearer's own half of the body. */
export type Half = "left" | "right";

export const HALVES: readonly Half[] = ["left", "right"];
export const otherHalf = (half: Half): Half => (half === "left" ? "right" : "left");

/** On one half of the body alone; absent: on both. */
interface OnHalf {
  readonly half?: Half;
}

/** Where what a dart sets free (or asks for) is taken: shares that add up to 1. */
export type GiveBackPlace =
  | "centreSeam"
  | "sideSeam"
  | "otherDart"
  | "underarm"
  | "waistEnd"
  | "armholeEnd"
  | "neckEnd"
  | "centreEnd";
export type GiveBack = Readonly<Partial<Record<GiveBackPlace, number>>>;

/** Held while a dart's end moves: the mouth (the angle changes) or the fullness (the mouth changes). */
export type Hold = "mouth" | "fullness";

/** Moves a dart's end. */
export interface DartEndAlteration extends OnHalf {
  readonly kind: "dartEnd";
  readonly id: string;
  readonly dart: DartRef;
  /** Along the axis towards the mouth: positive shortens, negative lengthens. */
  readonly shorten: Mm;
  /** Across the axis: positive towards the centre line (waist darts) or upwards (side darts). */
  readonly across: Mm;
  readonly hold: Hold;
  readonly giveBack: GiveBack;
}

/** Widens (positive) or narrows (negative) a dart's mouth, by each end's own move away from the dart's middle. */
export interface DartMouthAlteration extends OnHalf {
  readonly kind: "dartMouth";
  readonly id: string;
  readonly dart: DartRef;
  readonly inner: Mm;
  readonly outer: Mm;
  readonly giveBack: GiveBack;
}

/** Moves a whole dart along its seam: towards the centre line (waist darts) or upwards (side darts) when positive. */
export interface DartPlaceAlteration extends OnHalf {
  readonly kind: "dartPlace";
  readonly id: string;
  readonly dart: DartRef;
  readonly by: Mm;
  /** Redraw it on the same seam, or take the amount off the centre-front seam (waist dart of the front only). */
  readonly how: "redraw" | "offCentreSeam";
  readonly giveBack: GiveBack;
}

/** Closes a dart, or a share of it, and opens as much at another seam, about the bust point; a dart there takes it up. */
export interface DartPivotAlteration extends OnHalf {
  readonly kind: "dartPivot";
  readonly id: string;
  readonly dart: DartRef;
  readonly to: DartHome;
  /** Of its angle: above 0, 1 is the whole. */
  readonly share: number;
}

/** Splits a dart into two or three side by side, all pointing at where the one ended. */
export interface DartSplitAlteration extends OnHalf {
  readonly kind: "dartSplit";
  readonly id: string;
  readonly dart: DartRef;
  readonly into: 2 | 3;
}

/** Draws the dart's mouth up as gathers in place of folding it. */
export interface DartGatherAlteration extends OnHalf {
  readonly kind: "dartGather";
  readonly id: string;
  readonly dart: DartRef;
}

/** Bows both legs at their middle: positive into the dart (takes less there, a rounder cup), negative out of it. */
export interface DartLegsAlteration extends OnHalf {
  readonly kind: "dartLegs";
  readonly id: string;
  readonly dart: DartRef;
  readonly bow: Mm;
}

/** Darts of the bust joined through the bust point into one seam from edge to edge: the front becomes two pieces. */
export interface DartSeamAlteration extends OnHalf {
  readonly kind: "dartSeam";
  readonly id: string;
  /** The upper one: of the shoulder or the armhole. The other is the waist dart of the same piece. */
  readonly dart: DartRef;
}

/** A fit alteration: which, and how much; what it does is told by its definition. */
export interface FitAlteration extends OnHalf {
  readonly kind: "fit";
  readonly id: string;
  readonly fit: FitName;
  readonly amount: Mm;
}

/** Redraws one dart; what that sets free on its seam is given back. */
export type DartRedraw = DartEndAlteration | DartMouthAlteration | DartPlaceAlteration;
/** Makes another thing of a dart. */
export type DartSurgery =
  | DartPivotAlteration
  | DartSplitAlteration
  | DartGatherAlteration
  | DartLegsAlteration
  | DartSeamAlteration;

/**
 * One decision of the wearer about the pieces: at most one of each kind for each dart and of each fit, either on both halves or
 * one on each. They are made in the order they stand in.
 */
export type Alteration = DartRedraw | DartSurgery | FitAlteration;
export type AlterationKind = Alteration["kind"];

export const isRedraw = (alteration: Alteration): alteration is DartRedraw =>
  alteration.kind === "dartEnd" || alteration.kind === "dartMouth" || alteration.kind === "dartPlace";

/** The dart an alteration is about; null where it is about none. */
export const dartOfAlteration = (alteration: Alteration): DartRef | null =>
  alteration.kind === "fit" ? null : alteration.dart;

/** Whether two alterations alter the same thing in the same way on the same halves: the later takes the place of the earlier. */
export const isSameKind = (a: Alteration, b: Alteration): boolean => isSameThing(a, b) && a.half === b.half;

/** Whether two alterations alter the same thing in the same way, on whichever half. */
export function isSameThing(a: Alteration, b: Alteration): boolean {
  if (a.kind === "fit") return b.kind === "fit" && a.fit === b.fit;
  return b.kind !== "fit" && a.kind === b.kind && isSameDart(a.dart, b.dart);
}

/** Whether two alterations cannot both stand: of one thing there is one for both halves, or one for each at the most. */
export const isClash = (a: Alteration, b: Alteration): boolean =>
  isSameThing(a, b) && (a.half === undefined || b.half === undefined || a.half === b.half);

/** Whether an alteration is made on a half of the body. */
export const isMadeOn = ({ half }: Alteration, on: Half): boolean => half === undefined || half === on;

/** What is done on a half now, asked for another half, or for both (undefined): an amount all round is half of it on each. */
export function onHalves(alteration: DartRedraw, half: Half | undefined): DartRedraw;
export function onHalves(alteration: Alteration, half: Half | undefined): Alteration;
export function onHalves(alteration: Alteration, half: Half | undefined): Alteration {
  const { half: before, ...same } = alteration;
  const there = half === undefined ? same : { ...same, half };
  if (there.kind !== "fit" || !WHOLE_FITS.has(there.fit) || (before === undefined) === (half === undefined))
    return there;
  return { ...there, amount: half === undefined ? 2 * there.amount : there.amount / 2 };
}
