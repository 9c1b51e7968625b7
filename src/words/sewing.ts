/** The order of sewing in words: what is done, along what, how it is pressed and what to take care of. */
import type { LengthUnit } from "../core/decisions/work";
import type { SewingCaution, SewingStep, SewingStepName, SewingWay, SewnSeam } from "../core/sewing/sewingStep";
import type { Mm } from "../core/units";
import { halfWords } from "./fits";
import { formatAlong, formatAmount, formatLength } from "./terms/length";
import { capital, centreWords, dartRefWords, pieceWords, seamWords } from "./terms/names";
import { listWords } from "./terms/language";

/** How far the ends of the lining's allowances and the like are told of is in the parts; here only what is done. */
type Said = string | ((step: SewingStep, unit: LengthUnit) => string);

const tierWords = ({ at }: SewingStep): string => (at === undefined ? "the skirt" : `tier ${at}`);

/** What an opening is, by how it closes. */
const openingWords = (way: SewingWay | undefined): string => (way === "buttons" ? "opening" : "zip");

/** The most that is turned up narrowly, a seam's usual allowance in either unit (common practice, no source). */
const NARROW_HEM: Mm = 16;

const leftOpen = (way: SewingWay | undefined): string => (way === "opens" ? ", all but the join at the opening" : "");

const stopShort = (way: SewingWay | undefined): string =>
  way === "opens" ? " Stop one allowance short of the opening." : "";

/** How the upper edge is sewn so that it can be turned. */
function topEdgeSewn(way: SewingWay | undefined, inside: "lining" | "facing"): string {
  const short = "Stop one allowance short of the opening.";
  switch (way) {
    case "throughShoulders":
      return `Sew the neck edge and both armholes. ${short} Trim, clip the curves, and turn: draw each back through its shoulder to the front.`;
    case "rolled":
      return `Sew the neck edge; trim, clip and turn. Then one armhole at a time: roll the bodice up towards it from the other side, wrap ${inside} and shell round the roll, right sides together, sew the armhole, trim and clip, and draw the bodice out. ${short}`;
    default:
      return `Sew the upper edge. ${short} Trim, clip the curves and turn.`;
  }
}

