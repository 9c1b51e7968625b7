/** The plan as data for other programs. Lengths in millimetres, angles in degrees; the README names every key. */
import { openDoubts } from "../core/bodies/tapeDoubts";
import type { CheckName } from "../core/checks/check";
import type { WayIn } from "../core/opening/gettingIn";
import { straightToBustPoint } from "../core/dart/dartEndReading";
import type { PiecePoint } from "../core/geometry/point";
import type { DartName, LevelName, PieceName } from "../core/pattern/piece";
import type { Plan, PlannedLevel } from "../core/plan/plan";
import type { MeasureName } from "../core/measures/measure";
import type { Half } from "../core/decisions/alteration";
import type { Work } from "../core/decisions/work";
import { degreesFrom, type Mm } from "../core/units";
import { checklistLine, checklistSentence } from "../words/checklist";
import { tapeDoubtWords } from "../words/tapeDoubts";
import { surePassage } from "../words/surePassage";
import { dressReport, type ReportDress } from "./dressReport";
import { halvesReport, type ReportHalves } from "./halvesReport";
import { measuresReport, type ReportMeasures } from "./measuresReport";
import { pieceReports, type ReportPieces } from "./pieceReport";
import { rounded } from "./rounded";
import { trialReport, type ReportTrial } from "./trialReport";

type Pair<T> = readonly [T, T];

export interface ReportLevel {
  readonly between: Pair<string>;
  readonly share: number;
  readonly target_mm: number;
  readonly finished_mm: number;
  /** Labels of lines that it stands on of which her own pieces have no outline. */
  readonly untraced: readonly string[];
  /** Her own pieces have but one size here: nothing is blended. */
  readonly one_size: boolean;
}

export interface ReportDart {
  readonly piece: PieceName;
  readonly name: DartName;
  readonly apex_mm: Pair<number>;
  readonly mouth_mm: Pair<Pair<number>>;
  readonly legs_mm: Pair<number>;
  readonly intake_mm: number;
  readonly angle_deg: number;
  readonly fullness_mm: number;
  /** null for a dart that serves no bust. */
  readonly apex_to_bust_point_mm: number | null;
  readonly short_of_bust_point_mm: number | null;
  readonly bust_point_beside_mm: number | null;
}

export interface ReportCutLine {
  readonly piece: PieceName;
  readonly level: "bust" | "waist" | "hip";
  readonly between: Pair<string>;
  readonly share: number;
  readonly offset_mm: number;
}

export interface ReportCheck {
  /** As it has been since the first version of this report. */
  readonly name: Exclude<CheckName, "alterationsMade"> | "slipsApplied";
  readonly ok: boolean;
  readonly measured: number;
  readonly expected: number;
  readonly tolerance: number;
  readonly unit: "mm" | "degrees" | "faults";
  readonly pieces: readonly PieceName[];
  readonly level?: LevelName;
  readonly seam?: string;
  readonly dart?: DartName;
  readonly point?: string;
  /** Of an opening: how it is gone through, where it is tightest, and how much longer it would have to be. */
  readonly way_in?: WayIn;
  readonly below_waist_mm?: number;
  readonly longer_mm?: number;
  readonly half?: Half;
}

export interface ReportJob {
  readonly piece: PieceName;
  readonly text: string;
  readonly amount_mm: number;
  /** On one half alone, where the halves differ. */
  readonly half?: Half;
}

export interface ReportDoubt {
  readonly measure: MeasureName;
  readonly value_mm: number;
  readonly expected_mm: Pair<number>;
  readonly said: string;
}

export interface PlanReport {
  /** Where its pieces come from. */
  readonly pattern: {
    readonly source: "stand-in" | "fitted" | "own";
    /** Labels; null where none are traced. */
    readonly sizes_traced: readonly string[] | null;
    readonly ease_measured: boolean;
    readonly ease_mm: Readonly<Record<"bust" | "waist" | "hip", number>>;
  };
  readonly frame: { readonly size: string; readonly cup: string | null };
  readonly levels: {
    readonly bust: ReportLevel | undefined;
    readonly waist: ReportLevel | undefined;
    /** Only where the pattern reaches the hip. */
    readonly hip?: ReportLevel;
  };
  readonly bust: {
    readonly difference_mm: number | null;
    readonly residual_mm: number;
    /** The whole change of girth that is asked for, and what could be made of it. */
    readonly asked_mm: number;
    readonly altered_mm: number;
  };
  /** What was read off the tape and is doubted, until that is answered: why, in words. */
  readonly tape_doubts: readonly ReportDoubt[];
  /** How far the measures settle the sizes, in sentences, and what to measure again before cutting. */
  readonly sure: { readonly said: readonly string[]; readonly next: string | null } | null;
  readonly from_measures: ReportMeasures;
  readonly darts: readonly ReportDart[];
  readonly cut_lines: readonly ReportCutLine[];
  readonly checks: readonly ReportCheck[];
  readonly checklist: readonly ReportJob[];
  readonly pieces: ReportPieces;
  /** Which alterations stand on which half. */
  readonly halves: ReportHalves;
  /** null where no trial is open. */
  readonly trial: ReportTrial | null;
  /** null where nothing is decided of a dress. */
  readonly dress: ReportDress | null;
}

