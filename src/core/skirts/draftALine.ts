/**
 * A fitted skirt, A-line or straight, on a finished waist, quarter by quarter: of the shell and of a lining alike. Every quarter's
 * hip is wider than its waist by the same, so that the side seams lie where the bodice's do.
 */
import type { SkirtKind } from "../decisions/dress";
import { seamLength } from "../girth/seamLength";
import type { WaistHalf } from "../parts/dressBody";
import { piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import { fail, ok, type Result } from "../result";
import { READS_AS_NOTHING } from "../tolerance";
import { radiansFromDegrees, radians, type Mm, type Radians } from "../units";
import { alongSide, drawQuarter, widthAt, type Quarter, type QuarterAsked } from "./skirtQuarter";
import { quarterPieces, type QuarterCut, type Shaping } from "./quarterPieces";
import type { DartPlaces, SkirtFailure, SkirtLevel, SuppressionFigures } from "./skirtDraft";
import {
  BELOW_HIP_LEAST,
  DART_ABOVE_HIP,
  DART_LEAST,
  DART_LENGTH,
  DART_MOST,
  DART_PLACED,
  DART_SHARES,
  DARTS_MOST,
  FLARE_MOST,
  HIP_BELOW_WAIST,
  LENGTH_RANGE,
  PANEL_FLARE_SHARE,
  PANEL_SHARE,
  PANEL_TAKES_MOST,
  PLEAT_MOST,
  SIDE_TAKES,
} from "./skirtPractice";

export interface ALineAsked {
  readonly kind: SkirtKind;
  /** As sewn, the wearer's left half first; the very same object twice where they are alike. */
  readonly waist: readonly [WaistHalf, WaistHalf];
  readonly hip: Mm;
  readonly hipEase: Mm;
  /** Along the side. */
  readonly hipDepth: Mm;
  /** From the waist to the hem; front and back null: as the waist comes to lie, with the hem level. */
  readonly lengths: { readonly side: Mm; readonly front: Mm | null; readonly back: Mm | null };
  /** How far each side leans out below the hip, or what the hem is to measure all round, if the hip leaves it so. */
  readonly flare: Radians | { readonly hem: Mm };
  readonly shaping: Shaping;
  readonly panels: 2 | 4 | 6;
  readonly seams: { readonly centreFront: boolean; readonly centreBack: boolean };
  readonly dartPlaces?: readonly [DartPlaces, DartPlaces];
}

export interface ALineDraft {
  /** The very same object twice where the halves are alike. */
  readonly halves: readonly [PieceSet, PieceSet];
  readonly lengths: { readonly front: Mm; readonly side: Mm; readonly back: Mm };
  /** All round. */
  readonly hip: Mm;
  readonly hem: Mm;
  readonly flare: Radians;
  /** Of each quarter that is unlike: front and back, and of both halves where they are not alike. */
  readonly suppression: readonly SuppressionFigures[];
  /** How wide it is all round, by how far below the waist along the seam that opens. */
  readonly levels: { readonly centreBack: readonly SkirtLevel[]; readonly side: readonly SkirtLevel[] };
}

interface Half {
  readonly front: Quarter;
  readonly back: Quarter;
}

const SIDES = ["front", "back"] as const;
type Side = (typeof SIDES)[number];

export function draftALine(asked: ALineAsked): Result<ALineDraft, SkirtFailure> {
  const { waist, hip, hipEase, hipDepth, lengths } = asked;
  const whole = waist.reduce((sum, { front, back }) => sum + front + back, 0);
  const suppression = (hip + hipEase - whole) / 4;
  if (suppression < 0) return fail({ code: "skirt/waist-over-hip", waist: whole, hip: hip + hipEase });
  const least = hipDepth + BELOW_HIP_LEAST;
  if (lengths.side < least)
    return fail({ code: "skirt/length-out-of-range", length: lengths.side, least, most: LENGTH_RANGE.most });
  // The waist is lifted or lowered at the centre by no more than leaves room for darts above the hip line.
  const room = Math.max(hipDepth - HIP_BELOW_WAIST, 0);
  const [lowest, highest] = [lengths.side - room, Math.min(lengths.side + room, LENGTH_RANGE.most)];
  for (const length of [lengths.front, lengths.back]) {
    if (length !== null && !(length >= lowest && length <= highest))
      return fail({ code: "skirt/length-out-of-range", length, least: lowest, most: highest });
  }
  const shares = sharesOf(suppression, asked);
  if (shares === null) {
    const rest = suppression - SIDE_TAKES;
    if (asked.panels === 6) return fail({ code: "skirt/darts-too-wide", intake: rest, most: PANEL_TAKES_MOST });
    return fail({ code: "skirt/darts-too-wide", intake: rest / DARTS_MOST, most: mostOf(asked) });
  }
  if (typeof asked.flare === "number") return ok(draftAt(asked, suppression, shares, asked.flare));
  return ok(draftToHem(asked, suppression, shares, asked.flare.hem));
}

interface Shares {
  readonly atSide: Mm;
  readonly darts: number;
}

/** What the side takes, and how many darts or seams the rest; null: more than they can. */
function sharesOf(suppression: Mm, asked: Pick<ALineAsked, "panels" | "shaping">): Shares | null {
  const { panels } = asked;
  const rest = suppression - SIDE_TAKES;
  if (panels === 6) return rest > PANEL_TAKES_MOST ? null : { atSide: Math.min(SIDE_TAKES, suppression), darts: 1 };
  if (rest < DART_LEAST) return { atSide: suppression, darts: 0 };
  const darts = Math.ceil(rest / mostOf(asked));
  return darts > DARTS_MOST ? null : { atSide: SIDE_TAKES, darts };
}

/** A pleat hangs free: it makes no point. */
const mostOf = ({ shaping }: Pick<ALineAsked, "shaping">): Mm => (shaping === "pleats" ? PLEAT_MOST : DART_MOST);

type Halves<T> = readonly [T, T];

/** Made once where the halves are alike. */
function both<T>([left, right]: Halves<WaistHalf>, make: (at: 0 | 1) => T): Halves<T> {
  const one = make(0);
  return [one, left === right ? one : make(1)];
}

function draftAt(asked: ALineAsked, suppression: Mm, shares: Shares, flare: Radians): ALineDraft {
  const draw = (lengths: ALineAsked["lengths"]): Halves<Half> =>
    both(asked.waist, (at) => {
      const of = (side: Side) =>
        drawQuarter(quarterAsked({ ...asked, lengths }, { suppression, shares, flare, at, side }));
      return { front: of("front"), back: of("back") };
    });
  let halves = draw(asked.lengths);
  const [left, right] = halves;
  // Both are sewn to each other or lie on one fold: where each came to lie by itself, the centre is half-way between.
  if (left !== right && (asked.lengths.front === null || asked.lengths.back === null)) {
    const middle = (side: Side) => (left[side].centreLength + right[side].centreLength) / 2;
    halves = draw({ side: asked.lengths.side, front: middle("front"), back: middle("back") });
  }
  const sets = both(asked.waist, (at) =>
    setOf(SIDES.flatMap((side) => quarterPieces(halves[at][side], cutOf(asked, side)))),
  );
  const hem = sets.reduce(
    (sum, set) => sum + piecesOf(set).reduce((all, piece) => all + seamLength(piece, "hem"), 0),
    0,
  );
  const [half] = halves;
  return {
    halves: sets,
    lengths: { front: half.front.centreLength, side: asked.lengths.side, back: half.back.centreLength },
    hip: roundAt(asked, halves, 0),
    hem,
    flare,
    suppression: [...new Set(halves)].flatMap((of) => SIDES.map((side) => figuresOf(asked, of[side], side))),
    levels: { centreBack: levelsOf(asked, halves, "centreBack", hem), side: levelsOf(asked, halves, "side", hem) },
  };
}

const cutOf = ({ shaping, seams }: ALineAsked, side: Side): QuarterCut => ({
  side,
  shaping,
  centreOnFold: !(side === "front" ? seams.centreFront : seams.centreBack),
});

interface Which {
  readonly suppression: Mm;
  readonly shares: Shares;
  readonly flare: Radians;
  readonly at: 0 | 1;
  readonly side: Side;
}

function quarterAsked(asked: ALineAsked, { suppression, shares, flare, at, side }: Which): QuarterAsked {
  const waist = asked.waist[at][side];
  const isPanelled = asked.panels === 6;
  // Where the waist is lower at the centre than at the side, the hip line is nearer to it.
  const lowered = (asked.lengths[side] ?? asked.lengths.side) - asked.lengths.side;
  return {
    waist,
    suppression,
    atSide: shares.atSide,
    places: placesOf(waist, shares.darts, isPanelled ? PANEL_SHARE : null, asked.dartPlaces?.[at][side] ?? []),
    takenBy: isPanelled ? "panel" : "darts",
    dartLength: Math.min(DART_LENGTH[side], asked.hipDepth + Math.min(lowered, 0) - DART_ABOVE_HIP),
    hipDepth: asked.hipDepth,
    sideLength: asked.lengths.side,
    centreLength: asked.lengths[side],
    flare,
    panelFlare: radians(flare * PANEL_FLARE_SHARE),
  };
}

/** Along the finished quarter: the first runs on from the bodice's where that is within it, the others share what is left. */
function placesOf(waist: Mm, count: number, panel: number | null, run: readonly Mm[]): readonly Mm[] {
  const usable = run.filter((place) => place >= DART_PLACED.least * waist && place <= DART_PLACED.most * waist);
  const [first] = usable;
  if (first === undefined)
    return panel === null ? (DART_SHARES[count] ?? []).map((share) => share * waist) : [panel * waist];
  if (usable.length >= count) return usable.slice(0, count);
  return Array.from({ length: count }, (_, i) => first + ((waist - first) * i) / count);
}

function figuresOf(asked: ALineAsked, quarter: Quarter, side: Side): SuppressionFigures {
  const { gaps, atSide } = quarter;
  const { dartLength, hipDepth, sideLength, takenBy } = quarter.asked;
  const isShut = asked.shaping === "shut" && takenBy === "darts";
  const inDarts = gaps.map(({ intake }) => intake);
  const length = takenBy === "panel" ? hipDepth : dartLength;
  const shutInto = inDarts.reduce((sum, intake) => sum + (intake * (sideLength - length)) / length, 0);
  return { quarter: side, atSide, inDarts, dartLength: length, shutInto: isShut ? shutInto : 0 };
}

/** Flare for a hem of so much all round: none where the hip alone is as wide, and at most as much as a skirt may have. */
function draftToHem(asked: ALineAsked, suppression: Mm, shares: Shares, hem: Mm): ALineDraft {
  const most = radiansFromDegrees(FLARE_MOST);
  let [narrow, wide] = [draftAt(asked, suppression, shares, radians(0)), draftAt(asked, suppression, shares, most)];
  if (hem <= narrow.hem) return narrow;
  if (hem >= wide.hem) return wide;
  let found = narrow;
  // Nearly straight in between: by the rule of three from both sides.
  for (let round = 0; round < HEM_ROUNDS; round += 1) {
    const share = (hem - narrow.hem) / (wide.hem - narrow.hem);
    found = draftAt(asked, suppression, shares, radians(narrow.flare + share * (wide.flare - narrow.flare)));
    if (Math.abs(found.hem - hem) < READS_AS_NOTHING) break;
    if (found.hem < hem) narrow = found;
    else wide = found;
  }
  return found;
}

const HEM_ROUNDS = 4;

const roundAt = ({ shaping }: ALineAsked, halves: Halves<Half>, belowHip: Mm): Mm =>
  halves.reduce(
    (sum, half) => SIDES.reduce((all, side) => all + widthAt(half[side], belowHip, shaping === "shut"), sum),
    0,
  );

/** Heights at which the girth is measured, as shares of the way from the waist to the hip, and of that from there to the hem. */
const ABOVE_HIP = [0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1] as const;
const BELOW_HIP = [0.25, 0.5, 0.75] as const;

/** A level lies as far above the hem in every quarter. Of a side, the left half's: there she opens it. */
function levelsOf(
  asked: ALineAsked,
  halves: Halves<Half>,
  opens: "centreBack" | "side",
  hem: Mm,
): readonly SkirtLevel[] {
  const { front, back } = halves[0];
  const below = asked.lengths.side - asked.hipDepth;
  const start = opens === "side" ? front.hip.y - front.side.a.y : back.hip.y;
  const alongOpening = (belowHip: Mm): Mm => (opens === "side" ? alongSide(front, belowHip) : back.hip.y + belowHip);
  const heights = [...ABOVE_HIP.map((share) => (share - 1) * start), ...BELOW_HIP.map((share) => share * below)];
  const whole = asked.waist.reduce((sum, half) => sum + half.front + half.back, 0);
  return [
    { below: 0, girth: whole },
    ...heights.map((height) => ({ below: alongOpening(height), girth: roundAt(asked, halves, height) })),
    { below: opens === "side" ? asked.lengths.side : back.centreLength, girth: hem },
  ];
}
