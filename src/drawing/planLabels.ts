/** What is written beside the pieces: sizes of the printed lines, how the cut line runs, what the darts take. */
import type { Half } from "../core/decisions/alteration";
import { pointOf, type DartRef, type Nest, type PieceName, type PointName } from "../core/pattern/piece";
import { isSamePiece } from "../core/pattern/pieceSet";
import { liesAlongBust } from "../core/pattern/dartNames";
import { isBasque } from "../core/pattern/pieceGroups";
import type { CutLine, PlanHalf } from "../core/plan/plan";
import type { LengthUnit } from "../core/decisions/work";
import { invariant } from "../core/result";
import { shareWords } from "../words/blend";
import { blendGroup } from "../words/ledger";
import { formatAmount } from "../words/terms/length";
import { capital, namedPieceWords } from "../words/terms/names";
import type { Label } from "./labels";
import { onTable, placeKey, type Place } from "./layout";
import { pieceMarks } from "./pieceMarks";
import type { Mm } from "../core/units";
import * as say from "../words/planLabels";

/** Which corner of each piece the size labels stand at. */
const SIZE_CORNER: Readonly<Record<PieceName, PointName>> = {
  front: "sideWaist",
  centreFront: "centreWaist",
  sideFront: "sideWaist",
  cup: "sideUnderBust",
  frontBand: "sideWaist",
  back: "sideWaist",
  backBand: "sideWaist",
  frontBasque: "sideHem",
  backBasque: "sideHem",
  strap: "strapFrontOuter",
  skirtFront: "sideHem",
  skirtSideFront: "sideHem",
  skirtSideBack: "sideHem",
  skirtBack: "sideHem",
  frontFacing: "facing1",
  backFacing: "facing1",
  frontArmholeFacing: "facing1",
  backArmholeFacing: "facing1",
  other1: "corner00",
  other2: "corner00",
  other3: "corner00",
  other4: "corner00",
  other5: "corner00",
  other6: "corner00",
};

/** Pixels from a line or a mark to the words at it. */
const BELOW_LINE = 15;
const ABOVE_MARK = -14;
const BESIDE: Mm = 9;

const placeOf = (places: readonly Place[], piece: PieceName): Place | undefined =>
  places.find((p) => p.piece === piece);

/**
 * The printed lines that matter on a piece: those that its own line runs between, lowest level first, then the base size's.
 */
export function sizesInUse({ cutLines, sizing }: PlanHalf, piece: PieceName): readonly string[] {
  const lines = cutLines.filter((line) => line.piece === piece && line.level !== "bust").toReversed();
  return [...new Set([...lines.flatMap((line) => line.between), sizing.baseSize.label])];
}

/** So many letters of a size's name stand on the table: sizes lie closer than the longest names are wide. */
const NAME_ON_TABLE = 12;

/** Letters of a long name's beginning that stand there, in turn: what tells sizes apart stands at the end as a rule. */
const BEGINNINGS = [5, 11, 8, 0];

function shortened(name: string, beginning: number): string {
  const letters = Array.from(name);
  if (letters.length <= NAME_ON_TABLE) return name;
  const end = NAME_ON_TABLE - 1 - beginning;
  const tail = letters.slice(letters.length - end).join("");
  return `${letters.slice(0, beginning).join("").trimEnd()}…${tail.trimStart()}`;
}

/**
 * The names of sizes as they stand on the table: of long ones a part that tells them apart. Whole where none does, and
 * everywhere else.
 */
function namesOnTable(names: readonly string[]): (name: string) => string {
  const beginning = BEGINNINGS.find(
    (letters) => new Set(names.map((name) => shortened(name, letters))).size === new Set(names).size,
  );
  return (name) => (beginning === undefined ? name : shortened(name, beginning));
}