const STEPS: Readonly<Record<SewingStepName, Said>> = {
  washCloth:
    "Wash every cloth as the dress will be washed, and press it. Fusible interfacing is at most soaked and laid flat to dry: no iron before it is fused.",
  cutOut: "Cut out all parts by the cut list, and snip the notches.",
  markDarts: "Mark the darts on the wrong side, ends and legs.",
  fuseInterfacing:
    "Fuse the interfacing to the wrong side of its facings. Press down, do not slide, and let it cool flat.",
  tackUnderlining:
    "Tack the underlining to the wrong side of its pieces, inside the allowances. From here on two layers are one.",
  stayStitch: "Stay-stitch the curved edges, just inside the allowance, so that they do not stretch.",
  sewDarts: "Sew the darts from the mouth to the end; knot the threads there.",
  drawUpGathers: "Sew two rows from mark to mark, and draw the gathers up until the seam fits what it is sewn to.",
  princessSeams: "Sew the princess seams, notch to notch. Clip the curve of the centre piece first, so that it opens.",
  bandToCups: "Sew the midriff band on, front and back. The side seams are still open.",
  centreFrontSeam: "Sew the centre front seam.",
  centreBackSeam: "Sew the centre back seam.",
  shoulderSeams: "Sew the shoulder seams, the back eased to the front.",
  otherPieces: "Sew on what else your pattern has, as its own steps say.",
  makeStraps: ({ way }) =>
    way === "tied"
      ? "Make the ties: fold each along its length, sew, turn, and close the free end."
      : "Make the straps: sew each along its length, turn and press.",
  elasticInStraps:
    "Draw the elastic into its casings and sew across both ends of it. Sew each casing to the back end of its strap.",
  basteStraps: ({ way, seams }) => {
    // A pattern whose pieces have no seam for its straps shows no mark.
    const at =
      seams.length === 0
        ? "where they sit when you try it on"
        : `the middle of each at the mark “${pieceWords("strap")}”`;
    return way === "tied"
      ? `Tack the ties to the right side of the upper edge, ${at}, raw edges together, the free ends hanging down.`
      : way === "crossed"
        ? `Tack the straps to the right side of the front, ${at}; cross them and pin them to the back in the same way.`
        : `Tack the straps to the right side of the front, ${at}, and pin them to the back in the same way.`;
  },
  fitBeforeTopEdge:
    "Tack what is still open, close the opening with pins and try it on. Put right what is off, and tack down what was pinned, before the upper edge is closed.",
  bodiceSides: ({ way, seams }) => {
    const isRight = seams.every(({ half }) => half === "right");
    const sides = isRight ? "right side seam" : "side seams";
    const opens = isRight ? " The left one opens." : "";
    if (way === "withLining")
      return `Open shell and lining out at the underarm, and sew the ${sides} of both in one go.${opens}`;
    return way === "withFacing"
      ? `Open the facing out at the underarm, and sew the ${sides} of bodice and facing in one go.${opens}`
      : `Sew the ${sides}.${opens}`;
  },
  liningDarts: "Lining: sew the darts.",
  liningSeams: "Lining: sew the seams within front and back.",
  liningShoulders: "Lining: sew the shoulder seams.",
  liningSides: ({ seams }) =>
    seams.every(({ half }) => half === "right")
      ? "Lining: sew the right side seam. The left one stays open."
      : "Lining: sew the side seams.",
  facingSeams: "Join the facings, and neaten their lower edges.",
  liningTopEdge: ({ way }) => `Lay lining on shell, right sides together. ${topEdgeSewn(way, "lining")}`,
  faceTopEdge: ({ way }) => `Lay the facing on, right sides together. ${topEdgeSewn(way, "facing")}`,
  faceNeck: ({ way }) => `Sew the neck facing on, right sides together.${stopShort(way)} Trim, clip and turn.`,
  faceArmholes: ({ way }) => `Sew the armhole facings on, right sides together.${stopShort(way)} Trim, clip and turn.`,
  bindNeck: ({ way }) =>
    way === "atStraps"
      ? "Bind the neck edge, front and back, on over the strap seams, and turn the ends in. Turn the straps up and stitch them to the binding."
      : `Bind the neck edge, ${way === "opens" ? "the ends turned in at the opening" : "the join at a shoulder seam"}.`,
  bindArmholes: ({ way }) =>
    way === "atStraps"
      ? "Bind the armholes, all ends turned in."
      : way === "opens"
        ? "Bind the armholes: the right one joined under the arm, the ends of the left one turned in at the opening."
        : "Bind the armholes, the join under the arm.",
  underStitch: "Under-stitch: the allowances to what lies inside, close to the seam, so that it rolls in.",
  basqueSeams: "Basque: sew its seams. What opens stays open.",
  liningBasque: "Lining: sew the seams of the basque, as far as it does not open, then sew it on at the waist.",
  skirtDarts: "Skirt: sew the darts from the waist to the end; knot the threads there.",
  pockets: ({ way }) =>
    way === "opens"
      ? "Skirt: sew your own pocket bag to the right side seam before it is closed; the left one opens. None is drafted here."
      : "Skirt: sew your own pocket bags to the side seams before these are closed. None is drafted here.",
  panelSeams: "Skirt: sew the panels to one another.",
  skirtCentreSeams: "Skirt: sew the centre seam.",
  skirtSides: ({ seams }) =>
    seams.every(({ half }) => half === "right")
      ? "Skirt: sew the right side seam. The left one opens."
      : "Skirt: sew the side seams.",
  stayWaist: "Stay-stitch the waist of the skirt at once: it lies on the bias and stretches.",
  joinSectors: ({ way }) => `Sew the parts of the skirt to one another${leftOpen(way)}.`,
  joinTierPanels: (step) => `Sew the widths of ${tierWords(step)} to one another${leftOpen(step.way)}.`,
  gatherTiers: (step) => `Sew two rows along the upper edge of ${tierWords(step)} and draw it up.`,
  tierToTier: ({ at = 2 }) => `Sew tier ${at} to tier ${at - 1}, right sides together, the gathers spread evenly.`,
  shapeTop: (step, unit) =>
    `Mark centres and sides on the upper edge of ${tierWords(step)}, and cut it lower in one even curve: ${loweredWords(step.lower, unit)}. The hem is level then.`,
  gatherSkirt: (step) => `Sew two rows along the upper edge of ${tierWords(step)} and draw it up to the waist.`,
  fitBeforeWaist:
    "Pin the skirt to the waist and try all of it on: the waist seam level, the opening shut. Only then sew.",
  basqueToBodice: "Sew the basque to the bodice at the waist, side seams and centres meeting.",
  skirtToBodice: ({ way }) =>
    `Sew the ${way === "peplum" ? "peplum" : "skirt"} to the bodice at the waist, side seams and centres meeting.`,
  zipMarks:
    "Mark both edges of the opening and both tapes of the zip level: at the upper edge, at the waist seam and at the end.",
  tackZip: ({ way }) =>
    `Tack the ${way === "lapped" ? "lapped" : "invisible"} zip in, or hold it with wash-away tape; not with pins. Close it: upper edges and waist seam have to meet.`,
  putInZip: ({ way }) =>
    way === "lapped"
      ? "Sew the zip in: the under side close to the teeth, then the lap from the right side, across below the end."
      : "Sew the zip in, close beside the teeth, each side from the top down to the end mark.",
  seamBelowOpening: ({ way }) => `Sew what is left of the seam below the ${openingWords(way)}.`,
  fuseStands:
    "Fuse a strip of interfacing to the wrong side of each button stand before it is turned in. One long edge lies where the stand will be folded, halfway between the centre line and the raw edge; the other lies inside the centre line, under buttons and buttonholes. Where a seam crosses, cut the strip there and slip its ends under the allowances. Press down, do not slide, and let it cool flat.",
  buttonStands: "Turn each button stand in by half its width, along the opening, and stitch it.",
  vent: "Neaten both edges of the vent. Fold it in along its fold on one half, leave the other flat beneath it, and stitch across both at the upper end.",
  finishWaist: "Neaten the lower edge at the waist and turn it in.",
  liningSkirtDarts: ({ way }) =>
    way === "pleats" ? "Skirt lining: tack the pleats at the waist." : "Skirt lining: sew the darts.",
  liningSkirtSeams: "Skirt lining: sew its seams, and stop where its V ends.",
  liningSkirtToWaist:
    "Sew the skirt lining to the allowance of the waist seam, and to nothing else. Its ends are turned in and stay free of the closure.",
  closeLiningWaist: "Turn the bodice lining in at the waist and slip-stitch it over the seam.",
  handSewFacing:
    "Turn the ends of the facings in beside the opening and slip-stitch them; catch the facings to the seams.",
  handSewLining: "Slip-stitch the lining along the opening, clear of what moves.",
  hookAndEye: "Sew a hook and an eye at the upper end of the zip.",
  buttonholes: "Work the buttonholes at their marks, and cut them open.",
  buttons: "Sew the buttons on under the buttonholes.",
  hang: ({ way }) =>
    way === "round"
      ? "Let the dress hang for a day: the skirt drops where it lies on the bias."
      : "Let the dress hang overnight.",
  levelHem: "Put it on with its shoes and have the hem marked level from the floor. Cut it even.",
  hemShell: ({ way, allowance }) =>
    way !== "round"
      ? "Turn the hem up and sew it."
      : (allowance ?? 0) > NARROW_HEM
        ? "Trim the allowance narrow, and hem the skirt, eased in where it is longer."
        : "Hem the skirt narrowly, eased in where it is longer.",
  hemLining: "Hem the lining, turned twice.",
  press: "Press the whole dress.",
};

