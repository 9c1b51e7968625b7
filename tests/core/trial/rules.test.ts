/** The table of signs as a table: its order, what is mended how, and that what is too much shows as the contrary of too little. */
import { describe, expect, it } from "vitest";
import { isRuleName, RULE_NAMES, RULES, ruleOf, type RuleName } from "../../../src/core/trial/rules";

const fits = (name: RuleName): readonly string[] =>
  ruleOf(name).changes.map((change) => {
    const way = "by" in change ? (change.by > 0 ? "+" : "−") : "";
    return `${way}${change.of === "fit" ? change.fits.join("/") : change.of}`;
  });

/** What the trade alters for each: more (+) or less (−) of what. */
const CHANGED: Readonly<Record<RuleName, string>> = {
  slopingShoulder: "−shoulderSlope",
  squareShoulder: "+shoulderSlope",
  forwardShoulder: "+forwardShoulder",
  backwardShoulder: "−forwardShoulder",
  swayBack: "+swayBack",
  flatBack: "−swayBack",
  roundBack: "+roundBack",
  erectBack: "−roundBack",
  longAboveBust: "−lengthAboveBust",
  shortAboveBust: "+lengthAboveBust",
  longBelowBust: "−lengthBelowBust/bandDepth",
  shortBelowBust: "+lengthBelowBust/bandDepth",
  waistDipsInFront: "−waistDropFront",
  waistRisesInFront: "+waistDropFront",
  waistDipsBehind: "−waistDropBack",
  waistRisesBehind: "+waistDropBack",
  longBelowWaist: "−lengthBasque",
  shortBelowWaist: "+lengthBasque",
  fullBust: "+bust",
  smallBust: "−bust",
  underBustTooHigh: "+lengthAboveBust/strapLength −bustPointLevel −bandDepth",
  underBustTooLow: "−lengthAboveBust/strapLength +bustPointLevel +bandDepth",
  bustPointElsewhere: "bustPoint",
  dartEndElsewhere: "dartEnd",
  dartTooFull: "−dartMouth",
  dartTooFlat: "+dartMouth",
  slackBetweenBusts: "offCentre",
  narrowChest: "−chestWidth",
  broadChest: "+chestWidth",
  narrowBack: "−backWidth",
  broadBack: "+backWidth",
  looseBust: "−sideSeamBust",
  tightBust: "+sideSeamBust",
  looseWaist: "−sideSeamWaist",
  tightWaist: "+sideSeamWaist",
  looseHip: "−sideSeamHip",
  tightHip: "+sideSeamHip",
  narrowShoulder: "−shoulderWidth",
  broadShoulder: "+shoulderWidth",
  highArmhole: "+armholeDepth",
  lowArmhole: "−armholeDepth",
  neckGapes: "+necklineGape/edgeGape",
  armholeGapes: "+armholeGape",
  backNeckGapes: "+backNeckGape",
  strapTooFarOut: "+strapPlace",
  strapTooFarIn: "−strapPlace",
  strapTooLong: "−strapLength",
  strapTooShort: "+strapLength",
  neckStretched: "",
  seamPuckered: "",
  clothOffGrain: "",
  sideSeamsForward: "",
  sideSeamsBack: "",
  unevenHips: "",
  prominentBlade: "",
  roundAbdomen: "",
  flatSeat: "",
  flaringRibs: "",
  armsForward: "",
  curvedSpine: "",
};

/** What reaches the centre line cannot be of one half: backs, lengths, the waist's level, what lies between the busts. */
const ON_CENTRE = /Back$|^waist|^(?:long|short)|^underBust|^slackBetweenBusts$/;
const OFF_CENTRE: readonly RuleName[] = ["narrowBack", "broadBack", "sideSeamsBack"];
/** Bodies, or cloth, that differ from one side to the other. */
const OF_ONE_HALF: readonly RuleName[] = ["clothOffGrain", "unevenHips", "prominentBlade", "curvedSpine"];

describe("the table of signs", () => {
  it.each(RULE_NAMES)("%s", (name) => {
    const rule = ruleOf(name);
    expect(rule.name).toBe(name);
    expect(fits(name).join(" ")).toBe(CHANGED[name]);
    expect(rule.isByHand).toBe(CHANGED[name] === "" ? true : undefined);
    expect(rule.isCentre).toBe(ON_CENTRE.test(name) && !OFF_CENTRE.includes(name) ? true : undefined);
    expect(rule.isOfOneHalf).toBe(OF_ONE_HALF.includes(name) ? true : undefined);
    // One place and sign but once, each more or less likely.
    expect(new Set(rule.shows.map(({ place, sign }) => `${place} ${sign}`)).size).toBe(rule.shows.length);
    expect(rule.shows.filter(({ likely }) => likely <= 0 || likely >= 1)).toEqual([]);
    expect(rule.shows.length).toBeGreaterThan(0);
  });

  it("knows its names, and stands in their order", () => {
    expect(RULES.map(({ name }) => name)).toEqual(RULE_NAMES);
    expect(RULE_NAMES.every(isRuleName)).toBe(true);
    expect(["", "toString", "swayback", "swayBack-left"].some(isRuleName)).toBe(false);
  });

  it("tells nothing of an amount where nothing is altered, and of marks only which way", () => {
    const ofHand = RULES.filter(({ isByHand }) => isByHand === true).flatMap(({ shows }) => shows);
    expect(ofHand.filter(({ tells, marked }) => tells !== undefined || marked !== undefined)).toEqual([]);
    for (const { shows } of RULES) {
      for (const { sign, tells, marked } of shows) {
        const isMark = sign === "bustPoint" || sign === "dartEnds";
        expect(isMark ? tells : marked).toBeUndefined();
      }
    }
  });

  it("lets the same row never show a thing and its contrary", () => {
    const contrary: readonly (readonly [string, string])[] = [
      ["drops", "ridesUp"],
      ["endsInside", "endsOutside"],
      ["doesNotMeet", "overlaps"],
      ["pointed", "flat"],
    ];
    for (const { shows } of RULES)
      for (const [one, other] of contrary)
        for (const { place } of shows.filter(({ sign }) => sign === one))
          expect(shows.filter((shown) => shown.place === place && shown.sign === other)).toEqual([]);
  });

  /**
   * How cloth tells an amount: what is off is off by it; a slit inside a piece its width; a fold inside twice its depth, one at a
   * seam its depth out of each piece, and where the seam is one of two on a half, both; a closure by half of what it is apart.
   */
  it.each<readonly [string, (place: string, sign: string) => number | undefined]>([
    ["off", (place, sign) => (sign === "doesNotMeet" || sign === "overlaps" ? 0.5 : place === "" ? undefined : 1)],
    ["pinched", (place) => (["neckPoint", "shoulder", "betweenBusts"].includes(place) ? 1 : undefined)],
  ])("%s, as the cloth tells it", (way, wanted) => {
    for (const { name, shows } of RULES)
      for (const { place, sign, tells } of shows) {
        const by = Object.entries(tells ?? {}).find(([key]) => key === way)?.[1];
        const should = wanted(place, sign);
        if (by === undefined || should === undefined || name === "squareShoulder") continue;
        expect([name, place, sign, by]).toEqual([name, place, sign, should]);
      }
  });
});
