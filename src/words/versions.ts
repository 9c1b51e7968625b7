/** Versions of a work in words: what they are called, what differs, and how the paper of one is made that of another. */
import type { Alteration, Half } from "../core/decisions/alteration";
import type { LengthUnit } from "../core/decisions/work";
import type { Observation, Trial } from "../core/decisions/trial";
import type { DartFigures } from "../core/dart/dartFigures";
import type { PieceName } from "../core/pattern/piece";
import { isTurnedOver } from "../core/cutting/turnedOver";
import type { Plan } from "../core/plan/plan";
import type { Mm } from "../core/units";
import type { AlterationRow } from "../core/versions/alterationRows";
import type { AnewWhy, ChangedStep, PieceSince, Since, SinceItem } from "../core/versions/checklistSince";
import type { Comparison, Reason } from "../core/versions/compareVersions";
import type { Version } from "../core/versions/versionsOf";
import { FIT_WORDS } from "./alterations/index";
import { checklistByPiece, checklistLine, type ChecklistLine, type PieceChecklist } from "./checklist";
import { fitSteps, fitTitle, halfWords } from "./fits";
import { plannedTitle } from "./ledger";
import { measureWords } from "./measures";
import { alterationTitle } from "./planned";
import { dayWords } from "./terms/days";
import { formatAmount, formatAsked, formatLength } from "./terms/length";
import { placeWords, signWords } from "./trialPlaces";
import { capital, dartRefWords, levelWords, namedPieceWords, type OtherNames } from "./terms/names";
import { listWords, plural } from "./terms/language";

const NOW_WORDS = "Now";

/** "Trial 2, 14 November 2026"; "Now". */
export const versionTitle = ({ trial, number }: Pick<Version, "trial" | "number">): string =>
  trial === null || number === null ? NOW_WORDS : trialTitle(trial, number);

const trialTitle = ({ day }: Pick<Trial, "day">, number: number): string =>
  `Trial ${number}${day === undefined ? "" : `, ${dayWords(day)}`}`;

/** In the middle of a sentence: "trial 2", "what is decided now". */
export const versionInText = ({ number }: Pick<Version, "number">): string =>
  number === null ? "what is decided now" : `trial ${number}`;

/** Which alteration it is, whatever its amount: "Sway back", "Waist dart of the front: its end". */
export function alterationName(alteration: Alteration): string {
  if (alteration.kind === "fit") return FIT_WORDS[alteration.fit].name;
  return `${capital(dartRefWords(alteration.dart))}: ${ON_DART[alteration.kind]}`;
}

const ON_DART: Readonly<Record<Exclude<Alteration["kind"], "fit">, string>> = {
  dartEnd: "end",
  dartMouth: "mouth",
  dartPlace: "place",
  dartPivot: "pivoted",
  dartSplit: "split",
  dartGather: "gathered",
  dartLegs: "legs bowed",
  dartSeam: "made a seam",
};

/** What of an alteration stands in a cell: its amount with a sign, or all of it in words. */
function alterationCell(alteration: Alteration | null, unit: LengthUnit): string {
  if (alteration === null) return "–";
  return alteration.kind === "fit" ? signed(alteration.amount, unit) : alterationTitle(alteration, unit);
}

const signed = (amount: Mm, unit: LengthUnit): string =>
  `${amount < 0 ? "−" : ""}${formatAsked(Math.abs(amount), unit)}`;

/** How much one is more than another: "+8 mm". */
const moreWords = (by: Mm, unit: LengthUnit): string =>
  formatAmount(Math.abs(by), unit) === formatAmount(0, unit)
    ? "="
    : `${by < 0 ? "−" : "+"}${formatAmount(Math.abs(by), unit)}`;

/** The same of two that are told beside it: nothing, where they read alike. */
const moreTold = (before: Mm, after: Mm, unit: LengthUnit, told: (mm: Mm, unit: LengthUnit) => string): string =>
  told(before, unit) === told(after, unit) ? moreWords(0, unit) : moreWords(after - before, unit);

