/** The causes of what is seen on a trial garment, in a dressmaker's words: a name, and what is amiss with the garment on the body. */
import type { Cause, SignAt } from "../core/trial/trialReading";
import type { RuleName } from "../core/trial/rules";
import type { TrialCheck } from "../core/decisions/trial";
import type { LengthUnit } from "../core/decisions/work";
import { halfWords } from "./fits";
import { formatAmount } from "./terms/length";
import { placeWords, signWords } from "./trialPlaces";

interface RuleWords {
  readonly name: string;
  /** What the garment has too much or too little of, {amount} of it on one half. */
  readonly amiss: string;
}

const RULES: Readonly<Record<RuleName, RuleWords>> = {
  slopingShoulder: { name: "Sloping shoulder", amiss: "The shoulder end lies {amount} too high." },
  squareShoulder: { name: "Square shoulder", amiss: "The shoulder end lies {amount} too low." },
  forwardShoulder: { name: "Forward shoulder", amiss: "The shoulder seam ends {amount} too far back." },
  backwardShoulder: {
    name: "Shoulder seam too far forward",
    amiss: "The shoulder seam ends {amount} too far forward.",
  },
  swayBack: { name: "Sway back", amiss: "The back is {amount} too long at its centre, just above the waist." },
  flatBack: { name: "Long waist behind", amiss: "The back is {amount} too short at its centre, above the waist." },
  roundBack: { name: "High round back", amiss: "The back is {amount} too short over the shoulder blades." },
  erectBack: { name: "Very straight back", amiss: "The back is {amount} too long over the shoulder blades." },
  longAboveBust: { name: "Too long above the bust", amiss: "Front and back are {amount} too long above the bust." },
  shortAboveBust: { name: "Too short above the bust", amiss: "Front and back are {amount} too short above the bust." },
  longBelowBust: { name: "Too long below the bust", amiss: "All round, {amount} too long between bust and waist." },
  shortBelowBust: { name: "Too short below the bust", amiss: "All round, {amount} too short between bust and waist." },
  waistDipsInFront: { name: "Waist dips in front", amiss: "The waist seam lies {amount} too low at the centre front." },
  waistRisesInFront: {
    name: "Waist rises in front",
    amiss: "The waist seam lies {amount} too high at the centre front.",
  },
  waistDipsBehind: { name: "Waist dips behind", amiss: "The waist seam lies {amount} too low at the centre back." },
  waistRisesBehind: { name: "Waist rises behind", amiss: "The waist seam lies {amount} too high at the centre back." },
  longBelowWaist: { name: "Too long below the waist", amiss: "{amount} too long between waist and hem." },
  shortBelowWaist: { name: "Too short below the waist", amiss: "{amount} too short between waist and hem." },
  fullBust: { name: "Fuller bust", amiss: "Each side lacks {amount} over the bust." },
  smallBust: { name: "Smaller bust", amiss: "Each side has {amount} too much over the bust." },
  underBustTooHigh: {
    name: "Under-bust seam too high",
    amiss: "The seam lies {amount} above the crease under the bust.",
  },
  underBustTooLow: {
    name: "Under-bust seam too low",
    amiss: "The seam lies {amount} below the crease under the bust.",
  },
  bustPointElsewhere: { name: "Bust point elsewhere", amiss: "The darts aim beside the bust point that is marked." },
  dartEndElsewhere: { name: "Dart ends elsewhere", amiss: "The dart ends beside the mark." },
  dartTooFull: { name: "Dart too full", amiss: "The dart takes {amount} more at its mouth than the bust fills." },
  dartTooFlat: { name: "Dart too flat", amiss: "The dart takes {amount} too little at its mouth for the bust." },
  slackBetweenBusts: {
    name: "Slack between the busts",
    amiss: "Each front has {amount} too much at the centre front.",
  },
  narrowChest: { name: "Narrow chest", amiss: "Each front is {amount} too wide across the chest." },
  broadChest: { name: "Broad chest", amiss: "Each front is {amount} too narrow across the chest." },
  narrowBack: { name: "Narrow back", amiss: "Each back is {amount} too wide across the blades." },
  broadBack: { name: "Broad back", amiss: "Each back is {amount} too narrow across the blades." },
  looseBust: { name: "Loose at the bust line", amiss: "Each half is {amount} too wide at the side, at the bust line." },
  tightBust: {
    name: "Tight at the bust line",
    amiss: "Each half is {amount} too narrow at the side, at the bust line.",
  },
  looseWaist: { name: "Loose waist", amiss: "Each half is {amount} too wide at the waist." },
  tightWaist: { name: "Tight waist", amiss: "Each half is {amount} too narrow at the waist." },
  looseHip: { name: "Loose hip", amiss: "Each half is {amount} too wide at the hip." },
  tightHip: { name: "Tight hip", amiss: "Each half is {amount} too narrow at the hip." },
  narrowShoulder: { name: "Narrow shoulder", amiss: "The shoulder seam is {amount} too long." },
  broadShoulder: { name: "Broad shoulder", amiss: "The shoulder seam is {amount} too short." },
  highArmhole: { name: "Armhole too high", amiss: "The underarm lies {amount} too high." },
  lowArmhole: { name: "Armhole too low", amiss: "The underarm lies {amount} too low." },
  neckGapes: { name: "Neckline gapes", amiss: "The front edge is {amount} too long on each side." },
  armholeGapes: { name: "Armhole gapes", amiss: "The front armhole is {amount} too long for the body under it." },
  backNeckGapes: { name: "Back neck gapes", amiss: "The back neck edge is {amount} too long on each side." },
  strapTooFarOut: { name: "Straps too far out", amiss: "The strap sits {amount} too near the shoulder’s end." },
  strapTooFarIn: { name: "Straps too far in", amiss: "The strap sits {amount} too near the neck." },
  strapTooLong: { name: "Straps too long", amiss: "The strap is {amount} too long." },
  strapTooShort: { name: "Straps too short", amiss: "The strap is {amount} too short." },
  neckStretched: {
    name: "Neck edge stretched",
    amiss: "The neck edge grew in sewing. By hand: stay it to the length of the paper. Nothing is altered.",
  },
  seamPuckered: {
    name: "Side seam puckered",
    amiss: "The seam is drawn up by its stitches. By hand: unpick it and sew it again. Nothing is altered.",
  },
  clothOffGrain: {
    name: "Cloth off grain",
    amiss: "The cloth twists. By hand: hold its grain against the paper’s, and cut again. Nothing is altered.",
  },
  sideSeamsForward: {
    name: "Side seams lean forward",
    amiss: "By hand: open the seams, let them hang, pin them upright and mark them. Nothing is altered.",
  },
  sideSeamsBack: {
    name: "Side seams lean back",
    amiss: "By hand: open the seams, let them hang, pin them upright and mark them. Nothing is altered.",
  },
  unevenHips: {
    name: "One hip higher",
    amiss:
      "By hand: let that side hang free, pin it over the hip and level the hem from the floor. Nothing is altered.",
  },
  prominentBlade: {
    name: "One shoulder blade prominent",
    amiss: "By hand: pin a dart or ease towards the blade on that half. Nothing is altered.",
  },
  roundAbdomen: {
    name: "Round abdomen",
    amiss: "By hand: slit across the front below the waist, let it open and tape paper in. Nothing is altered.",
  },
  flatSeat: {
    name: "Flat seat",
    amiss:
      "By hand: pin the loose cloth out at the centre back below the waist, and level the hem. Nothing is altered.",
  },
  flaringRibs: {
    name: "Flaring ribs",
    amiss: "By hand: let the waist dart out below the bust, keeping its width at the waist. Nothing is altered.",
  },
  armsForward: {
    name: "Arms carried forward",
    amiss: "By hand: trim the armhole a little in front, ease it in behind. Nothing is altered.",
  },
  curvedSpine: {
    name: "One side of the back shorter",
    amiss: "By hand: pin the loose cloth on one side of the back, for that side alone. Nothing is altered.",
  },
};

