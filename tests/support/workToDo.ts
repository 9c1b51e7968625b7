/**
 * What there is to do on the pieces of one half of the body, told as a dressmaker would tell it who lays each piece beside
 * what it was before: from named points, edges and the ledger alone. Nothing of the order of work's own code is asked.
 */
import type { Alteration } from "../../src/core/decisions/alteration";
import type { DartName, Piece, PieceName, PointName, SeamName } from "../../src/core/pattern/piece";
import type { ChecklistItem, Plan, PlanHalf, PlannedAlteration } from "../../src/core/plan/plan";
import type { Work } from "../../src/core/decisions/work";
import { invariant } from "../../src/core/result";

export type JobKind = ChecklistItem["step"]["kind"];

/** One job: what it is, and the figures that are told of it (mm, degrees), in an order of their own. */
export interface Job {
  readonly piece: PieceName;
  readonly kind: JobKind;
  readonly what: string;
  readonly figures: readonly number[];
  /** May be told or not: the piece lies as it was, but the seam it shares with one that was cut is walked again. */
  readonly isOptional?: true;
}

export const nameOf = ({ piece, kind, what }: Job): string => `${piece}: ${kind} ${what}`;

interface Place {
  readonly x: number;
  readonly y: number;
}

const apart = (a: Place, b: Place): number => Math.hypot(a.x - b.x, a.y - b.y);
const named = (pieces: readonly Piece[], name: PieceName): Piece | undefined =>
  pieces.find((piece) => piece.name === name);
const at = (piece: Piece, name: PointName): Place => invariant(piece.points[name], `${piece.name} ${name}`).at;

/** mm. A pencil line is no thinner: what moved by less is drawn where it was. */
const PENCIL = 0.5;
/** mm. What a dart may be off by and still be sewn as it is printed. */
const SEWN = 1;

/** How far the outline's points and handles moved at the most; without end where it has other corners, edges or darts. */
function changeOf(before: Piece | undefined, after: Piece | undefined): number {
  if (before === undefined || after === undefined) return before === after ? 0 : Infinity;
  const shape = ({ points, edges, darts, centreOnFold }: Piece): string =>
    JSON.stringify(
      [Object.keys(points).toSorted(), edges.map((edge) => [edge, edge.curve === null]), darts, centreOnFold],
      (key, value: unknown) => (key === "curve" ? undefined : value),
    );
  if (shape(before) !== shape(after)) return Infinity;
  const places = (piece: Piece): readonly Place[] => [
    ...Object.entries(piece.points)
      .toSorted(([a], [b]) => (a < b ? -1 : 1))
      .map(([, point]) => point.at),
    ...piece.edges.flatMap(({ curve }) => (curve === null ? [] : [curve.c1, curve.c2])),
  ];
  const others = places(after);
  return Math.max(...places(before).map((place, i) => apart(place, invariant(others[i], "place"))));
}

const isMade = ({ outcome }: PlannedAlteration): boolean => outcome.ok;

/** By how much a line of the ledger changed a piece; 0 where it could not be made. */
function changeBy({ outcome }: PlannedAlteration, piece: PieceName): number {
  return outcome.ok ? changeOf(outcome.value.before[piece], outcome.value.after[piece]) : 0;
}

const touched = ({ outcome }: PlannedAlteration): readonly PieceName[] =>
  outcome.ok
    ? ALL_PIECES.filter((name) => outcome.value.before[name] !== undefined || outcome.value.after[name] !== undefined)
    : [];

/** From the neck down and from the front back, as the pieces of a garment are told. */
const ALL_PIECES: readonly PieceName[] = [
  "front",
  "centreFront",
  "sideFront",
  "cup",
  "frontBand",
  "back",
  "backBand",
  "frontBasque",
  "backBasque",
  "strap",
];

/** What a pattern with cup versions prints anew for each: the pieces that lie on the bust. */
export const IN_CUPS: readonly PieceName[] = ["front", "centreFront", "sideFront", "cup"];