/** What of an alteration is other, and how that is made on the piece that she has. */
function alteredSaid(
  { row, trace }: Extract<ChangedStep, { kind: "altered" }>,
  piece: PieceName,
  unit: LengthUnit,
): { readonly text: string; readonly moves: readonly string[]; readonly amount: string | null } {
  const { before, after, by } = row;
  const known = after ?? before;
  if (known === null) return { text: "", moves: [], amount: null };
  const isToldByMore =
    known.kind === "fit" && by !== null && (by >= 0 || FIT_WORDS[known.fit].less !== undefined) && isAny(by, unit);
  if (!isToldByMore) {
    const text =
      before === null
        ? `${alterationTitle(known, unit)}.`
        : after === null
          ? `No longer: ${lower(alterationTitle(before, unit))}.`
          : `${alterationTitle(after, unit)}. So far: ${lower(alterationTitle(before, unit))}.`;
    return { text, moves: [], amount: null };
  }
  const difference = { ...known, amount: by };
  const sofar =
    before?.kind === "fit" && after?.kind === "fit"
      ? ` ${FIT_WORDS[known.fit].name}: ${signed(before.amount, unit)} so far, ${signed(after.amount, unit)} now.`
      : after === null
        ? ` ${FIT_WORDS[known.fit].name}: put back.`
        : "";
  return {
    text: `${fitTitle(difference, unit)}.${sofar}`,
    moves: trace === null ? [] : fitSteps(difference, piece, trace, unit),
    amount: formatAsked(Math.abs(by), unit),
  };
}

const isAny = (by: Mm, unit: LengthUnit): boolean => formatAsked(Math.abs(by), unit) !== formatAsked(0, unit);

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

interface Told {
  readonly unit: LengthUnit;
  readonly plan: Plan;
}

const OWN_STEPS = ["takeUp", "altered", "bustAltered", "lineMoved"] as const;
type OwnStep = (typeof OWN_STEPS)[number];
const isOwn = (step: SinceItem["step"]): step is ChangedStep => OWN_STEPS.some((kind: OwnStep) => kind === step.kind);

function lineOf({ piece, step, amount }: SinceItem, half: Half | null, { unit, plan }: Told): ChecklistLine {
  const { otherNames } = plan.nest;
  if (!isOwn(step)) {
    const { pieces } = plan[half ?? "left"];
    return checklistLine({ piece, step, amount }, pieces, unit, undefined, otherNames, true);
  }
  switch (step.kind) {
    case "takeUp":
      return { phase: "trace", text: takeUpSaid(piece, step.isTwice, half, otherNames), moves: [], amount: null };
    case "altered":
      return { phase: "trace", ...alteredSaid(step, piece, unit) };
    case "bustAltered":
      return {
        phase: "bust",
        text: `Bust adjustment: ${bustWords(step.before, unit)} so far, ${bustWords(step.after, unit)} now.`,
        moves: [],
        amount: moreWords((step.after - step.before) / 2, unit),
      };
    case "lineMoved": {
      const title = (line: typeof step.after): string =>
        plannedTitle(
          {
            what: { kind: "blend", level: line.level === "hip" ? "hip" : "waist", cutLine: line },
          },
          unit,
        );
      const was = step.before === null ? null : title(step.before);
      const is = title(step.after);
      return {
        phase: "widthsTraced",
        text: was === null || was === is ? `${is}: its line has moved.` : `${is}. So far: ${lower(was)}.`,
        moves: [],
        amount: null,
      };
    }
  }
}

/** Half of what is made round the whole bust. */
const bustWords = (whole: Mm, unit: LengthUnit): string =>
  isAny(whole / 2, unit) ? `${signed(whole / 2, unit)} on the half` : "none";

const takeUpSaid = (piece: PieceName, isTwice: boolean, half: Half | null, others: OtherNames): string =>
  `Trace your old piece of the ${namedPieceWords(piece, others)}, stitch lines, darts and marks.` +
  (isTwice && half !== null
    ? ` It was one for both halves: this one is for the ${half} half alone.${isTurnedOver(piece, half) ? " Turn it over before you cut." : ""}`
    : "") +
  " All that follows is told from how it was.";

const WHY: Readonly<Record<AnewWhy, string>> = {
  notThere: "It was not there before: make it from the tissue.",
  otherSize: "It is traced from another line now: make it anew from the tissue.",
  otherDarts: "It has other darts or seams now: make it anew from the tissue.",
};

/** Work on one piece. */
export interface SincePiece extends PieceChecklist {
  /** What is said before the work where it is made anew; null: it is drawn from the old one. */
  readonly anew: string | null;
}

export interface SinceSaid {
  readonly pieces: readonly SincePiece[];
  /** Seams to walk; null: none. */
  readonly together: PieceChecklist | null;
  /** "The back and the strap stay as they are." null: none do. */
  readonly stays: string | null;
  readonly gone: string | null;
}

