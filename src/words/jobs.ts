/** The jobs of the order of work that are no alteration, in words: traced, blended, drawn, trued and walked. */
import type { TruingChange } from "../core/truing/changes";
import { isFoldedDown } from "../core/dart/dartCap";
import { opensUpright } from "../core/pattern/dartNames";
import { isBasque } from "../core/pattern/pieceGroups";
import type { Half } from "../core/decisions/alteration";
import { isTurnedOver } from "../core/cutting/turnedOver";
import { isNumbered, type DartRef, type LevelName, type PieceName } from "../core/pattern/piece";
import type { ChecklistStep, CutLine } from "../core/plan/plan";
import type { DartPlaces, TissuePlace } from "../core/plan/tissuePlaces";
import type { Mm } from "../core/units";
import { mouthSeamWords } from "./alterations/dartRedraw";
import { shareWords } from "./blend";
import { pointWords } from "./checks";
import { asItLies, CORNERS_COUNTED, layWords, lengthMove, placeMove, placeWords } from "./places";
import { endWords } from "./terms/points";
import { endAtWords } from "./terms/darts";
import { drawn, pair, small, type Context, type Said } from "./terms/jobText";
import { formatLength, markingStep } from "./terms/length";
import { centreWords, dartWords, levelWords, pieceWords, seamWords } from "./terms/names";
import { listWords } from "./terms/language";

export function traceSaid(
  { size, cup, isTwice, own }: Extract<ChecklistStep, { kind: "trace" }>,
  context: Context,
): Said {
  const version = cup === null ? "" : `, cup version ${cup}`;
  const basque = isBasque(context.pieceName);
  const lines = basque
    ? ["grain", "hip line"]
    : context.piece?.points.bustPoint !== undefined
      ? ["grain", "bust line", "bust point"]
      : context.piece?.points.centreBust === undefined
        ? ["grain"]
        : ["grain", "bust line"];
  const darts = context.piece !== undefined && context.piece.darts.length === 0 ? [] : ["darts"];
  return {
    text: `Trace the ${size} line of the ${context.label ?? pieceWords(context.pieceName)}${version}, with ${listWords([...darts, "notches", ...lines])}.${isTwice ? ` ${context.half === undefined ? twiceWords(context.pieceName) : ofHalfWords(context.pieceName, context.half)}` : ""}${own === null ? "" : ` ${ownPointWords(own, context)}`}`,
    amount: size,
  };
}

type OwnMark = NonNullable<Extract<ChecklistStep, { kind: "trace" }>["own"]>;

/** "Mark your own bust point 8.4 cm from the centre front and 29.5 cm straight from the side neck point." */
function ownPointWords({ fromCentre, fromSideNeck, fromPrinted, isMoved }: OwnMark, context: Context): string {
  const across = `${formatLength(fromCentre, context.unit)} from the ${centreWords(context.pieceName)}`;
  const down = fromPrinted?.down ?? 0;
  const where =
    fromSideNeck !== null
      ? `${across} and ${formatLength(fromSideNeck, context.unit)} straight from the side neck point`
      : drawn(down, context)
        ? `${across} and ${small(down, context)} ${down > 0 ? "lower" : "higher"} than the pattern’s`
        : `${across}, level with the pattern’s`;
  return `Mark your own bust point ${where}.${isMoved ? " Mark it anew there when the piece has been moved." : ""}`;
}

/** A piece that comes out different on the two halves: which tracing is turned over. */
function twiceWords(piece: PieceName): string {
  const [as, over] = isTurnedOver(piece, "right") ? ["left", "right"] : ["right", "left"];
  return `Trace it twice, it is not the same on both halves: one as printed for the ${as} half, one turned over for the ${over} half; write left and right on them. On the cloth, tack one line along the grain on your left half, two on your right.`;
}

/** One that is traced from another print on each half: how this half's lies. */
const ofHalfWords = (piece: PieceName, half: Half): string =>
  `Trace it ${isTurnedOver(piece, half) ? "turned over" : "as printed"}, and write ${half} on it. On the cloth, tack ${half === "left" ? "one line" : "two lines"} along the grain.`;