/** The label of each printed line, the ones in use on a piece having the first right to their place. */
export function sizeLabels(
  nest: Nest,
  places: readonly Place[],
  inUse: (piece: PieceName) => readonly string[],
): readonly Label[] {
  const nameOnTable = namesOnTable(nest.labels);
  return places.flatMap((place) => {
    const { piece } = place;
    const first = inUse(piece)
      .map((label) => nest.labels.indexOf(label))
      .filter((index) => index >= 0);
    const order = [...first, ...[...nest.labels.keys()].filter((index) => !first.includes(index))];
    return order.flatMap((index): Label[] => {
      const found = nest.sizes[index]?.find((p) => p.name === piece);
      if (found === undefined) return [];
      // The back of a style with a band ends under the bust.
      const at = pointOf(found, found.points[SIZE_CORNER[piece]] === undefined ? "sideUnderBust" : SIZE_CORNER[piece]);
      const label = invariant(nest.labels[index], "label");
      return [
        {
          id: `size-${placeKey(place)}-${label}`,
          ...onTable(place, at),
          below: BELOW_LINE,
          // Printed sizes stand one lower in turn where they are close; only those in use are worth the second line.
          moves: first.includes(index) ? 1 : 0,
          lines: [nameOnTable(label)],
          size: label,
          anchor: "middle",
          kind: "size",
          leader: null,
        },
      ];
    });
  });
}

/** On the lower line (0), on the upper one (1), or null: in between or past them. */
function lineOf(between: readonly [string, string], share: number): 0 | 1 | null {
  const where = shareWords(between, share);
  return where === say.onTheLine(between[0]) ? 0 : where === say.onTheLine(between[1]) ? 1 : null;
}

/** "from 12 to 14", and how far outside the lower line that is. */
export function cutLineWords(
  {
    between,
    share,
    offset,
  }: { readonly between: readonly [string, string]; readonly share: number; readonly offset: Mm },
  unit: LengthUnit,
): readonly [string, string] {
  const [lower, upper] = between;
  const on = lineOf(between, share);
  if (on !== null) return ["", `on ${on === 0 ? lower : upper}`];
  const run = `from ${lower} to ${upper}`;
  const side = offset < 0 ? "inside" : "outside";
  if (formatAmount(Math.abs(offset), unit) === formatAmount(0, unit)) return [run, `on ${lower}`];
  return [run, `${formatAmount(Math.abs(offset), unit)} ${side} ${lower}`];
}

/** What moved the line afterwards, by the bust adjustment and by the wearer's alterations: "then 13 mm in". */
function movedWords(
  { alterations, bustPiece }: PlanHalf,
  { piece, level, alterationMove }: CutLine,
  unit: LengthUnit,
): readonly string[] {
  const then = (move: Mm): readonly string[] => {
    const amount = formatAmount(Math.abs(move), unit);
    return amount === formatAmount(0, unit) ? [] : [`then ${amount} ${move < 0 ? "in" : "out"}`];
  };
  const bust = alterations.find(({ source, outcome }) => source === "bust" && outcome.ok)?.what;
  const spread =
    bust?.kind === "bust" && piece === "front" && bustPiece === "front" && level === "waist" ? then(bust.spread) : [];
  return [...spread, ...(spread.length > 0 ? [say.forTheBust] : []), ...then(alterationMove)];
}

/**
 * The names of the pieces, how they are cut or for which half, and the bust point. They come first: nothing may take their place.
 *
 * @param halves where they differ: which half it is, and the other one
 */