/** @param plan of the version that is wanted */
export function sinceSaid(since: Since, plan: Plan, unit: LengthUnit): SinceSaid {
  const told: Told = { unit, plan };
  const { otherNames } = plan.nest;
  const lists = since.changed.map((one) => listedOf(one, told));
  // In her unit nothing of it may be left to be marked.
  const changed = lists.filter(({ hasWork }) => hasWork);
  const names = [...new Set([...changed, ...since.anew].map(({ piece }) => piece))];
  const pieces = names.flatMap((piece): readonly SincePiece[] => {
    const label = namedPieceWords(piece, otherNames);
    const own = changed.filter((one) => one.piece === piece);
    const anew = since.anew.filter((one) => one.piece === piece);
    return [
      ...(own.length === 0 ? [] : [{ piece, label, lines: onceForBoth(own), anew: null }]),
      ...anewOf(anew, told),
    ];
  });
  const stays = [...since.stays, ...lists.filter(({ hasWork }) => !hasWork)];
  const walked = checklistByPiece({ ...plan, checklist: since.walks }, unit);
  return {
    pieces: pieces.toSorted((a, b) => orderOf(a) - orderOf(b)),
    together: pieces.length === 0 ? null : (walked[0] ?? null),
    stays:
      stays.length === 0
        ? null
        : `${whole(stays, otherNames)} as you have ${isOnePiece(stays) ? "it" : "them"}: nothing to change.`,
    gone: since.gone.length === 0 ? null : `No longer needed: ${listed(since.gone, otherNames)}.`,
  };
  function orderOf({ piece }: SincePiece): number {
    return plan.left.pieces.findIndex(({ name }) => name === piece);
  }
}

const isOnePiece = (pieces: readonly PieceSince[]): boolean => pieces.length === 1;

const listed = (pieces: readonly PieceSince[], others: OtherNames): string =>
  listWords(
    pieces.map(
      ({ piece, half }) => `the ${namedPieceWords(piece, others)}${half === null ? "" : ` of the ${halfWords(half)}`}`,
    ),
  );

const whole = (pieces: readonly PieceSince[], others: OtherNames): string =>
  `${capital(listed(pieces, others))} ${isOnePiece(pieces) ? "stays" : "stay"}`;

interface Listed extends PieceSince {
  readonly lines: readonly ChecklistLine[];
  /** Whether anything is to be drawn or put, and not only told. */
  readonly hasWork: boolean;
}

function listedOf({ piece, half, items }: Since["changed"][number], told: Told): Listed {
  const lines = items.map((item) => ({ item, line: lineOf(item, half, told) }));
  const isNothing = ({ item, line }: (typeof lines)[number]): boolean =>
    line.text === "" || (item.step.kind === "places" && line.moves.length === 0);
  return {
    piece,
    half,
    lines: lines.flatMap((one) => (isNothing(one) ? [] : [one.line])),
    hasWork: lines.some((one) => (one.item.step.kind === "dart" || one.item.step.kind === "places") && !isNothing(one)),
  };
}

/** Work on both halves of a piece, each in its order: what is word for word alike stands once. */
function onceForBoth([first, second]: readonly Listed[]): readonly ChecklistLine[] {
  const named = (list: Listed | undefined, lines: readonly ChecklistLine[]): readonly ChecklistLine[] =>
    list?.half == null
      ? lines
      : lines.map((line) => ({ ...line, text: `On the ${halfWords(list.half ?? "left")}: ${line.text}` }));
  if (first === undefined || second === undefined) return named(first, first?.lines ?? []);
  const keys = second.lines.map((line) => JSON.stringify(line));
  let taken = 0;
  const both = first.lines.flatMap((line): readonly ChecklistLine[] => {
    const at = keys.indexOf(JSON.stringify(line), taken);
    if (at < 0) return named(first, [line]);
    const before = second.lines.slice(taken, at);
    taken = at + 1;
    return [...named(second, before), line];
  });
  return [...both, ...named(second, second.lines.slice(taken))];
}

/** Pieces made anew: the order of work of the plan, for one half or for both. */
function anewOf(anew: Since["anew"], { plan, unit }: Told): readonly SincePiece[] {
  const [first, second] = anew;
  if (first === undefined) return [];
  const isBoth = first.half === null || second !== undefined;
  const items = isBoth
    ? plan.checklist.filter(({ piece, step }) => piece === first.piece && step.kind !== "walk")
    : first.items.map((item) => ({ ...item, half: first.half ?? "left" }));
  return checklistByPiece({ ...plan, checklist: items }, unit).map((list) => ({
    ...list,
    anew: `${isBoth || first.half === null ? "" : `${capital(halfWords(first.half))}. `}${WHY[first.why]}`,
  }));
}

