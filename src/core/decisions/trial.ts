/** A trial garment: what was sewn, what was seen on the body, what she decided. Records only; what they mean is told by src/core/trial. */
import type { DartRef } from "../pattern/piece";
import type { Mm } from "../units";
import type { Half } from "./alteration";
import type { Decided } from "./decided";

/**
 * Where something is seen, on the wearer's own left or right half. Their order is that of the numbers on the drawing, which the
 * printed record and the screen share: 1 is the first. Front from the neck down, side, back from the neck down, closure.
 */
export const TRIAL_PLACES = [
  "neckPoint",
  "frontNeck",
  "shoulder",
  "strap",
  "frontArmhole",
  "chest",
  "bust",
  "dartEnd",
  "betweenBusts",
  "underBust",
  "frontAboveWaist",
  "frontWaist",
  "frontHip",
  "frontHem",
  "underarm",
  "sideSeam",
  "sideHip",
  "backNeck",
  "backArmhole",
  "blades",
  "backAboveWaist",
  "backWaist",
  "backHip",
  "backHem",
  "closureBust",
  "closureWaist",
  "closureHip",
] as const;
export type TrialPlace = (typeof TRIAL_PLACES)[number];

/**
 * What is seen there. `foldAcross`: loose cloth in a fold that runs from side to side; `foldAlong`: one that runs up and down.
 * `dragLines`: taut folds that point at another place (`towards`). `gapes`: an edge stands off the body. `pointed`: the cloth
 * stands off in a point; `flat`: too little room for what is under it. `leansForward`, `leansBack`: a side or shoulder seam.
 * `ridesUp`, `drops`: an edge or seam lies higher or lower than it should. `endsOutside`, `endsInside`: the shoulder seam or a
 * strap, too far from the neck or too near. `slips`: a strap. `cutsIn`: an edge. `dartEnds`, `bustPoint`: marks, where the dart's
 * end should be and where the bust point is. `doesNotMeet`, `overlaps`: the closure.
 */
export const TRIAL_SIGNS = [
  "foldAcross",
  "foldAlong",
  "dragLines",
  "gapes",
  "tight",
  "pointed",
  "flat",
  "leansForward",
  "leansBack",
  "ridesUp",
  "drops",
  "endsOutside",
  "endsInside",
  "slips",
  "cutsIn",
  "dartEnds",
  "bustPoint",
  "doesNotMeet",
  "overlaps",
] as const;
export type TrialSign = (typeof TRIAL_SIGNS)[number];

/** `pinched`: a fold's depth from pin to edge, half of the cloth in it; `letOut`: a slit's width at the widest; `off`: how far away. */
export const TRIAL_WAYS = ["pinched", "letOut", "off"] as const;
export type TrialWay = (typeof TRIAL_WAYS)[number];

/**
 * One line of the record. It may be half written: only lines with a place and a sign are read. `towards` and `changed` are kept
 * and shown again; no answer goes by them.
 */
export interface Observation {
  readonly id: string;
  readonly place?: TrialPlace;
  readonly sign?: TrialSign;
  /** Where drag lines point. */
  readonly towards?: TrialPlace;
  /** Of which dart, where it is one. */
  readonly dart?: DartRef;
  readonly way?: TrialWay;
  /** mm as measured on the cloth, never doubled here; absent: she could not say. */
  readonly amount?: Mm;
  /**
   * A mark: how far from where the dart's end was sewn, or from the bust point drawn on the toile; out is away from the centre
   * line, down is down.
   */
  readonly mark?: { readonly out: Mm; readonly down: Mm };
  /** Absent: on both. */
  readonly half?: Half;
  /** In her own words, what she changed on the toile. */
  readonly changed?: string;
}

/**
 * How the toile hangs and moves: ticked on the record. Answers go by those that say a sign is not there (`DENIED_BY` in
 * src/core/trial); the others, and what is crossed out, are kept for the next look.
 */
export const TRIAL_CHECKS = [
  "centresUpright",
  "sideSeamsUpright",
  "hemLevel",
  "waistOnWaist",
  "shouldersStay",
  "canSit",
  "canReach",
  "canBreathe",
] as const;
export type TrialCheck = (typeof TRIAL_CHECKS)[number];

/** What is measured of the toile as it was sewn, flat, before it is looked at: whole girths, or a length of one half. */
export const TOILE_LENGTHS = ["bustGirth", "waistGirth", "hipGirth", "centreFront", "centreBack", "shoulder"] as const;
export type ToileLength = (typeof TOILE_LENGTHS)[number];

/** An answer that was taken: which alterations it changed, on which half, and which lines of the record asked for it. */
export interface TakenAnswer {
  /** The causes it stands for, by their names in the core's table. */
  readonly causes: readonly string[];
  /** Absent: on both. */
  readonly half?: Half;
  /** Lines of the record, by id. */
  readonly because: readonly string[];
  /** Alterations that it made or changed, by id; "bust": the bust alteration of the picks. */
  readonly alterations: readonly string[];
}

export const TRIAL_VERDICTS = ["keep", "again"] as const;
export type TrialVerdict = (typeof TRIAL_VERDICTS)[number];

export interface Trial {
  readonly id: string;
  /** The day, yyyy-mm-dd. */
  readonly day?: string;
  /** All that the plan followed from as it was sewn, so that it can be drawn again for ever. */
  readonly sewn: Decided;
  /** Kept beside what was seen, for whoever reads it later: nothing follows from these. */
  readonly cloth?: string;
  readonly pinnedBy?: string;
  readonly bra?: string;
  readonly shoes?: string;
  /** What the toile measures as sewn. */
  readonly measured?: Readonly<Partial<Record<ToileLength, Mm>>>;
  readonly observations: readonly Observation[];
  /** true: it is so; false: it is not; absent: not looked at. */
  readonly checks?: Readonly<Partial<Record<TrialCheck, boolean>>>;
  readonly taken?: readonly TakenAnswer[];
  /** Absent: the trial is open. */
  readonly verdict?: TrialVerdict;
  readonly because?: string;
  /** Her base: body, alterations and fitted bodice to begin other works from. Only of a trial that is kept. */
  readonly base?: true;
}