export function pieceLabels(
  plan: PlanHalf,
  places: readonly Place[],
  halves: { readonly half: Half; readonly other: PlanHalf } | null = null,
): readonly Label[] {
  return places.flatMap((place): Label[] => {
    const { piece } = place;
    const drawn = plan.pieces.find(({ name }) => name === piece);
    if (drawn === undefined) return [];
    const { title, centreOnFold } = pieceMarks(drawn);
    const like = halves?.other.pieces.find(({ name }) => name === piece);
    const isSaid = place.half !== undefined || like === undefined || !isSamePiece(drawn, like);
    const half = halves !== null && isSaid ? halves.half : null;
    const name = capital(namedPieceWords(piece, plan.nest.otherNames));
    const labels: Label[] = [
      {
        id: `title-${placeKey(place)}`,
        ...onTable(place, title),
        lines: [name, half === null ? (centreOnFold ? say.cutOnTheFold : say.cutTwo) : `your ${half}`],
        far: [...name.split(" "), ...(half === null ? [] : [half])],
        anchor: place.mirrored === true ? "end" : "start",
        kind: "title",
        leader: null,
      },
    ];
    if (piece !== plan.bustPiece) return labels;
    const { own, printed, probable } = plan.bustPoint;
    const at = own ?? printed;
    labels.push({
      id: place.half === undefined ? "bust-point" : `bust-point-${place.half}`,
      ...onTable(place, at),
      below: ABOVE_MARK,
      moves: 0,
      lines: [own === null ? say.bustPoint : say.yourBustPoint],
      far: [],
      anchor: "middle",
      kind: "bustPoint",
      leader: null,
    });
    if (probable !== null) {
      labels.push({
        id: place.half === undefined ? "bust-probable" : `bust-probable-${place.half}`,
        ...onTable(place, { x: probable.centre.x, y: probable.centre.y + probable.down }),
        below: BELOW_LINE,
        moves: 0,
        lines: [say.yoursProbablyInHere],
        far: [],
        anchor: "middle",
        kind: "guess",
        leader: null,
      });
    }
    return labels;
  });
}

/** Labels of the cut lines and the darts. The waist is told on the bodice, the hip on the basque. */
export function planLabels(
  plan: PlanHalf,
  places: readonly Place[],
  unit: LengthUnit,
  chosen: DartRef | null = null,
): readonly Label[] {
  const labels: Label[] = [];
  const nameOnTable = namesOnTable(plan.nest.labels);
  for (const line of plan.cutLines) {
    const place = placeOf(places, line.piece);
    const basque = isBasque(line.piece);
    if (place === undefined || (line.level === "waist") === basque) continue;
    const between = [nameOnTable(line.between[0]), nameOnTable(line.between[1])] as const;
    const [run, amount] = cutLineWords({ ...line, between }, unit);
    const share = `${Math.round(line.share * 100)} %`;
    const over = place.mirrored === true;
    labels.push({
      id: `cut-${placeKey(place)}-${line.level}`,
      x: over ? place.box.x - BESIDE : place.box.x + place.box.width + BESIDE,
      y: line.at.y + place.dy - BESIDE * 2,
      lines: [
        ...(run === "" ? [`${line.level}: ${amount}`] : [`${line.level}: ${share}`, run, amount]),
        ...movedWords(plan, line, unit),
      ],
      far: [run === "" ? amount : share],
      anchor: over ? "end" : "start",
      kind: "cut",
      leader: onTable(place, { x: line.at.x + line.alterationMove, y: line.at.y }),
      alterations: blendGroup(line.level),
    });
  }
  for (const { ref, drawn } of plan.darts) {
    const place = placeOf(places, ref.piece);
    if (place === undefined) continue;
    const side = liesAlongBust(ref.dart);
    labels.push({
      id: `dart-${placeKey(place)}-${ref.dart}`,
      ...onTable(place, {
        x: side ? drawn.apex.x * 0.35 + drawn.outer.x * 0.65 : drawn.apex.x,
        y: side ? (drawn.inner.y + drawn.outer.y) / 2 + 2 : drawn.apex.y * 0.3 + drawn.outer.y * 0.7,
      }),
      lines: [formatAmount(drawn.intake, unit)],
      // A dart smaller than the writing keeps its amount only while she has it in hand.
      far: chosen?.piece === ref.piece && chosen.dart === ref.dart ? [formatAmount(drawn.intake, unit)] : [],
      anchor: "middle",
      kind: "dart",
      leader: null,
    });
  }
  return labels;
}