/** How what was sewn is pressed, where there is more to it than pressing it. */
const PRESSED: Readonly<Partial<Record<SewingStepName, string>>> = {
  sewDarts: "Press upright darts to the centre, others down.",
  skirtDarts: "Press them to the centre.",
  princessSeams: "Press open over a rounded pad.",
  bandToCups: "Press into the band.",
  bodiceSides: "Press open.",
  skirtSides: "Press open.",
  panelSeams: "Press open.",
  shoulderSeams: "Press open.",
  centreFrontSeam: "Press open.",
  centreBackSeam: "Press open.",
  skirtCentreSeams: "Press open.",
  seamBelowOpening: "Press open.",
  joinTierPanels: "Press open.",
  tierToTier: "Press up, only the allowance: gathers stay round.",
  skirtToBodice: "Press up, only the allowance.",
  basqueToBodice: "Press up.",
  fuseInterfacing: "",
  fuseStands: "",
  press: "",
};

const CAUTIONS: Readonly<Record<SewingCaution, string>> = {
  pins: "Pins flat, points away from the skin. Count them in and out.",
  iron: "Hot plate and steam: try a scrap first, and unplug it after.",
  blade: "Cut away from your hand.",
  zip: "Keep skin and cloth clear of the teeth when you close it.",
  needle: "Take pins out before the needle gets there.",
};