/** Whether a redraw asks for anything: to draw a dart again where it is is nothing to do. */
function asksNothing(alteration: Alteration): boolean {
  switch (alteration.kind) {
    case "dartEnd":
      return alteration.shorten === 0 && alteration.across === 0;
    case "dartMouth":
      return alteration.inner === 0 && alteration.outer === 0;
    case "dartPlace":
      return alteration.by === 0;
    default:
      return false;
  }
}

/** The one amount that stands out beside the words. */
function amountOf(alteration: Alteration): number {
  switch (alteration.kind) {
    case "dartEnd":
      return alteration.shorten === 0 ? alteration.across : alteration.shorten;
    case "dartMouth":
      return alteration.inner + alteration.outer;
    case "dartPlace":
      return alteration.by;
    case "fit":
      return alteration.amount;
    case "dartLegs":
      return alteration.bow;
    default:
      return 0;
  }
}

/** All that its steps tell: the amount, the lengths that its words name, and what is given back where. */
function figuresOf(planned: PlannedAlteration, alteration: Alteration): readonly number[] {
  if (!planned.outcome.ok) return [];
  const { values, given, notes, before, after } = planned.outcome.value;
  const [was, is] = [
    before.centreFront?.points.centreWaist?.at.y ?? 0,
    after.centreFront?.points.centreWaist?.at.y ?? 0,
  ];
  return [
    amountOf(alteration),
    ...Object.keys(values)
      .toSorted()
      .map((key) => invariant(values[key], key)),
    ...given.map(({ amount }) => amount),
    ...notes.map((note) => ("amount" in note ? note.amount : 0)),
    // What walking a princess seam takes out of the centre front is told as well.
    is - was,
  ];
}

function alterationJobs(planned: PlannedAlteration): readonly Job[] {
  const { what } = planned;
  if (what.kind !== "alteration" || !isMade(planned)) return [];
  const { alteration } = what;
  const job = (piece: PieceName): Job => ({
    piece,
    kind: "alteration",
    what: planned.id,
    figures: figuresOf(planned, alteration),
  });
  if (alteration.kind !== "fit") {
    // What a dart set free is told with it, also where another piece takes it; its seam's pieces are cut out of its own.
    const { piece } = alteration.dart;
    const isDone = asksNothing(alteration) ? changeBy(planned, piece) > PENCIL : changeBy(planned, piece) > 0;
    return isDone ? [job(piece)] : [];
  }
  const changed = touched(planned).filter((piece) => changeBy(planned, piece) > 0);
  const walked = (["centreFront", "sideFront"] as const).filter(
    (piece) => !changed.includes(piece) && changed.some((one) => one === "centreFront" || one === "sideFront"),
  );
  return [...changed.map(job), ...walked.map((piece): Job => ({ ...job(piece), isOptional: true }))];
}

/** The pieces as blended, before the bust is altered. */
const tracedOf = (plan: Plan): readonly Piece[] => {
  const bust = plan.ledger.find(({ source }) => source === "bust");
  return plan.blended.map((piece) =>
    bust?.outcome.ok === true ? (bust.outcome.value.before[piece.name] ?? piece) : piece,
  );
};

/** Where the bodice's side seam leaves the traced one on its way to the waist: a band has no bust line. */
const sideTopOf = (piece: Piece): string =>
  piece.points.sideBust === undefined ? "waist from underBust" : "waist from bust";

