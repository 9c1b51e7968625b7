/** The rest of the dress as data for other programs. Lengths in millimetres, angles in degrees; the README names every key. */
import { cutRingOf } from "../core/cloth/cutRing";
import type { ClothLay, LayFailure } from "../core/cloth/cutting";
import { cutListOf, layCloth } from "../core/cloth/layCloth";
import { widthOf } from "../core/cloth/usualCloth";
import { HALVES } from "../core/decisions/alteration";
import type { Cloth, ClothName } from "../core/decisions/dress";
import type { Work } from "../core/decisions/work";
import { clothAskedOf, withCloth } from "../core/dress/dressCloth";
import { dressOf } from "../core/dress/dressOf";
import type { DressCheck, DressPlan, UnderAdvice } from "../core/dress/dressPlan";
import type { NecklineFailure } from "../core/neckline/necklineFailure";
import type { RedrawnNeckline } from "../core/neckline/redrawNeckline";
import type { BothStraps, EdgesDraft, StrapFigures } from "../core/edges/edgesDraft";
import type { LiningDraft } from "../core/lining/liningDraft";
import type { ClosureReading, WayThrough, ZipLength } from "../core/opening/gettingIn";
import type { WaistHalf } from "../core/parts/dressBody";
import type { Part } from "../core/parts/part";
import type { Plan } from "../core/plan/plan";
import { fail, type Result } from "../core/result";
import type { Notion, SewingStep } from "../core/sewing/sewingStep";
import type { SkirtDraft } from "../core/skirts/skirtDraft";
import { degreesFrom, type Mm } from "../core/units";
import { notionWords } from "../words/notions";
import { sewingStepWords } from "../words/sewing";
import { outlineReport, type ReportOutline } from "./pieceReport";
import { rounded } from "./rounded";

type Place = readonly [number, number];

const mm = (value: number): number => rounded(value, 2);
const orNull = (value: number | null): number | null => (value === null ? null : mm(value));

const lengthsOf = ({ front, side, back }: SkirtDraft["lengths"]) => ({
  front_mm: mm(front),
  side_mm: mm(side),
  back_mm: mm(back),
});

function skirtReport(skirt: SkirtDraft | null) {
  if (skirt === null) return null;
  const { kind, lengths, hem, flare, vent, tiers = [], circle, suppression = [], levels, notes } = skirt;
  return {
    kind,
    lengths: lengthsOf(lengths),
    hem_mm: mm(hem),
    flare_deg: flare === undefined ? null : rounded(degreesFrom(flare), 3),
    vent_mm: orNull(vent ?? null),
    tiers: tiers.map(({ width, gatheredTo, depth, panels, panelWidth }) => ({
      width_mm: mm(width),
      gathered_to_mm: mm(gatheredTo),
      depth_mm: mm(depth),
      panels,
      panel_width_mm: mm(panelWidth),
    })),
    circle:
      circle === undefined
        ? null
        : {
            share: rounded(circle.share, 4),
            waist_radius_mm: mm(circle.waistRadius),
            hem_radius_mm: mm(circle.hemRadius),
            seams: circle.seams ?? [],
          },
    suppression: suppression.map(({ quarter, atSide, inDarts, dartLength, shutInto }) => ({
      quarter,
      at_side_mm: mm(atSide),
      darts_mm: inDarts.map(mm),
      dart_length_mm: mm(dartLength),
      shut_into_mm: mm(shutInto),
    })),
    levels: levels.map(({ below, girth }) => ({ below_mm: mm(below), girth_mm: mm(girth) })),
    notes: notes.map(({ code }) => code),
  };
}

function liningReport(lining: LiningDraft | null) {
  if (lining === null) return null;
  const { skirtFigures, notes } = lining;
  return {
    skirt:
      skirtFigures === null
        ? null
        : {
            waist_mm: mm(skirtFigures.waist),
            hip_mm: mm(skirtFigures.hip),
            hip_at_least_mm: mm(skirtFigures.hipLeast),
            hip_depth_mm: mm(skirtFigures.hipDepth),
            hem_mm: mm(skirtFigures.hem),
            lengths: lengthsOf(skirtFigures.lengths),
            free_below_mm: orNull(skirtFigures.free?.below ?? null),
            free_beside_mm: orNull(skirtFigures.free?.beside ?? null),
          },
    notes: notes.map(({ code }) => code),
  };
}

function necklineReport(neckline: Result<RedrawnNeckline, NecklineFailure> | null) {
  if (neckline === null) return null;
  const made = neckline.ok ? neckline.value : null;
  return {
    refused: neckline.ok ? null : neckline.failure.code,
    edge_before_mm: orNull(made?.before ?? null),
    edge_mm: orNull(made?.after ?? null),
    gape_front_mm: orNull(made?.front.gape ?? null),
    gape_back_mm: orNull(made?.back.gape ?? null),
    pinched_front_mm: orNull(made?.front.pinched ?? null),
    pinched_back_mm: orNull(made?.back.pinched ?? null),
  };
}

