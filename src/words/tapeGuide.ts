/**
 * How each measure is taken, in words: the points of the body it runs between and how they are found, how to stand, how
 * tight the tape lies, and whether it can be taken alone. All of it is common practice of dressmaking; no source.
 */
import type { MeasureName } from "../core/measures/measure";
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { formatLength } from "./terms/length";

export type LandmarkName =
  | "bustPoint"
  | "underarm"
  | "bladeLine"
  | "bandLine"
  | "waist"
  | "seat"
  | "crown"
  | "floor"
  | "sideNeck"
  | "nape"
  | "neckPit"
  | "backWaist"
  | "frontWaist"
  | "shoulderPoint"
  | "armCrease";

export interface LandmarkWords {
  readonly name: string;
  /** How to find it, as it follows on the name. */
  readonly find: string;
}

const LANDMARKS: Readonly<Record<LandmarkName, LandmarkWords>> = {
  bustPoint: { name: "bust point", find: "where the cup of the bra stands out furthest" },
  underarm: { name: "underarm", find: "as high as the tape will go with the arms hanging" },
  bladeLine: { name: "shoulder blades", find: "the tape climbs over them, higher than in front" },
  bandLine: { name: "under-bust", find: "the fold below the breast, where the band of the bra lies" },
  waist: { name: "waist", find: "where a tied thread or elastic settles when you bend to each side" },
  seat: { name: "seat", find: "its fullest part, seen from the side in a mirror" },
  crown: { name: "top of the head", find: "where a book held level against the wall touches it" },
  floor: { name: "floor", find: "without shoes, heels to the wall" },
  sideNeck: { name: "side neck point", find: "where a close chain round the neck crosses the top of the shoulder" },
  nape: { name: "nape", find: "the bone that stands out when the head bends; mark it and lift the head again" },
  neckPit: { name: "pit of the neck", find: "the hollow between the collar bones" },
  backWaist: { name: "back waist", find: "the waist thread where it crosses the spine" },
  frontWaist: { name: "front waist", find: "the waist thread straight below the bust point" },
  shoulderPoint: {
    name: "shoulder point",
    find: "the end of the shoulder bone: a dimple shows there when the arm is lifted sideways",
  },
  armCrease: {
    name: "arm crease",
    find: "where the hanging arm meets the body, half way from the shoulder point to the underarm",
  },
};

export const landmarkWords = (name: LandmarkName): LandmarkWords => LANDMARKS[name];

/** By oneself; by oneself before a mirror; only with someone to help. */
export type TapeHelp = "alone" | "mirror" | "helper";

export interface TapeGuide {
  /** How to stand, and how the tape lies. */
  readonly how: string;
  readonly help: TapeHelp;
  /** How to go about it alone, or what the helper does. */
  readonly helpHow: string;
}

