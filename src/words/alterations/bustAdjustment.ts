/** The bust adjustment in words, for each piece it is made on. */
import type { PieceName } from "../../core/pattern/piece";
import type { BustSpreadAt } from "../../core/plan/plan";
import type { Mm } from "../../core/units";
import { tissueWords } from "../terms/points";
import { small, type Context, type Said } from "../terms/jobText";
import { dartWords } from "../terms/names";

interface BustWords {
  readonly heading: string;
  readonly moves: readonly string[];
}

/** Amounts as they are said, without sign: the spread on the half, and how much the centre grows or shrinks in length. */
interface Amounts {
  readonly spread: string;
  readonly drop: string;
  readonly hinge: string;
  /** Of a front. */
  readonly lines: DartLines;
}

/** The darts that a front is cut through, and where a line is drawn that has none yet. */
interface DartLines {
  readonly side: string;
  readonly fromSide: string;
  readonly fromWaist: string;
}

/** mm. On the half, round the whole body, what the centre grows by in length; how far its hinge lies from the underarm. */
export interface BustFigures {
  readonly spread: Mm;
  readonly whole: Mm;
  readonly drop: Mm;
  readonly hinge: Mm;
  readonly at?: BustSpreadAt;
}

/** The whole job. */
export function bustSaid({ spread, whole, drop, hinge, at }: BustFigures, context: Context): Said {
  const { heading, moves } = bustSteps(context.pieceName, spread, {
    spread: small(spread, context),
    drop: small(drop, context),
    hinge: small(hinge, context),
    lines: linesOf(at, context),
  });
  return {
    text: `${heading} (${small(whole, context)} round the whole body).`,
    moves,
    amount: small(context.pieceName === "centreFront" ? drop : spread, context),
  };
}

function linesOf(at: BustSpreadAt | undefined, context: Context): DartLines {
  const side = dartWords(at?.side ?? "sideDart");
  const opened = at?.sideOpened ?? null;
  return {
    side,
    fromSide:
      opened === null
        ? `through the middle of the ${side} to the bust point`
        : `from the side seam, ${small(opened.by, context)} below the ${tissueWords(opened.from, context.pieceName)}, measured straight, to the bust point`,
    fromWaist:
      at?.isWaistOpened === true
        ? "from the waist seam, straight below the bust point, up to the bust point"
        : `from the middle of the ${dartWords(at?.waist ?? "waistDart")} up to the bust point`,
  };
}

/** What to do on a piece for a fuller (positive spread) or a smaller bust. */
function bustSteps(piece: PieceName, spread: Mm, amounts: Amounts): BustWords {
  const fuller = spread > 0;
  const name = fuller ? "Full bust adjustment" : "Small bust adjustment";
  switch (piece) {
    case "cup":
      return {
        heading: `${name}: ${fuller ? "open" : "lap"} the cup by ${amounts.spread} at the bust point`,
        moves: cupMoves(fuller, amounts),
      };
    case "sideFront":
      return {
        heading: `${name}: ${fuller ? "widen" : "narrow"} the side front by ${amounts.spread} at the bust line`,
        moves: sideFrontMoves(fuller, amounts),
      };
    case "centreFront":
      return {
        heading: `${name}: ${fuller ? "lengthen" : "shorten"} the centre front by ${amounts.drop} at the bust line`,
        moves: centreFrontMoves(fuller, amounts),
      };
    default:
      return {
        heading: `${name}: ${fuller ? "open" : "lap"} the front by ${amounts.spread} at the bust point`,
        moves: frontMoves(fuller, amounts),
      };
  }
}

function frontMoves(
  fuller: boolean,
  { spread, drop, hinge, lines: { side, fromSide, fromWaist } }: Amounts,
): readonly string[] {
  const lines = [
    `Draw a line ${fromWaist} and on to the armhole, ${hinge} from the underarm, measured straight. Draw another ${fromSide}.`,
    "Cut the first line from the waist to the seam line of the armhole; snip the allowance to it, so that the paper hinges on the seam line. Cut the second almost to the bust point.",
  ];
  return fuller
    ? [
        ...lines,
        `Swing the side part outwards until the cut stands ${spread} open at the bust point. Turn its lower half back until the edges below stand ${spread} apart all the way to the waist. The ${side} opens by itself.`,
        `The side part now hangs ${drop} lower. Cut the centre part straight across from the centre front to the bust point and lower the part below by ${drop}, so that the waist is level again.`,
        "Stick paper behind the gaps. Mark the pattern’s new bust point in the middle of the gap, and draw the armhole smooth past the hinge.",
      ]
    : [
        ...lines,
        `Swing the side part inwards until it laps ${spread} over the centre part at the bust point. Turn its lower half until the lap is ${spread} all the way to the waist. The ${side} closes a little by itself.`,
        `The side part now sits ${drop} higher. Fold ${drop} out of the centre part, straight across from the centre front to the bust point, so that the waist is level again.`,
        "Mark the pattern’s new bust point in the middle of the lap, and draw the armhole smooth past the hinge.",
      ];
}

const cupMoves = (fuller: boolean, { spread, drop }: Amounts): readonly string[] => [
  "Draw a line from the middle of the dart's mouth up to the bust point, and on from there to the inner end of the strap seam. Draw two more from the bust point to the ends of the under-bust seam, at the centre front and at the side.",
  "Cut the first from the under-bust seam to the seam line at the strap; snip the allowance to it, so that the paper hinges on the seam line. Cut the other two almost to the ends of the under-bust seam.",
  fuller
    ? `Swing the side part outwards until the cut stands ${spread} open at the bust point. The dart below opens by itself.`
    : `Swing the side part inwards until it laps ${spread} at the bust point. The dart below closes a little by itself.`,
  fuller
    ? `Swing the two parts below down about the ends of the under-bust seam until both ends of the dart's mouth lie ${drop} lower. No seam is longer. Stick paper behind.`
    : `Swing the two parts below up about the ends of the under-bust seam until both ends of the dart's mouth lie ${drop} higher. No seam is shorter.`,
  `Mark the pattern’s new bust point in the middle of the ${fuller ? "gap" : "lap"}. Draw the under-bust seam smooth into its two ends and the upper edge smooth past the hinge. The band stays as it is.`,
];

const sideFrontMoves = (fuller: boolean, { spread }: Amounts): readonly string[] => [
  "From the bust mark on the princess seam draw a short line level into the piece, about a third of the way to the side seam. Draw from its end up to the top of the princess seam and down to the foot of it.",
  "Cut the level line, then up and down along the other two almost to the seam line at the top and the foot: two narrow strips now hang by their tips.",
  fuller
    ? `Swing the bust ends of both strips ${spread} towards the centre front, measured level. A slit opens between them; stick paper behind it and behind the wedges.`
    : `Swing the bust ends of both strips ${spread} towards the side seam, measured level, lapping them over the piece and over each other.`,
  `Draw the princess seam anew in one smooth curve over the ${fuller ? "slit" : "lap"}; the bust mark stays at the level of the line you drew. Waist, side seam and armhole are not touched.`,
];

const centreFrontMoves = (fuller: boolean, { drop }: Amounts): readonly string[] => [
  "Draw a line level from the bust mark to the centre front.",
  fuller
    ? `Cut along it and move the lower part straight down by ${drop}; stick paper behind.`
    : `Fold ${drop} out along it, all the way across.`,
  "Draw the princess seam smooth across it. Walk it along the side front's from the top: the new bust mark is where that one's lies, and from there down they must come out equal too.",
];