const sideWords = (offset: Mm): string => (offset > 0 ? "outside" : "inside");

/** How far outside the lower printed line the side seam is marked, and in words where that is. */
function markOf(line: CutLine, taken: Mm, context: Context): { readonly words: string; readonly amount: string } {
  const [lower, upper] = line.between;
  const where = shareWords(line.between, line.share);
  const level = levelWords(line.level);
  const marked = (value: Mm): Mm => Math.round(value / markingStep(context.unit)) * markingStep(context.unit);
  // As marked, so that the sum told adds up.
  const [bySize, offset] = [marked(line.offset), marked(line.offset - taken)];
  const given = bySize - offset;
  if (drawn(given, context)) {
    const without = drawn(bySize, context)
      ? `${small(bySize, context)} ${sideWords(bySize)} it`
      : `on the ${lower} line`;
    const why = given > 0 ? "set free by narrower darts" : "taken by wider darts";
    const sum = `${without} by your size, ${given > 0 ? "less" : "and"} ${small(given, context)} ${why}`;
    return drawn(offset, context)
      ? {
          words: `${small(offset, context)} ${sideWords(offset)} the ${level} end of the ${lower} line (${sum})`,
          amount: `${small(offset, context)} ${sideWords(offset)}`,
        }
      : { words: `on the ${lower} line (${sum})`, amount: `on ${lower}` };
  }
  if (where.startsWith("on the") || !drawn(offset, context)) {
    const label = where === `on the ${upper} line` ? upper : lower;
    return { words: `on the ${label} line`, amount: `on ${label}` };
  }
  return {
    words: `${small(offset, context)} ${sideWords(offset)} the ${level} end of the ${lower} line (${where})`,
    amount: `${small(offset, context)} ${sideWords(offset)}`,
  };
}

/** @param from where the new side seam leaves the traced one */
export function blendSaid(line: CutLine, from: LevelName, taken: Mm, context: Context): Said {
  const { words, amount } = markOf(line, taken, context);
  const level = levelWords(line.level);
  if (from !== "hip" && from !== "waist" && context.traced !== undefined && amount === `on ${context.traced}`) {
    return {
      text: `At the ${level} the side seam stays on the traced ${context.traced} line: nothing to mark.`,
      amount,
    };
  }
  const join =
    from === "hip"
      ? "Leave the line until the hip is marked too."
      : from === "waist"
        ? "Draw the side seam from the waist mark through this one in one smooth curve, and on to the hem as far from the traced line as here."
        : from === "underBust"
          ? "When its under-bust end is put too, draw the side seam between the two in one smooth curve."
          : `Draw the side seam from the traced line at the ${levelWords(from)} to this mark in one smooth curve, with no corner.`;
  return { text: `Level with the side of the traced ${level} line, mark the side seam ${words}. ${join}`, amount };
}

/** Where the ends of the mouth and the dart's own end lie, from where they are printed or from a printed corner. */
function dartPosition(ref: DartRef, { inner, outer, apex }: DartPlaces, context: Context): string[] {
  const [first, second] = endWords(ref.dart);
  const [one, other] = [inner, outer].map((place) => placeWords(place, context));
  const mouth =
    one === other && inner.point === inner.from
      ? one === asItLies(context)
        ? one
        : `both ends ${one}`
      : `${first} ${one}; ${second} ${other}`;
  return [
    `Its mouth${fromPrinted([inner, outer], context)}: ${mouth}.`,
    `Its end${fromPrinted([apex], context)}: ${placeWords(apex, context)}.`,
  ];
}

/** ", from where it is printed", of places some of which lie away from their own old ones. */
const fromPrinted = (places: readonly TissuePlace[], context: Context): string =>
  places.some((place) => place.point === place.from && placeWords(place, context) !== asItLies(context))
    ? `, from ${asItLies(context)}`
    : "";

/** Places are where all that was done so far leads, and never one more move on top of it. */
const ALL_INCLUDED = "all the above included";