/** "Sway back"; "Sloping shoulder, left half". */
export const causeName = ({ rule, half }: Pick<Cause, "rule" | "half">): string =>
  half === undefined ? RULES[rule].name : `${RULES[rule].name}, ${halfWords(half)}`;

/** What is amiss, with its amount: "The back is 15 mm too long at its centre, just above the waist." */
export const causeWords = (
  { rule, amount, half }: Pick<Cause, "rule" | "amount" | "half">,
  unit: LengthUnit,
): string => {
  const text = RULES[rule].amiss.replaceAll("{amount}", formatAmount(amount, unit));
  return half === undefined
    ? text
    : text.replace(/^Each (?:side|half|front|back)/, "This half").replace(" on each side", "");
};

const CHECKS: Readonly<Record<TrialCheck, string>> = {
  centresUpright: "the centre lines are upright",
  sideSeamsUpright: "the side seams are upright",
  hemLevel: "the hem is level",
  waistOnWaist: "the waist is on the waist",
  shouldersStay: "shoulders and straps stay",
  canSit: "you can sit",
  canReach: "you can reach",
  canBreathe: "you can breathe",
};

/** A sign to look for, or a thing that was ticked: "back hem: drops". */
export function lookWords(look: SignAt | TrialCheck): string {
  if (typeof look === "string") return CHECKS[look];
  const half = look.half === undefined ? "" : `, ${halfWords(look.half)}`;
  return `${placeWords(look.place)}: ${signWords(look.sign)}${half}`;
}
