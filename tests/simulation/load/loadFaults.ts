/** What no work may have under load, whatever it is made of: what is planned of it, dressed, cut, laid and said. */
import { truePiecesOf } from "../../../src/core/cutting/truePieces";
import { markedWith, printedParts, truePartsOf } from "../../../src/core/cutting/trueParts";
import type { TruePiece } from "../../../src/core/cutting/truePiece";
import type { Work } from "../../../src/core/decisions/work";
import { dressOf } from "../../../src/core/dress/dressOf";
import type { DressPlan } from "../../../src/core/dress/dressPlan";
import { halvesOf, type Plan } from "../../../src/core/plan/plan";
import type { PlanFailure } from "../../../src/core/plan/planFailure";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { planOf } from "../../../src/core/plan/planOf";
import type { Result } from "../../../src/core/result";
import { FORMATS } from "../../../src/core/sheets/formats";
import { layPieces } from "../../../src/core/sheets/layPieces";
import { readWorkFile, writeWorkFile } from "../../../src/document/workFile";
import { checklistByPiece, checklistSentence } from "../../../src/words/checklist";
import { checkClaim, checkFailureSentence } from "../../../src/words/checks";
import { skirtFailureWords } from "../../../src/words/dressSkirt";
import { liningFailureWords } from "../../../src/words/dressLining";
import { necklineFailureWords } from "../../../src/words/neckline";
import { alterationFailureSentence } from "../../../src/words/planned";
import { planFailureWords } from "../../../src/words/plan";
import { faultsOfDress } from "../../support/faultsOfDress";
import { isToldOf } from "../../support/faultsOfPlan";
import { badNumber } from "./badNumber";
import { areaRound, crossedArea, ringInChords } from "./crossedArea";

/** mm². A loop smaller than this is a corner's rounding. */
const CROSSED = 0.05;

/** mm². A piece is larger. */
const LEAST_AREA = 200;

interface Loaded {
  readonly faults: readonly string[];
  /** Names of what was refused. */
  readonly refused: readonly string[];
  readonly isPlanned: boolean;
  /** ms that its plan took. */
  readonly ms: number;
}

/** How much is asked of one work; what is dear is asked of a share of them. */
interface Asked {
  readonly words: boolean;
  /** Cutting lines. */
  readonly cut: boolean;
  /** And these laid on pages. */
  readonly sheets: boolean;
  readonly dress: boolean;
}

/** Every so many works are told in words, cut, laid on pages, dressed by rules of their own: these take longest. */
const OFTEN = { words: 7, cut: 11, sheets: 253, dress: 9 } as const;

export const askedOf = (seed: number): Asked => ({
  words: seed % OFTEN.words === 0,
  cut: seed % OFTEN.cut === 0,
  sheets: seed % OFTEN.sheets === 0,
  dress: seed % OFTEN.dress === 0,
});

export const ASKED_ALL: Asked = { words: true, cut: true, sheets: true, dress: true };

/** What words must never hold. */
const NO_WORD = /NaN|undefined|Infinity|\[object /u;

const UNPLANNED: Loaded = { faults: [], refused: [], isPlanned: false, ms: 0 };

export function loaded(work: Work, asked: Asked): Loaded {
  try {
    return looked(work, asked);
  } catch (error) {
    const { name, message, stack = "" } = error instanceof Error ? error : new Error(String(error));
    const [place = ""] = /src\/[^\s)]+/u.exec(stack) ?? [];
    return { ...UNPLANNED, faults: [`thrown: ${name} ${message} (${place.replace(/:\d+$/u, "")})`] };
  }
}

function looked(work: Work, asked: Asked): Loaded {
  const { plan, ms } = timed(work, planOf);
  const own = asked.words ? fileFaults(work) : [];
  if (!plan.ok)
    return { isPlanned: false, ms, refused: [plan.failure.code], faults: [...own, ...unplanned(work, plan)] };
  const { value } = plan;
  const dress = dressOf(work);
  const faults = [
    ...own,
    ...numberFaults("plan", value),
    ...numberFaults("told", [value.checks, value.checklist]),
    ...otherPieces(value),
    ...crossings(value),
    ...refusalFaults(work, value),
    ...checkFaults(work, value),
    ...(asked.dress ? (faultsOfDress(work) ?? []).map((fault) => `dress: ${fault}`) : []),
    ...(dress.ok ? dressedFaults(work, value, dress.value, asked) : [`no dress: ${dress.failure.code}`]),
    ...(asked.words ? checklistFaults(work, value) : []),
  ];
  return { isPlanned: true, ms, refused: refusedIn(value, dress), faults: [...new Set(faults)] };
}