export function dartSaid(
  { dart: ref, figures, places, isByOwnPoint, isBySight, isMovedAlready }: Extract<ChecklistStep, { kind: "dart" }>,
  context: Context,
): Said {
  const [inner, outer] = pair(figures.legInner, figures.legOuter, context);
  const legs =
    inner === outer
      ? `both legs ${inner} long`
      : opensUpright(ref.dart)
        ? `upper leg ${inner}, lower leg ${outer} long`
        : `inner leg ${inner}, outer leg ${outer} long`;
  const point = isByOwnPoint ? "your own bust point" : "the pattern’s bust point";
  const end =
    figures.end === null
      ? ""
      : isBySight
        ? "; it ends short of the bust point that you marked on the toile"
        : `; it ends ${endAtWords(ref, figures.end, (amount) => small(amount, context), point)}` +
          (figures.end.along < 0 ? ": a fault, see the first page" : "");
  return {
    text: `${isMovedAlready ? "Check" : "Draw"} the ${dartWords(ref.dart)}, ${ALL_INCLUDED}: mouth ${small(figures.intake, context)} wide, ${legs}${end}.`,
    moves: places === null ? [] : dartPosition(ref, places, context),
    amount: small(figures.intake, context),
  };
}

/** Every point that does not lie where it is printed when all is done, and every line that is not as it was traced. */
export function placesSaid(
  { places, lengths, stayed }: Extract<ChecklistStep, { kind: "places" }>,
  context: Context,
): Said {
  const points = places.flatMap((place) => placeMove(place, context) ?? []);
  const lines = lengths.map((one) => lengthMove(one, context));
  const put =
    points.length === 0
      ? "Draw the lines between its points as they were traced, but for these:"
      : `Check its points, ${ALL_INCLUDED}: they lie so far from where each ${context.isFromOld === true ? "was" : "is printed"}, square to the grain and along it. Put those that do not, and draw the lines between them as they were traced:`;
  const named = [...stayed, ...places.map(({ point }) => point), ...lengths.flatMap(({ from, to }) => [from, to])];
  const counted = named.some(isNumbered) ? ` ${CORNERS_COUNTED}` : "";
  return { text: `${layWords(stayed, context)}.${counted} ${put}`, moves: [...points, ...lines] };
}

export function trueDartSaid(ref: DartRef): Said {
  const fold = isFoldedDown(ref.dart) ? "its bulk down" : `its bulk towards the ${centreWords(ref.piece)}`;
  return {
    text: `Fold the ${dartWords(ref.dart)} closed, ${fold}, and cut the ${mouthSeamWords(ref)} across it through all layers.`,
  };
}

export function walkSaid(step: Extract<ChecklistStep, { kind: "walk" }>, context: Context): Said {
  const seam = seamWords(step.seam, context.pieceName);
  const [own, other] = [step.first, step.second].map((names) => listWords(names.map(pieceWords)));
  const eased = drawn(step.ease, context)
    ? `The ${own} is ${small(step.ease, context)} longer: that is eased in.`
    : "They must come out equal.";
  return {
    text: `Walk the ${seam} of the ${own} along that of the ${other}, seam line on seam line, darts folded. ${eased}`,
    amount: drawn(step.ease, context) ? small(step.ease, context) : null,
  };
}

/** What truing moves after all else. */
export function truedSaid({ seam, what, point, amount }: TruingChange, context: Context): Said {
  const line = seamWords(seam, context.pieceName);
  const at = point === null ? "" : ` at the ${pointWords(point)}`;
  switch (what) {
    case "seamWalked":
      return {
        text:
          seam === "waist"
            ? `Walk the ${line} against that of the bodice: bring it to the bodice’s length${at} (here by ${small(amount, context)}).`
            : `Walk the ${line} against its partner: bring the two to one length${at}, half of what they differ by on each (here ${small(amount, context)}).`,
        amount: small(amount, context),
      };
    case "seamSmoothed":
      return { text: `Draw the ${line} smooth${at}.` };
    case "cornerSquared":
      return {
        text: `Redraw the end of the ${line}${at}, so that it runs square to the centre line, or straight on where two pieces join.`,
      };
    case "legsEqualled":
      return {
        text: `Bring the legs of the dart in the ${line} to one length: ${small(amount, context)} each.`,
        amount: small(amount, context),
      };
  }
}