const MARKS: Readonly<Record<NonNullable<SewingStep["marks"]>[number]["at"], string>> = {
  topEdge: "Upper edge",
  underBust: "Under-bust seam",
  waist: "Waist seam",
  end: "End of the opening",
};

interface SewingStepWords {
  readonly text: string;
  /** What is sewn along, a line each: "front and back, 2 × 21.4 cm". */
  readonly seams: readonly string[];
  /** "15 mm"; null where none is. */
  readonly allowance: string | null;
  readonly press: string | null;
  readonly cautions: readonly string[];
}

export function sewingStepWords(step: SewingStep, unit: LengthUnit): SewingStepWords {
  const said = STEPS[step.name];
  const press = step.press ? (PRESSED[step.name] ?? "Press.") : "";
  const finish = finishSaid(step, press);
  return {
    text: typeof said === "string" ? said : said(step, unit),
    seams: [
      ...step.seams.map((seam) => seamSaid(seam, unit)),
      ...(step.marks ?? []).map(({ at, from }) => `${MARKS[at]}: ${formatLength(from, unit)}`),
    ],
    allowance: step.allowance === null ? null : formatAmount(step.allowance, unit),
    press: finish === "" ? null : finish,
    cautions: step.cautions.map((caution) => CAUTIONS[caution]),
  };
}

/** Enclosed in itself or stitched double, a seam is pressed to one side; else as it is, and its edges seen to. */
function finishSaid({ finish }: SewingStep, press: string): string {
  switch (finish) {
    case "frenchSeam":
      return "As a French seam: wrong sides together first, trim, turn, and sew it again on the seam line. Press to one side.";
    case "narrow":
      return "Sew twice, close together, and trim beside it. Press to one side.";
    case "bound":
      return `${press} Bind the allowances together.`.trim();
    case "narrowHem":
      return "Trim the allowance narrow and turn it twice, so that no raw edge shows. Press.";
    case "neatened":
      return `${press} Neaten the raw edges.`.trim();
    case "binding":
    case null:
      return press;
  }
}

/** From where it is cut lower least: "nothing at the sides, 10 mm at the centre front, 20 mm at the centre back". */
function loweredWords(lower: SewingStep["lower"], unit: LengthUnit): string {
  const { front, side, back } = lower ?? { front: 0, side: 0, back: 0 };
  const placesBy = new Map<string, string[]>();
  for (const { by, where } of [
    { by: front, where: "the centre front" },
    { by: side, where: "the sides" },
    { by: back, where: "the centre back" },
  ].toSorted((one, other) => one.by - other.by)) {
    const amount = formatAmount(by, unit);
    const told = amount === formatAmount(0, unit) ? "nothing" : amount;
    placesBy.set(told, [...(placesBy.get(told) ?? []), where]);
  }
  return [...placesBy].map(([told, places]) => `${told} at ${listWords(places)}`).join(", ");
}

/** Seams of pieces and legs of darts as the table tells them; edges, what is gathered and rectangles as the step Dress does. */
function lengthSaid({ seam, pieces, length, count, gatheredTo }: SewnSeam, unit: LengthUnit): string {
  const isWalked = pieces.length > 0 && gatheredTo === undefined && !(seam !== null && EDGES.has(seam));
  const each = (isWalked ? formatAlong : formatLength)(length, unit);
  return count === 1 ? each : `${count} × ${each}`;
}

function seamSaid(seam: SewnSeam, unit: LengthUnit): string {
  const { half, gatheredTo } = seam;
  const named = namedWords(seam);
  const where = [named, half === null ? null : halfWords(half)].filter((word) => word !== null).join(", ");
  const drawn = gatheredTo === undefined ? "" : `, to ${formatLength(gatheredTo, unit)}`;
  return `${where === "" ? "" : `${capital(where)}: `}${lengthSaid(seam, unit)}${drawn}`;
}

/** Edges of which each is a line of its own on the body. */
const EDGES: ReadonlySet<SewnSeam["seam"]> = new Set(["neck", "armhole", "hem", "strap"]);

function namedWords({ seam, dart, pieces }: SewnSeam): string | null {
  const [first] = pieces;
  if (dart !== undefined && first !== undefined) return dartRefWords({ piece: first, dart });
  if (seam !== null && EDGES.has(seam)) return seamWords(seam, first ?? "front");
  if (first === undefined) return null;
  if (seam === "centre") return pieces.length === 1 ? pieceWords(first) : centreWords(first);
  return listWords(pieces.map(pieceWords));
}