export const VERSIONS_WORDS = {
  title: "Versions",
  about: "Every toile as it was sewn, and what is decided now. Look at one, or hold two against each other.",
  look: "Look at",
  against: "Held against",
  nothing: "nothing",
  sameAsNow: "as decided now",
  alterations: "Alterations",
  none: "No alterations in either.",
  sizes: "Sizes and girths",
  darts: "Darts",
  why: "What changed, and why",
  unchanged: "Nothing is decided otherwise.",
  ownDecision: "Decided without an answer of a trial.",
  what: "What",
  more: "More by",
  print: "Print what changes",
  neverSewn:
    "What is decided now was never sewn. Going back is one step: undo brings it back. To keep both, go back in a copy.",
} as const;

export const backWords = (number: number): string => `Go back to trial ${number}`;
export const backInCopyWords = (number: number): string => `Go back to trial ${number} in a copy`;
export const branchWords = (number: number): string => `Branch from trial ${number}`;
export const branchAbout = (number: number): string =>
  plural(number, {
    one: "A branch is a work of its own, with the trial it begins from.",
    other: "A branch is a work of its own, with the trials up to the one it begins from.",
  });

/** A work's name with where it branches off; names are kept short enough to be told apart by their ends. */
export const branchName = (name: string, number: number): string =>
  `${name.slice(0, LONGEST_BRANCHED)}, from trial ${number}`;
const LONGEST_BRANCHED = 170;

/** Beside a version's name: how its trial ended. */
export const verdictTag = ({ verdict, base }: Pick<Trial, "verdict" | "base">): string | null =>
  base === true ? "base" : verdict === "keep" ? "kept" : verdict === "again" ? "try again" : "open";

/** Which lines of the record asked for a change: "Trial 2: fold across, back above the waist, pinched 5 mm". */
export function reasonWords({ number, because, half }: Reason, unit: LengthUnit): string {
  const lines = because.map((line) => observationWords(line, unit)).filter((text) => text !== "");
  const on = half === null ? "" : ` Tried on the ${halfWords(half)}.`;
  const seen = lines.length === 0 ? "an answer was taken" : lines.join("; ");
  return `Trial ${number}: ${seen}.${on}`;
}

const WAYS = { pinched: "pinched", letOut: "let out", off: "off by" } as const;

/** A line of the record in one breath. */
function observationWords({ place, sign, way, amount, mark, half, changed }: Observation, unit: LengthUnit): string {
  const parts = [
    ...(sign === undefined ? [] : [signWords(sign)]),
    ...(place === undefined ? [] : [placeWords(place)]),
    ...(half === undefined ? [] : [halfWords(half)]),
    ...(amount === undefined ? [] : [`${way === undefined ? "" : `${WAYS[way]} `}${formatAmount(amount, unit)}`]),
    ...(mark === undefined ? [] : markWords(mark, unit)),
  ];
  return parts.length === 0 ? (changed ?? "") : parts.join(", ");
}

function markWords({ out, down }: { readonly out: Mm; readonly down: Mm }, unit: LengthUnit): readonly string[] {
  const told = (by: Mm, more: string, less: string): readonly string[] =>
    isAny(by, unit) ? [`${formatAmount(Math.abs(by), unit)} ${by > 0 ? more : less}`] : [];
  return [...told(out, "outwards", "inwards"), ...told(down, "down", "up")];
}

/** One line of a table: what, in the older version, in the newer one, and what the newer has more. */
export interface VersionLine {
  readonly key: string;
  readonly what: string;
  readonly before: string;
  readonly after: string;
  readonly by: string;
  readonly isChanged: boolean;
}

export function alterationLines(rows: readonly AlterationRow[], unit: LengthUnit): readonly VersionLine[] {
  return rows.flatMap((row): readonly VersionLine[] => {
    const { before, after, by, half, isChanged } = row;
    const known = after ?? before;
    if (known === null) return [];
    const what = `${alterationName(known)}${half === null ? "" : `, ${halfWords(half)}`}`;
    return [
      {
        key: what,
        what,
        before: alterationCell(before, unit),
        after: alterationCell(after, unit),
        by: by === null ? "" : moreWords(by, unit),
        isChanged,
      },
    ];
  });
}