function edgesReport({ edges, strap, bias, facing }: EdgesDraft) {
  return {
    finishes: edges.map(({ edge, at, half, length, finish, strip }) => ({
      edge,
      at: at ?? null,
      half: half ?? null,
      length_mm: mm(length),
      finish,
      strip_length_mm: orNull(strip?.length ?? null),
      strip_width_mm: orNull(strip?.width ?? null),
      strips: strip?.count ?? 0,
    })),
    facing_depth_mm: orNull(facing?.depth ?? null),
    bias: bias.map(({ width, length }) => ({ width_mm: mm(width), length_mm: mm(length) })),
    strap: strap === null ? null : strapReport(strap.left),
    straps: strapsReport(strap),
  };
}

/** One of both where they are alike. */
function strapsReport(straps: BothStraps | null) {
  if (straps === null) return [];
  const halves = straps.left === straps.right ? (["left"] as const) : HALVES;
  return halves.map((half) => ({ half: halves.length === 1 ? null : half, ...strapReport(straps[half]) }));
}

const strapReport = ({ kind, width, length, way, coversBra, elastic, fromCentreBack }: StrapFigures) => ({
  kind,
  width_mm: mm(width),
  length_mm: mm(length),
  way_mm: mm(way),
  covers_bra: coversBra,
  elastic_mm: orNull(elastic?.length ?? null),
  from_centre_back_mm: mm(fromCentreBack),
});

/** As it is sold: in its own unit. */
const zipReport = (zip: ZipLength | null): number | null => (zip === null ? null : mm(zip.length));

function closureReport(closure: ClosureReading | null) {
  if (closure === null) return null;
  const way = ({ way: name, needed, tightest, passes, longer }: WayThrough) => ({
    way_in: name,
    passes,
    needed_mm: mm(needed),
    tightest: {
      of: tightest.of,
      at: tightest.at,
      below_waist_mm: mm(tightest.below),
      girth_mm: mm(tightest.girth),
      lets_through_mm: mm(tightest.lets),
    },
    longer_mm: orNull(longer),
  });
  const { ways, passes, opening, comesApart, leastOpening, zip, endsAt, levelMarks } = closure;
  return {
    passes,
    ways: ways.map(way),
    opening_mm: mm(opening),
    least_opening_mm: orNull(leastOpening),
    comes_apart: comesApart,
    zip_cm_mm: zipReport(zip.cm),
    zip_in_mm: zipReport(zip.in),
    ends_for_zip_cm_mm: orNull(endsAt.cm),
    ends_for_zip_in_mm: orNull(endsAt.in),
    level_marks: levelMarks.map(({ at, from }) => ({ at, from_top_mm: mm(from) })),
  };
}

const underReport = ({ recommended, chosen, isThere, finishes }: UnderAdvice) => ({
  recommended,
  chosen,
  cut: isThere,
  showing: finishes.map(({ of, by }) => ({ what: of, finish: by })),
});

const ringReport = (ring: readonly { readonly x: Mm; readonly y: Mm }[]): readonly Place[] =>
  ring.map(({ x, y }) => [mm(x), mm(y)] as const);

function partReport(part: Part, work: Work) {
  const { key, kind, group, cloth, cut, half, grain } = part;
  const { open } = cutRingOf(part, work.allowances ?? {});
  const outline: ReportOutline | null = kind === "piece" ? outlineReport(part.piece) : null;
  return {
    key,
    kind,
    group,
    cloth,
    count: cut.count,
    on_fold: cut.onFold,
    half,
    grain,
    /** As it is cut, opened where it lies on the fold. */
    cut_outline_mm: ringReport(open),
    stitch: outline,
    other_half_stitch: kind === "piece" && part.otherHalf !== undefined ? outlineReport(part.otherHalf) : null,
    width_mm: kind === "rectangle" ? mm(part.width) : null,
    depth_mm: kind === "rectangle" ? mm(part.depth) : null,
    inner_radius_mm: kind === "sector" ? mm(part.inner) : null,
    outer_radius_mm: kind === "sector" ? mm(part.outer) : null,
    angle_deg: kind === "sector" ? rounded(degreesFrom(part.angle), 3) : null,
  };
}

const cutList = ({ parts }: DressPlan, work: Work) =>
  cutListOf(parts, work.allowances ?? {}, work.pattern.closure, work.dress?.cloths, work.unit).map((line) => ({
    key: line.key,
    cloth: line.cloth,
    count: line.count,
    on_fold: line.onFold,
    width_mm: mm(line.width),
    length_mm: mm(line.length),
    grain: line.grain,
    in_pairs: line.inPairs,
    one_way: line.oneWay,
    torn: line.isRectangle,
    lengths: line.lengths,
  }));

