/**
 * The order of work in words: each job as a sentence that can be followed on the tissue itself, with no screen at hand.
 * Shared by the printed sheet and the command line.
 */
import { isRedraw, type DartRedraw } from "../core/decisions/alteration";
import type { TruingChange } from "../core/truing/changes";
import type { SlipNote, SlipTrace } from "../core/alterations/outcome/trace";
import type { ChecklistItem, ChecklistStep, CutLine, MouthPlace, Plan, Slip } from "../core/plan/plan";
import { phaseOfStep, type WorkPhase } from "../core/plan/workPhases";
import { type LengthUnit } from "../core/decisions/work";
import type { DartRef, LevelName, Piece, PieceName, PointName } from "../core/pattern/piece";
import type { Mm } from "../core/units";
import { shareWords } from "./blend";
import { refusedSentence } from "./doubts";
import { liesAlongBust } from "../core/pattern/dartNames";
import { isBasque } from "../core/pattern/pieceGroups";
import { bustSteps } from "./bustSteps";
import { pointWords } from "./checks";
import { dartSurgerySteps } from "./dartSurgery";
import { fitSteps, halfWords } from "./fits";
import { placeWords } from "./darts";
import { slipAmount } from "./ledger";
import { formatAmount, formatLength } from "./length";
import { capital, centreWords, dartRefWords, dartWords, levelWords, listWords, pieceWords, seamWords } from "./names";
import { acrossWords, alterationTitle, mouthSeamWords } from "./slips";

const PHASE_WORDS: Readonly<Record<WorkPhase, string>> = {
  trace: "Trace",
  bust: "Bust",
  darts: "Darts",
  widthsTraced: "Blend",
  length: "Length",
  widths: "Widths",
  edges: "Shoulders and edges",
  truing: "True and check",
};

export const phaseWords = (phase: WorkPhase): string => PHASE_WORDS[phase];

export interface ChecklistLine {
  readonly phase: WorkPhase;
  readonly text: string;
  /** The single moves of a longer job, in order. */
  readonly moves: readonly string[];
  /** Set out beside the text; null where the job has no amount. */
  readonly amount: string | null;
}

export interface PieceChecklist {
  /** null: on the pieces together, when each is done. */
  readonly piece: PieceName | null;
  readonly lines: readonly ChecklistLine[];
}

interface Context {
  readonly unit: LengthUnit;
  readonly piece: Piece | undefined;
  readonly pieceName: PieceName;
  /** Label of the size traced on this piece, where it is known. */
  readonly traced: string | undefined;
}

/** From here on an amount is said as lengths on the tape are. */
const LONG: Mm = 100;
const small = (value: Mm, { unit }: Context): string =>
  unit === "in" || Math.abs(value) < LONG ? formatAmount(Math.abs(value), unit) : formatLength(Math.abs(value), unit);

/** Two lengths that are read together, in one unit: never millimetres beside centimetres. */
const pair = (a: Mm, b: Mm, context: Context): readonly [string, string] =>
  context.unit === "cm" && Math.max(Math.abs(a), Math.abs(b)) >= LONG
    ? [formatLength(Math.abs(a), context.unit), formatLength(Math.abs(b), context.unit)]
    : [small(a, context), small(b, context)];

/** False for an amount too small to be marked: it would read as nothing. */
const drawn = (value: Mm, { unit }: Context): boolean => formatAmount(Math.abs(value), unit) !== formatAmount(0, unit);

interface Said {
  readonly text: string;
  readonly moves?: readonly string[];
  readonly amount?: string | null;
}