/** What darts gave to the side seam at the waist, where it is all that moved it there. */
function takenAt(plan: Plan, half: PlanHalf, { name }: Piece): number {
  const given = half.alterations.flatMap(({ what, outcome }) =>
    what.kind === "alteration" && /^dart(?:End|Mouth|Place)$/.test(what.alteration.kind) && outcome.ok
      ? outcome.value.given.filter(
          ({ place, piece }) => place === "sideSeam" && piece === name && outcome.value.seam === "waist",
        )
      : [],
  );
  const taken = given.reduce((sum, { amount }) => sum + amount, 0);
  const [was, is] = [named(tracedOf(plan), name), named(half.pieces, name) ?? named(half.pieces, "sideFront")];
  if (was?.points.sideWaist === undefined || is?.points.sideWaist === undefined) return 0;
  return Math.abs(at(is, "sideWaist").x - at(was, "sideWaist").x + taken) <= PENCIL ? taken : 0;
}

function tracingJobs(plan: Plan, half: PlanHalf, piece: Piece): readonly Job[] {
  const { baseSize, cup } = plan.sizing;
  const version = IN_CUPS.includes(piece.name) ? cup.label : null;
  const line = (what: string): Job => ({
    piece: piece.name,
    kind: "blend",
    what,
    figures: [what.startsWith("waist") ? takenAt(plan, half, piece) : 0],
  });
  return [
    { piece: piece.name, kind: "trace", what: `${baseSize.label} ${version ?? "-"}`, figures: [] },
    // The basque's side is drawn from its hip up and down, the bodice's from the bust down.
    ...(piece.points.sideWaist === undefined
      ? []
      : [line(piece.points.sideHip !== undefined ? "waist from hip" : sideTopOf(piece))]),
    ...(piece.points.sideHip === undefined ? [] : [line("hip from waist")]),
  ];
}

function bustJobs(plan: Plan): readonly Job[] {
  const planned = plan.ledger.find(({ source }) => source === "bust");
  if (planned === undefined) return [];
  const whole = plan.sizing.bust.alteration;
  return touched(planned)
    .filter((piece) => changeBy(planned, piece) > 0)
    .map((piece) => ({ piece, kind: "bust", what: "", figures: [whole / 2, whole] }));
}

/** How far a place lies off the endless line through two others. */
const offLine = (p: Place, a: Place, b: Place): number =>
  Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / apart(a, b);

/** Whether a dart is to be drawn: its end, its width or the way of a leg is other than printed, or it is not printed at all. */
function isOther(printed: Piece | undefined, piece: Piece, dart: DartName): boolean {
  if (printed === undefined || printed.darts.every(({ name }) => name !== dart)) return true;
  const [apex, inner, outer] = ([`${dart}Apex`, `${dart}Inner`, `${dart}Outer`] as const).map(
    (name) => [at(printed, name), at(piece, name)] as const,
  );
  const [was, is] = invariant(apex, "end");
  const [[wasInner, isInner], [wasOuter, isOuter]] = [invariant(inner, "mouth"), invariant(outer, "mouth")];
  return (
    apart(was, is) > SEWN ||
    Math.abs(apart(wasInner, wasOuter) - apart(isInner, isOuter)) > SEWN ||
    offLine(isInner, was, wasInner) > SEWN ||
    offLine(isOuter, was, wasOuter) > SEWN
  );
}

/** Whether widths or edges, which come after the darts, move it again. */
const isLate = (alterations: readonly PlannedAlteration[], piece: PieceName, dart: DartName): boolean =>
  alterations.some(({ phase, outcome }) => {
    if (!outcome.ok || (phase !== "widths" && phase !== "edges")) return false;
    const [before, after] = [outcome.value.before[piece], outcome.value.after[piece]];
    return ([`${dart}Apex`, `${dart}Inner`, `${dart}Outer`] as const).some((name) => {
      const [was, is] = [before?.points[name], after?.points[name]];
      return was !== undefined && is !== undefined && apart(was.at, is.at) > SEWN;
    });
  });

