/**
 * What a wearer's body asked for in the garments of hers that fit, told apart from what their patterns were to blame for. Common
 * practice, no source: which is which stands in one table.
 */
import { isMadeOn, onHalves, type Half } from "../decisions/alteration";
import { FIT_NAMES, WHOLE_FITS, type FitName } from "../decisions/fitNames";
import type { Decided } from "../decisions/decided";
import type { Work } from "../decisions/work";
import type { PrintedLength } from "../decisions/pattern";
import { bodyOf } from "../measures/tape";
import { appliesTo, amountCommand, useOn, usesOf } from "../plan/fitEdit";
import { applyCommand, type Command } from "../plan/commands";
import type { Plan } from "../plan/plan";
import { planOf } from "../plan/planOf";
import { proposalsOf } from "../proposals/proposals";
import { isSame } from "../same";
import { STANDS_BY } from "../tolerance";
import type { Mm } from "../units";
import type { KeptGarment } from "./keptGarments";

/**
 * Of the body: its shape, which goes along to any pattern with its amount. By measures: a length or a width of the tape, made anew
 * against every pattern's own. Of the pattern: how an edge was drawn, or how much ease; it says something of the body only where
 * two patterns were altered alike.
 */
type AskedBy = "body" | "measures" | "pattern";

const ASKED_BY: Readonly<Record<FitName, AskedBy>> = {
  lengthAboveBust: "measures",
  lengthBelowBust: "measures",
  lengthBasque: "pattern",
  bandDepth: "measures",
  roundBack: "body",
  swayBack: "body",
  waistDropFront: "body",
  waistDropBack: "body",
  bustPointLevel: "body",
  chestWidth: "measures",
  backWidth: "measures",
  strapLength: "measures",
  strapWidth: "pattern",
  strapPlace: "pattern",
  necklineGape: "pattern",
  edgeGape: "pattern",
  armholeGape: "pattern",
  backNeckGape: "pattern",
  shoulderSlope: "body",
  forwardShoulder: "body",
  shoulderWidth: "measures",
  armholeDepth: "pattern",
  sideSeamBust: "pattern",
  sideSeamUnderBust: "measures",
  sideSeamWaist: "pattern",
  sideSeamHip: "pattern",
};

/** The measures that decide on those made anew: where one of them was taken, it speaks. */
const MEASURED_BY: Readonly<Partial<Record<FitName, readonly PrintedLength[]>>> = {
  lengthAboveBust: ["backWaistLength", "frontWaistLength"],
  lengthBelowBust: ["backWaistLength", "frontWaistLength"],
  bandDepth: ["backWaistLength", "frontWaistLength"],
  chestWidth: ["acrossFront"],
  backWidth: ["acrossBack"],
  strapLength: ["sideNeckToBustPoint"],
  shoulderWidth: ["shoulderLength"],
  sideSeamUnderBust: ["underBustGirth"],
};

/** One thing that was altered in garments that fit, on both halves alike or on one of them. */
export interface Standing {
  /** What it is found by in `standingLeft` of a work. */
  readonly key: string;
  readonly fit: FitName;
  readonly half?: Half;
  /** The mean of those garments that have it, rounded to a whole mm; on both halves what is asked for there, which may be all round. */
  readonly amount: Mm;
  readonly least: Mm;
  readonly most: Mm;
  /** In how many garments it was right, and of how many patterns those are; of so many garments in all. */
  readonly garments: number;
  readonly patterns: number;
  readonly of: number;
}

export interface StandingAlterations {
  /** Of so many garments. */
  readonly garments: number;
  /** Hers: carried to another pattern with their amounts. */
  readonly carried: readonly Standing[];
  /** Lengths and widths: made anew by her measures. */
  readonly anew: readonly Standing[];
  /** What only its pattern was to blame for, what was needed in fewer than half of them, or now one way, now the other. */
  readonly blamed: readonly Standing[];
}

/** @param garments of one wearer */
export function standingAlterations(garments: readonly KeptGarment[]): StandingAlterations {
  const all = FIT_NAMES.flatMap((fit) => standingsOf(fit, garments));
  const by = (asked: AskedBy) => all.filter(({ fit }) => ASKED_BY[fit] === asked);
  const seen = all.filter(({ fit }) => ASKED_BY[fit] !== "measures");
  return {
    garments: garments.length,
    carried: seen.filter(isCarried),
    anew: by("measures"),
    blamed: seen.filter((one) => !isCarried(one)),
  };
}

const isOneWay = ({ least, most }: Standing): boolean => Math.sign(least) === Math.sign(most);