/** On a width of its own the dress is drafted anew, as the page does: widths of cloth make its tiers and rings. */
function clothReport(name: ClothName, cloth: Cloth, work: Work) {
  const { unit } = work;
  const asked = clothAskedOf({ ...work, dress: withCloth(work.dress ?? {}, name, cloth) }, name);
  const laid: Result<ClothLay, LayFailure> = asked === null ? fail({ code: "cloth/nothing-to-lay" }) : layCloth(asked);
  const lay: ClothLay | null = laid.ok ? laid.value : null;
  return {
    cloth: name,
    width_mm: mm(widthOf(cloth, unit)),
    on_fold: cloth.fold === true,
    one_way: cloth.oneWay === true,
    refused: laid.ok ? null : laid.failure.code,
    to_buy_mm: orNull(lay?.toBuy ?? null),
    laid_mm: orNull(lay?.length ?? null),
    least_by_area_mm: orNull(lay?.leastByArea ?? null),
    least_by_longest_mm: orNull(lay?.leastByLongest ?? null),
    lay: (lay?.parts ?? []).map((one) => ({
      key: one.key,
      copy: one.copy,
      from_selvage_mm: mm(one.x),
      from_start_mm: mm(one.y),
      width_mm: mm(one.width),
      length_mm: mm(one.length),
      turned_deg: one.turn,
      turned_over: one.isTurnedOver,
      at_fold: one.atFold,
      layers: one.layers,
    })),
  };
}

const notionText = ({ what, amount }: ReturnType<typeof notionWords>): string => `${what}: ${amount}`;

const notionReport = (notion: Notion, { unit }: Work) => ({
  what: notion.what,
  count: notion.count,
  length_mm: orNull(notion.length),
  width_mm: orNull(notion.width),
  text: notionText(notionWords(notion, unit)),
});

function stepReport(step: SewingStep, at: number, { unit }: Work) {
  return {
    step: at + 1,
    name: step.name,
    tier: step.at ?? null,
    parts: step.parts,
    seam_mm: orNull(step.length),
    allowance_mm: orNull(step.allowance),
    press: step.press,
    finish: step.finish,
    cautions: step.cautions,
    after: step.after.map((before) => before + 1),
    text: sewingStepWords(step, unit).text,
  };
}

const checkReport = ({ name, ok, measured, expected, tolerance }: DressCheck) => ({
  name,
  ok,
  measured_mm: mm(measured),
  expected_mm: mm(expected),
  tolerance_mm: mm(tolerance),
});

const halfWaist = ({ front, back }: WaistHalf) => ({ front_mm: mm(front), back_mm: mm(back) });

const refusal = (one: Result<unknown, { readonly code: string }> | null): string | null =>
  one === null || one.ok ? null : one.failure.code;

export type ReportDress = NonNullable<ReturnType<typeof dressReport>>;

/**
 * @param widths of cloth, mm, that each cloth is laid on besides its own
 * @returns null where nothing is decided of a dress
 */
export function dressReport(work: Work, plan: Plan, widths: readonly Mm[]) {
  const made = work.dress === undefined ? null : dressOf(work);
  if (made?.ok !== true) return null;
  const dress = made.value;
  const { waist, body, skirt, lining } = dress;
  return {
    waist: {
      all_round_mm: mm(waist.whole),
      left: halfWaist(waist.halves[0]),
      right: halfWaist(waist.halves[1]),
    },
    hip_depth_mm: mm(body.hipDepth),
    hip_depth_measured: !body.isHipDepthUsual,
    skirt: skirtReport(skirt?.ok === true ? skirt.value : null),
    skirt_refused: refusal(skirt),
    lining: liningReport(lining?.ok === true ? lining.value : null),
    lining_refused: refusal(lining),
    neckline: necklineReport(plan.left.neckline),
    edges: edgesReport(dress.edges),
    closure: closureReport(dress.closure),
    under: underReport(dress.under),
    parts: dress.parts.map((part) => partReport(part, work)),
    cut_list: cutList(dress, work),
    cloth: dress.cloths.flatMap((name) => {
      const own = work.dress?.cloths?.[name] ?? {};
      const others = widths.filter((width) => width !== widthOf(own, work.unit));
      return [own, ...others.map((width): Cloth => ({ ...own, width }))].map((cloth) => clothReport(name, cloth, work));
    }),
    notions: dress.notions.map((notion) => notionReport(notion, work)),
    sewing: dress.sewing.map((step, at) => stepReport(step, at, work)),
    checks: dress.checks.map(checkReport),
  };
}