function dartJobs(plan: Plan, half: PlanHalf, piece: Piece): readonly Job[] {
  const printed = named(plan.printed, piece.name);
  const traced = named(tracedOf(plan), piece.name);
  const isSideMoved =
    printed !== undefined &&
    traced?.points.sideWaist !== undefined &&
    Math.abs(at(traced, "sideWaist").x - at(printed, "sideWaist").x) > PENCIL;
  return piece.darts.flatMap(({ name, gathered }): readonly Job[] => {
    if (gathered === true) return [];
    const [end, inner, outer] = [at(piece, `${name}Apex`), at(piece, `${name}Inner`), at(piece, `${name}Outer`)];
    const drawn: Job = {
      piece: piece.name,
      kind: "dart",
      what: `${name}${isLate(half.alterations, piece.name, name) ? " at last" : ""}`,
      figures: [
        apart(inner, outer),
        apart(end, inner),
        apart(end, outer),
        ...[end, inner, outer].flatMap(({ x, y }) => [x, y]),
      ],
    };
    const { truing } = invariant(
      half.darts.find(({ ref }) => ref.piece === piece.name && ref.dart === name),
      name,
    );
    const amount = Math.max(Math.abs(truing.inner), Math.abs(truing.outer));
    const folded: Job = { piece: piece.name, kind: "trueDart", what: name, figures: [amount] };
    if (isOther(printed, piece, name)) return [drawn, folded];
    // Printed as it is, it is still folded where the side seam is drawn anew across it.
    return name === "sideDart" && isSideMoved ? [folded] : [];
  });
}

const FRONTS: readonly PieceName[] = ["front", "centreFront", "sideFront", "cup", "frontBand"];
/** What is sewn to what, told here once more by hand; the back shoulder is drafted 6 mm longer and eased in. */
const SEWN_TOGETHER: readonly (readonly [SeamName, readonly PieceName[], readonly PieceName[], number])[] = [
  ["shoulder", ["back"], FRONTS, 6],
  ["princess", ["sideFront"], ["centreFront"], 0],
  ["side", ["back"], ["front", "sideFront", "cup"], 0],
  ["side", ["backBand"], ["frontBand"], 0],
  ["side", ["backBasque"], ["frontBasque"], 0],
  ["underBust", ["cup"], ["frontBand"], 0],
  ["underBust", ["back"], ["backBand"], 0],
  ["waist", FRONTS, ["frontBasque"], 0],
  ["waist", ["back", "backBand"], ["backBasque"], 0],
];

function walkJobs({ pieces }: PlanHalf): readonly Job[] {
  const having = (seam: SeamName, names: readonly PieceName[]): readonly PieceName[] =>
    ALL_PIECES.filter((name) => names.includes(name) && named(pieces, name)?.edges.some((edge) => edge.seam === seam));
  return SEWN_TOGETHER.flatMap(([seam, one, other, ease]): readonly Job[] => {
    const [first, second] = [having(seam, one), having(seam, other)];
    const [piece] = first;
    return piece === undefined || second.length === 0
      ? []
      : [{ piece, kind: "walk", what: `${seam} of ${first.join("+")} along ${second.join("+")}`, figures: [ease] }];
  });
}

/** All there is to do on one half, in no order. */
export const jobsOfHalf = (plan: Plan, half: PlanHalf): readonly Job[] => [
  ...tracedOf(plan).flatMap((piece) => tracingJobs(plan, half, piece)),
  ...bustJobs(plan),
  ...half.alterations.flatMap(alterationJobs),
  // Lengths come right where the points are put: what is drawn by hand is what bends.
  ...half.truing
    .filter(({ what }) => what === "seamSmoothed" || what === "cornerSquared")
    .map(({ piece, seam, what, point, amount }): Job => ({
      piece,
      kind: "trued",
      what: `${seam} ${what} ${point ?? "-"}`,
      figures: [amount],
    })),
  ...half.pieces.flatMap((piece) => dartJobs(plan, half, piece)),
  ...walkJobs(half),
];

/** Where points and necklines come to lie is held by following the sheet (tests/follower), not by this list. */
export const isPlaces = ({ step }: ChecklistItem): boolean => step.kind === "places" || step.kind === "neckline";