/** Sizes by their labels, girths and measures. */
export function sizeLines(compared: Comparison, unit: LengthUnit): readonly VersionLine[] {
  const { pattern, baseSize, cups, bust, levels, measures, ease } = compared;
  const label = (key: string, what: string, { before, after }: typeof baseSize): VersionLine => ({
    key,
    what,
    before: before ?? "–",
    after: after ?? "–",
    by: "",
    isChanged: before !== after,
  });
  const length = (
    key: string,
    what: string,
    [before, after]: readonly [Mm | null, Mm | null],
    told: (mm: Mm, unit: LengthUnit) => string,
  ): VersionLine => {
    const by = before === null || after === null ? "" : moreTold(before, after, unit, told);
    return {
      key,
      what,
      before: before === null ? "–" : told(before, unit),
      after: after === null ? "–" : told(after, unit),
      by,
      isChanged: before === null || after === null ? before !== after : by !== "=",
    };
  };
  const isRedrawn = pattern.isChanged && pattern.before === pattern.after;
  return [
    ...(pattern.isChanged
      ? [{ ...label("pattern", "Pattern", pattern), by: isRedrawn ? "changed" : "", isChanged: true }]
      : []),
    label("base", "Frame", baseSize),
    ...cups.flatMap(({ half, ...cup }) =>
      cup.before === null && cup.after === null
        ? []
        : [label(`cup-${half}`, half === null ? "Cup" : `Cup, ${halfWords(half)}`, cup)],
    ),
    length("alteration", "Bust adjustment, whole", [bust.before, bust.after], signed),
    ...levels.map(({ level, before, after }) =>
      length(
        `finished-${level}`,
        `Finished ${levelWords(level)}`,
        [before?.finished ?? null, after?.finished ?? null],
        formatLength,
      ),
    ),
    ...measures.map(({ measure, before, after }) =>
      length(`measure-${measure}`, measureWords(measure).name, [before, after], formatLength),
    ),
    ...ease.map(({ level, before, after }) =>
      length(`ease-${level}`, `Ease wanted at the ${levelWords(level)}`, [before, after], formatAmount),
    ),
  ];
}

/** Mouth, fullness and where it ends, of every dart. */
export function dartLines(rows: Comparison["darts"], unit: LengthUnit): readonly VersionLine[] {
  return rows.flatMap(({ ref, half, before, after }): readonly VersionLine[] => {
    const name = `${capital(dartRefWords(ref))}${half === null ? "" : `, ${halfWords(half)}`}`;
    const line = (what: string, of: (figures: DartFigures) => Mm | null): readonly VersionLine[] => {
      const [was, is] = [before, after].map((figures) => (figures === null ? null : of(figures)));
      if (was == null && is == null) return [];
      const by = was == null || is == null ? "" : moreTold(was, is, unit, formatAmount);
      return [
        {
          key: `${name} ${what}`,
          what: `${name}: ${what}`,
          before: was == null ? "–" : formatAmount(was, unit),
          after: is == null ? "–" : formatAmount(is, unit),
          by,
          isChanged: by !== "=",
        },
      ];
    };
    return [
      ...line("mouth", ({ intake }) => intake),
      ...line("fullness", ({ fullness }) => fullness),
      ...line("short of the bust point", ({ end }) => end?.along ?? null),
    ];
  });
}

export const SINCE_WORDS = {
  kind: "Alter your toile’s paper",
  order: "What changes",
  nothing: "Nothing changes: cut by the paper that you have.",
  drawing: "The piece as it was, dashed, and as it is to be, heavy",
  from: "Paper you have",
  to: "Wanted",
  print: "Print the changes",
  strips: "The same in true size, as strips to lay on that paper",
  noTrial: "No toile is kept yet. Begin a trial, and what changes after it can be printed here.",
} as const;

export const sinceHint = (from: string, to: string): string =>
  `From the paper of “${from}” to “${to}”, and only what differs. All lines are stitch lines: without allowances, or with the stitch line drawn in. In the drawings the old line is dashed, the new one heavy.`;

/** Folded away below what differs. */
export const sameInBoth = (count: number): string => `The same in both: ${count}`;

/** At the head of a column. */
export const versionHead = ({ number }: Pick<Version, "number">): string =>
  number === null ? NOW_WORDS : `Trial ${number}`;