const SOURCES = { standIn: "stand-in", fitted: "fitted", own: "own" } as const;

const mm = (value: number): number => rounded(value, 2);
const share = (value: number): number => rounded(value, 4);
const point = (at: PiecePoint): Pair<number> => [mm(at.x), mm(at.y)];

function reportLevel(levels: readonly PlannedLevel[], name: PlannedLevel["level"]): ReportLevel | undefined {
  const level = levels.find((one) => one.level === name);
  return level === undefined
    ? undefined
    : {
        between: level.between,
        share: share(level.share),
        target_mm: mm(level.target),
        finished_mm: mm(level.finished),
        untraced: level.untraced ?? [],
        one_size: level.isHeld === true,
      };
}

/** @param widths of cloth that a dress is laid on besides its own, mm */
export function planReport(work: Work, plan: Plan, widths: readonly Mm[] = []): PlanReport {
  const hip = reportLevel(plan.levels, "hip");
  const { difference, residual, asked, alteration } = plan.sizing.bust;
  return {
    pattern: {
      source: SOURCES[plan.nest.source],
      sizes_traced: plan.nest.traced === undefined ? null : plan.nest.labels.filter((_, at) => plan.nest.traced?.[at]),
      ease_measured: plan.isEaseMeasured,
      ease_mm: { bust: mm(plan.drafted.bust), waist: mm(plan.drafted.waist), hip: mm(plan.drafted.hip) },
    },
    frame: { size: plan.sizing.baseSize.label, cup: plan.sizing.cup.label },
    levels: {
      bust: reportLevel(plan.levels, "bust"),
      waist: reportLevel(plan.levels, "waist"),
      ...(hip === undefined ? {} : { hip }),
    },
    bust: {
      difference_mm: difference === null ? null : mm(difference),
      residual_mm: mm(residual),
      asked_mm: mm(asked),
      altered_mm: mm(alteration),
    },
    tape_doubts: openDoubts(work).map((doubt) => ({
      measure: doubt.measure,
      value_mm: mm(doubt.value),
      expected_mm: [mm(doubt.least), mm(doubt.most)],
      said: tapeDoubtWords(doubt, work.unit),
    })),
    sure: surePassage(work),
    from_measures: measuresReport(work, plan),
    darts: plan.left.darts.map(({ ref, drawn }) => ({
      piece: ref.piece,
      name: ref.dart,
      apex_mm: point(drawn.apex),
      mouth_mm: [point(drawn.inner), point(drawn.outer)],
      legs_mm: [mm(drawn.legInner), mm(drawn.legOuter)],
      intake_mm: mm(drawn.intake),
      angle_deg: rounded(degreesFrom(drawn.angle), 3),
      fullness_mm: mm(drawn.fullness),
      apex_to_bust_point_mm: drawn.end === null ? null : mm(straightToBustPoint(drawn.end)),
      short_of_bust_point_mm: drawn.end === null ? null : mm(drawn.end.along),
      bust_point_beside_mm: drawn.end === null ? null : mm(drawn.end.across),
    })),
    cut_lines: plan.left.cutLines.map((line) => ({
      piece: line.piece,
      level: line.level,
      between: line.between,
      share: share(line.share),
      offset_mm: mm(line.offset),
    })),
    checks: plan.checks.map(({ name, measured, expected, tolerance, tightest, ...rest }) => ({
      name: name === "alterationsMade" ? "slipsApplied" : name,
      ...rest,
      measured: mm(measured),
      expected: mm(expected),
      tolerance: mm(tolerance),
      ...(tightest === undefined
        ? {}
        : { way_in: tightest.way, below_waist_mm: mm(tightest.belowWaist), longer_mm: mm(tightest.longer) }),
    })),
    checklist: plan.checklist.map((item) => ({
      piece: item.piece,
      text: checklistSentence(checklistLine(item, plan[item.half ?? "left"].pieces, work.unit)),
      amount_mm: mm(item.amount),
      ...(item.half === undefined ? {} : { half: item.half }),
    })),
    pieces: pieceReports(plan),
    halves: halvesReport(work, plan),
    trial: trialReport(work),
    dress: dressReport(work, plan, widths),
  };
}