/** An item of the order of work, as a job of the same shape. */
export function jobOf({ piece, step, amount }: ChecklistItem): Job {
  const { kind } = step;
  const job = (what: string, figures: readonly number[]): Job => ({ piece, kind, what, figures });
  switch (step.kind) {
    case "trace":
      return job(`${step.size} ${step.cup ?? "-"}`, []);
    case "blend":
      return job(`${step.cutLine.level} from ${step.from}`, [step.taken]);
    case "bust":
      return job("", [amount, step.whole]);
    case "alteration": {
      const { what } = step.planned;
      const figures = what.kind === "alteration" ? figuresOf(step.planned, what.alteration) : [];
      return job(step.planned.id, [amount, ...figures.slice(1)]);
    }
    case "trued": {
      const { seam, what, point } = step.change;
      return job(`${seam} ${what} ${point ?? "-"}`, [step.change.amount]);
    }
    case "dart": {
      const { legInner, legOuter, apex, inner, outer } = step.figures;
      return job(`${step.dart.dart}${step.late ? " at last" : ""}`, [
        amount,
        legInner,
        legOuter,
        ...[apex, inner, outer].flatMap(({ x, y }) => [x, y]),
      ]);
    }
    case "places":
    case "neckline":
      return job("", []);
    case "trueDart":
      return job(step.dart.dart, [amount]);
    case "level":
      return job("", [step.level.amount]);
    case "walk":
      return job(`${step.seam} of ${step.first.join("+")} along ${step.second.join("+")}`, [step.ease]);
  }
}

/** The largest difference between the figures of two jobs of one name. */
export const figuresApart = (a: Job, b: Job): number =>
  a.figures.length === b.figures.length
    ? Math.max(0, ...a.figures.map((figure, i) => Math.abs(figure - invariant(b.figures[i], "figure"))))
    : Infinity;

/** The trade's order on a piece; darts that later jobs move are drawn after those. */
const ORDER = [
  "trace",
  "blend",
  "length",
  "bust",
  "darts",
  "dart",
  "widths",
  "edges",
  "dart at last",
  "places",
  "trued",
  "trueDart",
  "neckline",
];

function rankOf({ step }: ChecklistItem): number {
  if (step.kind === "alteration") return ORDER.indexOf(step.planned.phase);
  return ORDER.indexOf(step.kind === "dart" && step.late ? "dart at last" : step.kind);
}

const isSorted = (ranks: readonly number[]): boolean =>
  ranks.every((rank, i) => rank >= 0 && rank >= (ranks[i - 1] ?? 0));

/** What the order of work of one half tells too early or too late. */
export function wrongOrder({ alterations }: Work, checklist: readonly ChecklistItem[]): readonly string[] {
  const firstWalk = checklist.findIndex(({ step }) => step.kind === "walk");
  const [jobs, walks] = [checklist.slice(0, firstWalk), checklist.slice(firstWalk)];
  const pieces = jobs.map(({ piece }) => ALL_PIECES.indexOf(piece));
  const asMade = alterations.map(({ id }) => id);
  return [
    ...(walks.every(({ step }) => step.kind === "walk") ? [] : ["a job after the seams were walked"]),
    ...(isSorted(pieces) ? [] : ["a piece taken up twice, or out of turn"]),
    ...ALL_PIECES.flatMap((piece) => {
      const own = jobs.filter((job) => job.piece === piece);
      const made = ["length", "bust", "darts", "widths", "edges"].map((phase) =>
        own.flatMap(({ step }) =>
          step.kind === "alteration" && step.planned.phase === phase ? [asMade.indexOf(step.planned.id)] : [],
        ),
      );
      return [
        ...(isSorted(own.map(rankOf)) ? [] : [`${piece}: ${own.map(({ step }) => step.kind).join(" ")}`]),
        ...(made.every(isSorted) ? [] : [`${piece}: alterations of one phase in another order than they are made in`]),
      ];
    }),
  ];
}