/** Sheets, cloth and lining are cut by one list of pieces for both halves. */
const otherPieces = ({ left, right }: Plan): readonly string[] => {
  const [one, other] = [left, right].map(({ pieces }) => pieces.map(({ name }) => name).join());
  return one === other ? [] : ["halves are not of the same pieces"];
};

const said = (what: string, text: string): readonly string[] => {
  const [found] = NO_WORD.exec(text) ?? [];
  return found === undefined && text.trim() !== "" ? [] : [`${what} says ${found ?? "nothing"}`];
};

const numberFaults = (what: string, of: unknown): readonly string[] => {
  const at = badNumber(of);
  return at === null ? [] : [`no number in ${what}: ${at.replaceAll(/\d+/gu, "n")}`];
};

/** A file holds the same work, so it can be looked at on the page. */
function fileFaults(work: Work): readonly string[] {
  const text = writeWorkFile(work);
  const again = readWorkFile(text);
  if (!again.ok) return [`no file: ${again.failure.code}`];
  return writeWorkFile(again.value) === text ? [] : ["another work comes out of its file"];
}

function unplanned(work: Work, plan: Extract<Result<Plan, PlanFailure>, { readonly ok: false }>): readonly string[] {
  const { title, text } = planFailureWords(plan.failure, work.unit, work.pattern.chart.sizes.length);
  return [
    ...said(plan.failure.code, title),
    ...said(plan.failure.code, text),
    ...numberFaults("failure", plan.failure),
  ];
}

/** Silent: no check tells of it. */
function crossings(plan: Plan): readonly string[] {
  const pieces = halvesOf(plan).flatMap((half) => half.pieces);
  return pieces.flatMap((piece) => {
    if (isToldOf(plan, piece)) return [];
    const ring = ringInChords(piece);
    if (crossedArea(ring) > CROSSED) return [`silent crossing: ${piece.name}`];
    return Math.abs(areaRound(ring)) > LEAST_AREA ? [] : [`no area: ${piece.name}`];
  });
}

function refusalFaults({ unit }: Work, plan: Plan): readonly string[] {
  return plan.ledger.flatMap(({ outcome }) => {
    if (outcome.ok) return [];
    const { failure } = outcome;
    const named = failure.code.startsWith("alteration/") ? [] : [`refused by no name: ${failure.code}`];
    return [...named, ...said(failure.code, alterationFailureSentence(failure, unit))];
  });
}

const checkFaults = ({ unit }: Work, { checks }: Plan): readonly string[] =>
  checks.flatMap((check) => [
    ...said(`check ${check.name}`, checkClaim(check.name)),
    ...(check.ok ? [] : said(`check ${check.name}`, checkFailureSentence(check, unit))),
  ]);

const checklistFaults = ({ unit }: Work, plan: Plan): readonly string[] =>
  checklistByPiece(plan, unit).flatMap(({ lines }) =>
    lines.flatMap((line) => said("checklist", checklistSentence(line))),
  );

function refusedIn(plan: Plan, dress: Result<DressPlan, PlanFailure>): readonly string[] {
  const alterations = plan.ledger.flatMap(({ outcome }) => (outcome.ok ? [] : [outcome.failure.code]));
  const necklines = halvesOf(plan).flatMap(({ neckline }) =>
    neckline === null || neckline.ok ? [] : [neckline.failure.code],
  );
  const hung = dress.ok ? [dress.value.skirt, dress.value.lining] : [];
  return [...alterations, ...necklines, ...hung.flatMap((one) => (one === null || one.ok ? [] : [one.failure.code]))];
}