function trace(size: string, cup: string | null, context: Context): Said {
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

function bust(spread: Mm, whole: Mm, drop: Mm, context: Context): Said {
  const { heading, moves } = bustSteps(context.pieceName, spread, {
    spread: small(spread, context),
    drop: small(drop, context),
  });
  return {
    text: `${heading} (${small(whole, context)} round the whole body).`,
    moves,
    amount: small(context.pieceName === "centreFront" ? drop : spread, context),
  };
}

/** Whether the new side seam lies on the line of a size. */
function isOn({ between, share, offset }: CutLine, size: string, context: Context): boolean {
  const where = shareWords(between, share);
  return where === `on the ${size} line` || (between[0] === size && !drawn(offset, context));
}

function blend(line: CutLine, from: LevelName, context: Context): Said {
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

function dart({ dart: ref, figures, mouth }: Extract<ChecklistStep, { kind: "dart" }>, context: Context): Said {
  const [inner, outer] = pair(figures.legInner, figures.legOuter, context);
  const legs =
    inner === outer
      ? `both legs ${inner} long`
      : liesAlongBust(ref.dart)
        ? `upper leg ${inner}, lower leg ${outer} long`
        : `inner leg ${inner}, outer leg ${outer} long`;
  const stop = figures.apexToBustPoint;
  const end =
    stop === null
      ? ""
      : stop < 0
        ? `; it ends ${small(stop, context)} past the bust point, which is a fault: see the first page`
        : `; it ends ${small(stop, context)} short of the bust point`;
  return {
    text: `Draw the ${dartWords(ref.dart)}: mouth ${small(figures.intake, context)} wide, ${legs}${end}.`,
    moves: dartPosition(ref, mouth, context),
    amount: small(figures.intake, context),
  };
}

function trueDart(ref: DartRef, amount: Mm, context: Context): Said {
  const fold = liesAlongBust(ref.dart) ? "its bulk down" : `its bulk towards the ${centreWords(ref.piece)}`;
  const legs = drawn(amount, context)
    ? ` First bring the legs to one length: the shorter ${small(amount, context)} longer, the longer ${small(amount, context)} shorter.`
    : "";
  return {
    text: `Fold the ${dartWords(ref.dart)} closed, ${fold}, and cut the ${mouthSeamWords(ref)} across it through all layers.${legs}`,
    amount: drawn(amount, context) ? small(amount, context) : null,
  };
}

function walk(step: Extract<ChecklistStep, { kind: "walk" }>, context: Context): Said {
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

type Given = SlipTrace["given"][number];

/** What a dart set free and where it goes, or what it takes and where that is let out. */
function givenMove(given: Given, seam: string, context: Context): string {
  const amount = small(given.amount, context);
  const takes = given.amount > 0;
  const bodice = !isBasque(given.piece);
  switch (given.place) {
    case "centreSeam":
      return `${takes ? "Take" : "Add"} ${amount} ${takes ? "off" : "on"} at the ${centreWords(given.piece)} on the ${seam}, running out to nothing at the ${bodice ? "bust" : "hip"} line.`;
    case "sideSeam":
      return `${takes ? "Take" : "Add"} ${amount} ${takes ? "off" : "on"} at the side seam on the ${seam}, running out smoothly.`;
    case "otherDart":
      return `${takes ? "Widen" : "Narrow"} the ${dartRefWords({ piece: given.piece, dart: "waistDart" })} by ${amount}, half at each end of its mouth.`;
    case "underarm":
      return `${takes ? "Lower" : "Raise"} the underarm end of the side seam by ${amount}.`;
    case "waistEnd":
      return `${takes ? "Raise" : "Lower"} the waist end of the side seam by ${amount}.`;
    case "armholeEnd":
    case "neckEnd":
    case "centreEnd":
      return `${takes ? "Take" : "Add"} ${amount} ${takes ? "off" : "on"} along the ${seam}, at the ${placeWords(given.place, given.piece)}; the seam that it meets there keeps its length.`;
  }
}

function noteMove(note: SlipNote, context: Context): string | null {
  switch (note.code) {
    case "centreNowSeam":
      return `The ${centreWords(context.pieceName)} is no longer straight: cut it as a seam with an allowance, not on the fold.`;
    case "bustLoses":
      return drawn(note.amount, context)
        ? `This takes ${small(note.amount, context)} from the garment round the bust as well.`
        : null;
    case "legsTrued":
      return drawn(note.amount, context)
        ? `True the legs: each moves ${small(note.amount, context)} along itself.`
        : null;
    case "armholeSmoothed":
      return "Draw the armhole smooth again.";
    case "centreLengthened":
      return drawn(note.amount, context)
        ? `The centre part is ${small(note.amount, context)} ${note.amount > 0 ? "longer" : "shorter"} after it.`
        : null;
  }
}

function heldMove(alteration: DartRedraw): string[] {
  if (alteration.kind !== "dartEnd") return [];
  const shorter = alteration.shorten > 0;
  if (alteration.hold === "mouth") {
    const fuller =
      alteration.shorten === 0
        ? ""
        : shorter
          ? " The dart stands wider open, so it makes more room."
          : " The dart closes up, so it makes less room.";
    return [`Leave the mouth as it is and draw both legs anew to the end.${fuller}`];
  }
  return [
    `Keep the angle between the legs, so that the room stays the same: the mouth becomes ${shorter ? "narrower" : "wider"}.`,
  ];
}

function mouthMoves(alteration: DartRedraw, context: Context): string[] {
  if (alteration.kind !== "dartMouth") return [];
  const [first, second] = liesAlongBust(alteration.dart.dart)
    ? (["upper", "lower"] as const)
    : (["inner", "outer"] as const);
  const move = (end: string, by: Mm): string[] =>
    drawn(by, context)
      ? [
          `Move the ${end} end of the mouth ${small(by, context)} ${by > 0 ? "away from" : "towards"} the dart's middle.`,
        ]
      : [];
  return [...move(first, alteration.inner), ...move(second, alteration.outer)];
}

function redrawAmount(alteration: DartRedraw, context: Context): string {
  switch (alteration.kind) {
    case "dartEnd": {
      const parts: string[] = [];
      if (drawn(alteration.shorten, context)) parts.push(small(alteration.shorten, context));
      if (drawn(alteration.across, context)) parts.push(`${small(alteration.across, context)} across`);
      return parts.length === 0 ? small(0, context) : parts.join(" + ");
    }
    case "dartMouth":
      return small(alteration.inner + alteration.outer, context);
    case "dartPlace":
      return small(alteration.by, context);
  }
}

function redrawSlip({ given, notes }: SlipTrace, alteration: DartRedraw, context: Context): Said {
  const title = alterationTitle(alteration, context.unit);
  const towards =
    alteration.kind === "dartEnd" && drawn(alteration.shorten, context)
      ? [
          `Along its middle line, mark the new end ${small(alteration.shorten, context)} ${alteration.shorten > 0 ? "nearer to" : "further from"} the ${mouthSeamWords(alteration.dart)}${drawn(alteration.across, context) ? `, and from there ${small(alteration.across, context)} ${acrossWords(alteration.dart, alteration.across)}` : ""}.`,
        ]
      : [];
  return {
    text: `${title}.`,
    moves: [
      ...towards,
      ...heldMove(alteration),
      ...mouthMoves(alteration, context),
      ...given
        .filter((one) => drawn(one.amount, context))
        .map((one) => givenMove(one, mouthSeamWords(alteration.dart), context)),
      ...notes.flatMap((note) => noteMove(note, context) ?? []),
    ],
    amount: redrawAmount(alteration, context),
  };
}

/** What truing moves after all else. */
function trued({ seam, what, point, amount }: TruingChange, context: Context): Said {
  const line = seamWords(seam, context.pieceName);
  const at = point === null ? "" : ` at the ${pointWords(point)}`;
  switch (what) {
    case "seamWalked":
      return {
        text: `Walk the ${line} against its partner: bring the two to one length${at}, half of what they differ by on each (here ${small(amount, context)}).`,
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

function slipSaid(slip: Slip, context: Context): Said {
  const { what, outcome } = slip;
  if (!outcome.ok) return { text: refusedSentence(slip, context.unit) ?? "" };
  if (what.kind === "alteration") {
    const { alteration } = what;
    if (isRedraw(alteration)) return redrawSlip(outcome.value, alteration, context);
    const moves =
      alteration.kind === "fit"
        ? fitSteps(alteration, context.pieceName, outcome.value, context.unit)
        : dartSurgerySteps(alteration, outcome.value, context.unit);
    return { text: `${alterationTitle(alteration, context.unit)}.`, moves, amount: slipAmount(slip, context.unit) };
  }
  return what.kind === "bust"
    ? bust(what.spread, what.amount, what.drop, context)
    : blend(what.cutLine, what.level === "hip" ? "waist" : "bust", context);
}

function said(step: ChecklistStep, context: Context): Said {
  switch (step.kind) {
    case "trace":
      return trace(step.size, step.cup, context);
    case "bust":
      return bust(step.spread, step.whole, step.drop, context);
    case "blend":
      return blend(step.cutLine, step.from, context);
    case "slip":
      return slipSaid(step.slip, context);
    case "dart":
      return dart(step, context);
    case "trueDart":
      return trueDart(step.dart, step.amount, context);
    case "walk":
      return walk(step, context);
    case "trued":
      return trued(step.change, context);
  }
}

/** One job in words. `pieces` are the plan's final pieces: positions are measured on them; `traced`: the size traced, if told. */
export function checklistLine(
  item: ChecklistItem,
  pieces: readonly Piece[],
  unit: LengthUnit,
  traced?: string,
): ChecklistLine {
  const piece = pieces.find((one) => one.name === item.piece);
  const { text, moves = [], amount = null } = said(item.step, { unit, piece, pieceName: item.piece, traced });
  const half = item.half === undefined || saysItsHalf(item.step) ? "" : `On the ${halfWords(item.half)}: `;
  return { phase: phaseOfStep(item.step), text: `${half}${text}`, moves, amount };
}

/** A fit for one half alone does so in its title. */
const saysItsHalf = (step: ChecklistStep): boolean =>
  step.kind === "slip" &&
  step.slip.what.kind === "alteration" &&
  step.slip.what.alteration.kind === "fit" &&
  step.slip.what.alteration.half !== undefined;

/** The same as running text. */
export const checklistSentence = (line: ChecklistLine): string => [line.text, ...line.moves].join(" ");

/** Every job, gathered by piece; last the seams, walked when all pieces are done. */
export function checklistByPiece(plan: Pick<Plan, "checklist" | "left">, unit: LengthUnit): readonly PieceChecklist[] {
  const gather = (piece: PieceName | null, items: readonly ChecklistItem[]): PieceChecklist => ({
    piece,
    lines: saidOnce(items, plan.left.pieces, unit),
  });
  const walks = plan.checklist.filter((item) => item.step.kind === "walk");
  const jobs = plan.checklist.filter((item) => item.step.kind !== "walk");
  const names = [...new Set(jobs.map((item) => item.piece))];
  return [
    ...names.map((piece) =>
      gather(
        piece,
        jobs.filter((item) => item.piece === piece),
      ),
    ),
    ...(walks.length === 0 ? [] : [gather(null, walks)]),
  ];
}

/** A job on each half that comes out word for word alike, as its numbers differ by less than is said, stands once for both. */
function saidOnce(
  items: readonly ChecklistItem[],
  pieces: readonly Piece[],
  unit: LengthUnit,
): readonly ChecklistLine[] {
  const traced = items
    .map(({ step }) => (step.kind === "trace" ? step.size : undefined))
    .find((size) => size !== undefined);
  const onBoth = items.map(({ piece, step, amount }) => checklistLine({ piece, step, amount }, pieces, unit, traced));
  const keys = onBoth.map((line) => JSON.stringify(line));
  return items.flatMap((item, index): readonly ChecklistLine[] => {
    const line = onBoth[index];
    if (line === undefined) return [];
    if (item.half === undefined) return [line];
    const other = items.findIndex(
      ({ half }, at) => half !== undefined && half !== item.half && keys[at] === keys[index],
    );
    if (other === -1) return [checklistLine(item, pieces, unit, traced)];
    return other < index ? [] : [line];
  });
}

export const groupTitle = ({ piece }: PieceChecklist): string =>
  piece === null ? "All pieces together" : capital(pieceWords(piece));