const isCarried = (one: Standing): boolean =>
  isOneWay(one) && 2 * one.garments >= one.of && (ASKED_BY[one.fit] === "body" || one.patterns > 1);

const keyOf = (fit: FitName, half: Half | undefined): string => (half === undefined ? fit : `${fit} ${half}`);

/** What one half gets: of an amount all round that is half of it. */
const amountOn = ({ alterations }: Decided, fit: FitName, half: Half): Mm =>
  alterations
    .filter((one) => isMadeOn(one, half))
    .map((one) => onHalves(one, half))
    .reduce((sum, one) => (one.kind === "fit" && one.fit === fit ? sum + one.amount : sum), 0);

/** Where both halves were altered alike in all of them it is one thing, else one for each half. */
function standingsOf(fit: FitName, garments: readonly KeptGarment[]): readonly Standing[] {
  const amounts = garments.map((garment) => ({
    garment,
    left: amountOn(garment.kept, fit, "left"),
    right: amountOn(garment.kept, fit, "right"),
  }));
  const standing = (half: Half | undefined): readonly Standing[] => {
    const having = amounts.filter((one) => one[half ?? "left"] !== 0);
    const times = half === undefined && WHOLE_FITS.has(fit) ? 2 : 1;
    const [first, ...others] = having.map((one) => times * one[half ?? "left"]);
    if (first === undefined) return [];
    const values = [first, ...others];
    const patterns = having.filter(
      ({ garment }, at) => having.findIndex((other) => isOnePattern(other.garment, garment)) === at,
    );
    return [
      {
        key: keyOf(fit, half),
        fit,
        ...(half === undefined ? {} : { half }),
        amount: Math.round(values.reduce((sum, value) => sum + value, 0) / values.length),
        least: Math.min(...values),
        most: Math.max(...values),
        garments: values.length,
        patterns: patterns.length,
        of: garments.length,
      },
    ];
  };
  return amounts.every(({ left, right }) => left === right)
    ? standing(undefined)
    : [...standing("left"), ...standing("right")];
}

/** By its name, style and chart: an allowance or a closure makes no other pattern of it. */
function isOnePattern({ kept: { pattern: a } }: KeptGarment, { kept: { pattern: b } }: KeptGarment): boolean {
  return a.name === b.name && a.style === b.style && isSame(a.chart, b.chart);
}

/** What is carried, held against a work. */
export interface StandingOffer {
  readonly standing: Standing;
  /**
   * `offered`: one tap puts it. `stands`: something of it stands already. `measured`: her tape asks for it already. `left`: she
   * leaves it out. `notOnPieces`, `notMade`: these pieces have not what it is made on, or it cannot be made on them.
   */
  readonly state: "offered" | "stands" | "measured" | "left" | "notOnPieces" | "notMade";
  /** What puts it. */
  readonly command: Command;
}

/** @param plan the plan of that very work */
export function standingOffers(
  { carried, anew }: StandingAlterations,
  work: Work,
  plan: Plan,
): readonly StandingOffer[] {
  const asked = proposalsOf(work, plan).proposals.flatMap(({ altered }) =>
    altered.kind === "fit" ? [altered.fit] : [],
  );
  const body = bodyOf(work.tapes);
  // A length that was never taken cannot be made anew: what was right is the best that is known of it.
  const untaped = anew.filter(
    (one) =>
      isOneWay(one) && 2 * one.garments >= one.of && !(MEASURED_BY[one.fit] ?? []).some((m) => body[m] !== undefined),
  );
  return [...carried, ...untaped].map((standing) => {
    const { fit, half, amount, key } = standing;
    const uses = usesOf(work, fit);
    const command = amountCommand(useOn([], fit, half ?? "both"), amount);
    const state = (): StandingOffer["state"] => {
      if (uses.some((use) => half === undefined || use.half === undefined || use.half === half)) return "stands";
      if (asked.some((one) => one === fit)) return "measured";
      if (work.standingLeft?.includes(key) === true) return "left";
      if (!appliesTo(plan, fit) || Math.abs(amount) < STANDS_BY) return "notOnPieces";
      return isMade(work, plan, command) ? "offered" : "notMade";
    };
    return { standing, state: state(), command };
  });
}

/** Whether an alteration that is put is made, and no other is left out for it. */
function isMade(work: Work, before: Plan, command: Command): boolean {
  const after = planOf(applyCommand(work, command));
  return after.ok && failuresIn(after.value) <= failuresIn(before);
}

const failuresIn = ({ ledger }: Plan): number => ledger.filter(({ outcome }) => !outcome.ok).length;