function dressedFaults(work: Work, plan: Plan, dress: DressPlan, asked: Asked): readonly string[] {
  const { skirt, lining } = dress;
  const { unit } = work;
  return [
    ...numberFaults("dress", dress),
    ...halvesOf(plan).flatMap(({ neckline }) =>
      neckline === null || neckline.ok ? [] : said("neckline", necklineFailureWords(neckline.failure, unit)),
    ),
    ...(skirt?.ok === false ? said("skirt", Object.values(skirtFailureWords(skirt.failure, unit)).join(" ")) : []),
    ...(lining?.ok === false ? said("lining", liningFailureWords(lining.failure, unit)) : []),
    ...(asked.cut ? paperFaults(work, plan, dress, asked) : []),
  ];
}

/** All pieces at true scale: those of the bodice as they are cut, and the parts that are drawn. */
function paperFaults(work: Work, plan: Plan, { parts, lining }: DressPlan, asked: Asked): readonly string[] {
  const { closure } = work.pattern;
  const allowances = work.allowances ?? {};
  const names = plan.left.pieces.map(({ name }) => name);
  const bodice = truePiecesOf(plan, { names, size: null, allowances, closure, ...markedWith(plan, parts) });
  const ids = printedParts(parts).map(({ id }) => id);
  const free = lining?.ok === true ? (lining.value.free?.below ?? null) : null;
  const hung = truePartsOf({ parts, ids, allowances, closure, liningOpen: free });
  const pieces = [bodice, hung].flatMap((made) => (made.ok ? made.value : []));
  const refused = bodice.ok ? null : bodice.failure.piece;
  const isTold = refused === null || plan.checks.some((check) => !check.ok && check.pieces.includes(refused));
  return [
    ...(isTold ? [] : [`no paper: ${refused ?? ""}`]),
    ...numberFaults("paper", pieces),
    ...pieces.flatMap(cutFaults),
    ...(asked.sheets && pieces.length > 0 ? sheetFaults(work, pieces) : []),
  ];
}

/** The cloth is cut along one line that does not cross itself, and no seam lies outside it. */
function cutFaults({ cutting, stitch, name }: TruePiece): readonly string[] {
  const ring = cutting.map(({ at }) => at);
  const sewn = stitch.map(({ a }) => a);
  if (ring.length < 3) return [`no cutting line: ${name}`];
  if (crossedArea(ring) > CROSSED) return [`cutting line crosses itself: ${name}`];
  return areaRound(ring) === 0 || sewn.length < 3 ? [`nothing is cut: ${name}`] : [];
}

/** Left white round a page, printed twice, and between pieces; mm. */
const PAPER = { margin: 10, overlap: 10, gap: 6 } as const;

function sheetFaults(work: Work, pieces: readonly TruePiece[]): readonly string[] {
  const toLay = pieces.map(({ key, cutting }) => ({ key, ring: cutting.map(({ at }) => at) }));
  const laid = layPieces(toLay, { format: FORMATS[work.sheetFormat ?? work.paper], ...PAPER });
  if (!laid.ok) return laid.failure.code === "sheet/too-many-pages" ? [] : [`not laid: ${laid.failure.code}`];
  const { placements } = laid.value;
  return [
    ...numberFaults("sheet", laid.value),
    ...(placements.length === pieces.length ? [] : ["a piece is not laid"]),
  ];
}

/**
 * A plan with all that is told of it, and how long it took, ms. The processor's own time where that is less: what others on the
 * machine took is no part of it.
 */
function timed(work: Work, planned: (work: Work) => Result<Plan, PlanFailure>) {
  const [start, cpu] = [performance.now(), process.cpuUsage()];
  const plan = planned(work);
  // Neither is made before it is read.
  if (plan.ok) for (const told of [plan.value.checks, plan.value.checklist]) told.at(0);
  const { user, system } = process.cpuUsage(cpu);
  return { plan, ms: Math.min(performance.now() - start, (user + system) / 1000) };
}

/** The same once more with nothing remembered of its sizes; of pieces from a file their reading is. */
export function planTime(work: Work): number {
  const { pattern, tapes } = work;
  return timed(
    { ...work, tapes: [...tapes], pattern: pattern.own === undefined ? { ...pattern } : pattern },
    derivePlan,
  ).ms;
}