const GUIDES: Readonly<Record<MeasureName, TapeGuide>> = {
  bustGirth: {
    how: "Stand easily, arms down. The tape touches all round and dents nowhere.",
    help: "mirror",
    helpHow: "Turn sideways to the mirror to see that the tape has not slipped down at the back.",
  },
  upperChestGirth: {
    how: "Lift the arms only to lay the tape. It is snug and dents nowhere.",
    help: "mirror",
    helpHow: "In the mirror the tape should climb from above the breast, under the arm, up to the shoulder blades.",
  },
  underBustGirth: {
    how: "Breathe out. Snug on the ribs, as the band of a bra is.",
    help: "alone",
    helpHow: "Slide the tape down from the breast until it comes to rest, then turn before a mirror to see it level.",
  },
  waistGirth: {
    how: "Breathe out and do not draw in.",
    help: "alone",
    helpHow: "Measure on the thread, all the way round.",
  },
  hipGirth: {
    how: "Weight on both feet. The tape just slides.",
    help: "mirror",
    helpHow: "Turn sideways to the mirror for the fullest part and to see the tape level.",
  },
  height: {
    how: "Heels, seat and shoulders touch the wall; look straight ahead.",
    help: "alone",
    helpHow:
      "Slide a thick book down the wall until it rests on the head, and hold it there while you step away and mark. A helper is surer.",
  },
  bustPointWidth: {
    how: "Stand easily, arms down, shoulders neither drawn back nor rounded.",
    help: "alone",
    helpHow: "Before a mirror, with the bra you will wear.",
  },
  sideNeckToBustPoint: {
    how: "Stand upright and look ahead, not down at the tape. It lies on the chest.",
    help: "mirror",
    helpHow: "Stick the end of the tape at the side neck point with masking tape and read it in the mirror.",
  },
  backWaistLength: {
    how: "Head up, arms down. The tape follows the hollow of the back.",
    help: "helper",
    helpHow:
      "Alone it can be had with patience: stick the end of the tape at the nape with masking tape, let it hang, hold it to the waist thread and read it there in two mirrors.",
  },
  frontWaistLength: {
    how: "Stand upright and look ahead. Below the bust point the tape is not pressed in to the ribs.",
    help: "mirror",
    helpHow:
      "Stick the end of the tape at the side neck point with masking tape and read it at the thread in the mirror.",
  },
  neckBaseGirth: {
    how: "Head up. The tape lies easily and never pulls in.",
    help: "mirror",
    helpHow: "A close chain shows the line. Start from the pit of the neck.",
  },
  shoulderLength: {
    how: "Arms down, shoulders let go, not lifted to hold the tape.",
    help: "helper",
    helpHow:
      "Raising one’s own hand to the shoulder shortens it. Alone, mark both points first and measure in the mirror with the other hand.",
  },
  acrossBack: {
    how: "Arms hanging, not crossed in front. The tape lies flat over the blades.",
    help: "helper",
    helpHow:
      "One’s own hands cannot hold both ends without moving the blades. A blouse that fits well across there, measured flat, is the next best.",
  },
  acrossFront: {
    how: "Arms hanging, shoulders neither drawn back nor rounded.",
    help: "mirror",
    helpHow: "Mark both creases with a dot of masking tape, arms down, then measure between the dots.",
  },
};

export const tapeGuide = (name: MeasureName): TapeGuide => GUIDES[name];

const HELP: Readonly<Record<TapeHelp, string>> = {
  alone: "Can be taken alone.",
  mirror: "Alone before a mirror, or with a helper.",
  helper: "Ask a helper.",
};

export const tapeHelpWords = (help: TapeHelp): string => HELP[help];

export interface TapeNote {
  /** Set apart; the text goes on from it as one sentence. */
  readonly title: string;
  readonly text: string;
}

/** Readings further apart than that are seldom of one hand and one tape; in round figures (common practice, no source). */
const APART: Mm = 25;
const APART_AT_SHOULDER: Mm = 15;

/** What holds for every measure: said once. */
export const tapeNotes = (unit: LengthUnit): readonly TapeNote[] => [
  { title: "Wear", text: "the bra that will be worn under the dress, and nothing else or one thin layer." },
  { title: "Stand", text: "easily, weight on both feet, arms down. Breathe out; neither draw in nor stretch up." },
  {
    title: "Mark first",
    text: "a thread or narrow elastic tied round the waist; a dot of masking tape at each side neck point.",
  },
  {
    title: "The tape",
    text: "lies on the body and does not dent it. Girths are level all round, except the upper chest. One finger fits under it at the waist.",
  },
  {
    title: "Measure twice",
    text: `and take the tape off between. If the two differ by more than ${formatLength(APART, unit)} (at the shoulder ${formatLength(APART_AT_SHOULDER, unit)}), take it a third time.`,
  },
  {
    title: "Check the tape",
    text: "against a ruler: old tapes stretch. Keep to centimetres or to inches, never both.",
  },
  {
    title: "Pins",
    text: "stay away from the skin: mark with masking tape or thread, and take pins out of what you measure over.",
  },
];
