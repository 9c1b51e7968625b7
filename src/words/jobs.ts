/** The jobs of the order of work that are no alteration, in words: traced, blended, drawn, trued and walked. */
import type { TruingChange } from "../core/truing/changes";
import { liesAlongBust } from "../core/pattern/dartNames";
import { isBasque } from "../core/pattern/pieceGroups";
import type { DartRef, LevelName, PieceName, PointName } from "../core/pattern/piece";
import type { ChecklistStep, CutLine, MouthPlace } from "../core/plan/plan";
import type { Mm } from "../core/units";
import { mouthSeamWords } from "./alterations/dartRedraw";
import { shareWords } from "./blend";
import { pointWords } from "./checks";
import { endAtWords } from "./terms/darts";
import { drawn, pair, small, type Context, type Said } from "./terms/jobText";
import { centreWords, dartWords, levelWords, listWords, pieceWords, seamWords } from "./terms/names";

export function traceSaid(size: string, cup: string | null, context: Context): Said {
  const version = cup === null ? "" : `, cup version ${cup}`;
  const basque = isBasque(context.pieceName);
  const lines = basque
    ? "grain and hip line"
    : context.piece?.points.bustPoint !== undefined
      ? "grain, bust line and bust point"
      : context.piece?.points.centreBust === undefined
        ? "grain"
        : "grain and bust line";
  const darts = context.piece !== undefined && context.piece.darts.length === 0 ? "" : "darts, ";
  return {
    text: `Trace the ${size} line of the ${pieceWords(context.pieceName)}${version}, with ${darts}notches, ${lines}.`,
    amount: size,
  };
}

/** Whether the new side seam lies on the line of a size. */
function isOn({ between, share, offset }: CutLine, size: string, context: Context): boolean {
  const where = shareWords(between, share);
  return where === `on the ${size} line` || (between[0] === size && !drawn(offset, context));
}

export function blendSaid(line: CutLine, from: LevelName, context: Context): Said {
  if (from === "bust" && context.traced !== undefined && isOn(line, context.traced, context)) {
    return {
      text: `At the ${levelWords(line.level)} the side seam stays on the traced ${context.traced} line: nothing to mark.`,
      amount: `on ${context.traced}`,
    };
  }
  const level = levelWords(line.level);
  const [lower, upper] = line.between;
  const where = shareWords(line.between, line.share);
  const join =
    from === "hip"
      ? "Leave the line until the hip is marked too."
      : from === "waist"
        ? "Draw the side seam from the waist mark through this one to the hem in one smooth curve."
        : `Draw the side seam from the traced line at the ${levelWords(from)} to this mark in one smooth curve, with no corner.`;
  if (where.startsWith("on the") || !drawn(line.offset, context)) {
    const label = where === `on the ${upper} line` ? upper : lower;
    return {
      text: `On the traced ${level} line, mark the side seam on the ${label} line. ${join}`,
      amount: `on ${label}`,
    };
  }
  const way = line.offset > 0 ? "outside" : "inside";
  return {
    text: `On the traced ${level} line, mark the side seam ${small(line.offset, context)} ${way} the ${lower} line (${where}). ${join}`,
    amount: `${small(line.offset, context)} ${way}`,
  };
}

/** The corner that a dart's mouth is measured from. */
function cornerWords(from: PointName, piece: PieceName): string {
  switch (from) {
    case "centreWaist":
    case "underBustCentre":
      return centreWords(piece);
    case "sideNeck":
      return "neck edge";
    default:
      return pointWords(from);
  }
}

/** Where the mouth lies on its seam and where the end is found, by compasses or a tape. */
function dartPosition(ref: DartRef, mouth: MouthPlace | null, context: Context): string[] {
  if (mouth === null) return [];
  const [first, second] = pair(mouth.inner, mouth.outer, context);
  return [
    `Its mouth on the ${mouthSeamWords(ref)}: ends ${first} and ${second} from the ${cornerWords(mouth.from, ref.piece)}, measured straight.`,
    "Its end: where the two leg lengths, swung from the ends of the mouth, cross.",
  ];
}

export function dartSaid(
  { dart: ref, figures, mouth }: Extract<ChecklistStep, { kind: "dart" }>,
  context: Context,
): Said {
  const [inner, outer] = pair(figures.legInner, figures.legOuter, context);
  const legs =
    inner === outer
      ? `both legs ${inner} long`
      : liesAlongBust(ref.dart)
        ? `upper leg ${inner}, lower leg ${outer} long`
        : `inner leg ${inner}, outer leg ${outer} long`;
  const end =
    figures.end === null
      ? ""
      : `; it ends ${endAtWords(ref, figures.end, (amount) => small(amount, context))}` +
        (figures.end.along < 0 ? ": a fault, see the first page" : "");
  return {
    text: `Draw the ${dartWords(ref.dart)}: mouth ${small(figures.intake, context)} wide, ${legs}${end}.`,
    moves: dartPosition(ref, mouth, context),
    amount: small(figures.intake, context),
  };
}

export function trueDartSaid(ref: DartRef, amount: Mm, context: Context): Said {
  const fold = liesAlongBust(ref.dart) ? "its bulk down" : `its bulk towards the ${centreWords(ref.piece)}`;
  const legs = drawn(amount, context)
    ? ` First bring the legs to one length: the shorter ${small(amount, context)} longer, the longer ${small(amount, context)} shorter.`
    : "";
  return {
    text: `Fold the ${dartWords(ref.dart)} closed, ${fold}, and cut the ${mouthSeamWords(ref)} across it through all layers.${legs}`,
    amount: drawn(amount, context) ? small(amount, context) : null,
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
