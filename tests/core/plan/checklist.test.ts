/**
 * The jobs on a piece, one kind at a time, on a rectangle of 100 by 200 with two darts whose points are moved by hand: every
 * figure is read off it.
 */
import { describe, expect, it } from "vitest";
import type { AlterationTrace } from "../../../src/core/alterations/outcome/trace";
import type { DartFigures } from "../../../src/core/dart/dartFigures";
import type { Alteration } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import type { RedrawnNeckline } from "../../../src/core/neckline/redrawNeckline";
import type { DartName, Piece, PieceName, PointName } from "../../../src/core/pattern/piece";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { listWork, type ChecklistInputs } from "../../../src/core/plan/checklist";
import type { ChecklistItem, CutLine, PlannedAlteration, PlannedDart } from "../../../src/core/plan/plan";
import { fail, ok } from "../../../src/core/result";
import type { Sizing } from "../../../src/core/sizing/sizing";
import type { TruingChange } from "../../../src/core/truing/changes";
import { radians } from "../../../src/core/units";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { ref } from "../../support/dartRef";

type Places = Readonly<Partial<Record<PointName, readonly [number, number]>>>;

const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 0, "neck"],
  ["underarm", 100, 0, "side"],
  ["sideDartInner", 100, 60, "side", "sideDart"],
  ["sideDartOuter", 100, 80, "side"],
  ["sideWaist", 100, 200, "waist"],
  ["waistDartOuter", 60, 200, "waist", "waistDart"],
  ["waistDartInner", 40, 200, "waist"],
  ["centreWaist", 0, 200, "centre"],
];
const INSIDE: Places = {
  waistDartApex: [50, 120],
  sideDartApex: [60, 70],
  bustPoint: [50, 100],
  sideNeck: [30, -20],
};

/** The rectangle with some of its points elsewhere. */
function piece(moved: Places = {}, name: PieceName = "front"): Piece {
  return cornerPiece({
    name,
    corners: CORNERS.map(([corner, x, y, ...rest]): CornerOf => [corner, ...(moved[corner] ?? [x, y]), ...rest]),
    inside: { ...INSIDE, ...Object.fromEntries(Object.entries(moved).filter(([corner]) => corner in INSIDE)) },
    darts: [dartFor("waistDart", "waist", "bustPoint"), dartFor("sideDart", "side", "bustPoint")],
  });
}

const tissue = piece();

const SIZING: Sizing = {
  baseSize: {
    label: "12",
    index: 3,
    chosenBy: "bust",
    found: 3,
    byBust: true,
    lookedUp: 900,
    chartValue: 900,
    from: 880,
    to: 920,
    beyond: 0,
    margin: 20,
    runnerUp: null,
    spread: 5,
    probability: 0,
    borderline: false,
  },
  cup: {
    label: "D",
    chosenBy: "wearer",
    difference: 100,
    drafted: 100,
    margin: 10,
    runnerUp: null,
    spread: 5,
    probability: 0,
    borderline: false,
  },
  bust: {
    difference: 100,
    drafted: 900,
    residual: 0,
    asked: 0,
    alteration: 0,
    leftAlone: true,
    chosenBy: "residual",
  },
  alternatives: [],
};

/** Nothing but the tissue, traced and left as it is. */
const inputs = (more: Partial<ChecklistInputs> = {}): ChecklistInputs => ({
  printed: [tissue],
  traced: { front: tissue },
  pieces: { front: tissue },
  drawn: { front: tissue },
  neckline: null,
  sizing: SIZING,
  cutLines: [],
  darts: [],
  alterations: [],
  truing: [],
  levelled: null,
  bustPiece: "front",
  bustPoint: { own: null },
  twice: new Set(),
  ...more,
});
type Kind = ChecklistItem["step"]["kind"];
type Job<K extends Kind> = ChecklistItem & { readonly step: Extract<ChecklistItem["step"], { readonly kind: K }> };
const isJob = <K extends Kind>(item: ChecklistItem, kind: K): item is Job<K> => item.step.kind === kind;
const jobs = <K extends Kind>(kind: K, more: Partial<ChecklistInputs>) =>
  listWork(inputs(more)).flatMap((item) => (isJob(item, kind) ? [item] : []));
const kinds = (more: Partial<ChecklistInputs>): readonly Kind[] => listWork(inputs(more)).map(({ step }) => step.kind);

const trace = (more: Partial<AlterationTrace> = {}): AlterationTrace => ({
  piece: "front",
  surgery: [],
  values: {},
  before: {},
  after: {},
  moved: [],
  seam: null,
  seamBefore: 0,
  seamUngiven: 0,
  seamAfter: 0,
  given: [],
  notes: [],
  ...more,
});
const planned = (
  alteration: Alteration,
  more: Partial<AlterationTrace> = {},
  phase: PlannedAlteration["phase"] = "darts",
): PlannedAlteration => ({
  id: alteration.id,
  source: "wearer",
  phase,
  piece: "front",
  what: { kind: "alteration", alteration },
  outcome: ok(trace(more)),
});
const refused = (one: PlannedAlteration): PlannedAlteration => ({
  ...one,
  outcome: fail({ code: "alteration/too-much", most: 1 }),
});
const waistDart = ref("front", "waistDart");
const fit = (name: FitName, amount = 6): Alteration => ({ kind: "fit", id: name, fit: name, amount });
const end = (shorten: number, across = 0): Alteration => ({
  kind: "dartEnd",
  id: "end",
  dart: waistDart,
  shorten,
  across,
  hold: "mouth",
  giveBack: {},
});
const mouth = (inner: number, outer: number): Alteration => ({
  kind: "dartMouth",
  id: "mouth",
  dart: waistDart,
  inner,
  outer,
  giveBack: {},
});
const place = (by: number, dart = waistDart): Alteration => ({
  kind: "dartPlace",
  id: "place",
  dart,
  by,
  how: "redraw",
  giveBack: {},
});
const gather: Alteration = { kind: "dartGather", id: "gather", dart: waistDart };

describe("what is traced", () => {
  it("is each piece of the pattern by its size and, where the cups differ, its cup, in the order of the garment", () => {
    const names: readonly PieceName[] = [
      "back",
      "front",
      "centreFront",
      "sideFront",
      "cup",
      "frontBand",
      "frontBasque",
    ];
    const all = setOf(names.map((name) => piece({}, name)));
    const twice = new Set<PieceName>(["back", "cup"]);
    const traced = jobs("trace", { printed: [], traced: all, pieces: all, twice });
    expect(traced.map(({ piece: name, step, amount }) => [name, step.size, step.cup, step.isTwice, amount])).toEqual([
      ["front", "12", "D", false, 0],
      ["centreFront", "12", "D", false, 0],
      ["sideFront", "12", "D", false, 0],
      ["cup", "12", "D", true, 0],
      ["frontBand", "12", null, false, 0],
      ["back", "12", null, true, 0],
      ["frontBasque", "12", null, false, 0],
    ]);
  });

  it("is no piece that a seam made later on; what was traced and parted has its job of tracing alone", () => {
    const parted = [piece({}, "centreFront"), piece({}, "sideFront")];
    const made = listWork(inputs({ pieces: setOf(parted) })).filter(({ step }) => step.kind !== "walk");
    expect(made.map(({ piece: name, step }) => [name, step.kind])).toEqual([["front", "trace"]]);
  });

  it("has her own bust point marked on the piece that carries it: out and down from what is printed", () => {
    const own = piecePoint(54, 103);
    const marked = (more: Partial<ChecklistInputs> = {}) =>
      jobs("trace", { bustPoint: { own }, ...more }).map(({ step }) => step.own);
    // From (30, -20) it is 24 out and 123 down; from (50, 100) it is 4 and 3.
    const mark = {
      fromCentre: 54,
      fromSideNeck: expect.closeTo(Math.hypot(24, 123), 9),
      fromPrinted: { out: 4, down: 3 },
      isMoved: false,
    };
    expect(marked()).toEqual([mark]);
    expect(marked({ bustPoint: { own: null } })).toEqual([null]);
    expect(marked({ bustPiece: "cup" })).toEqual([null]);
    expect(marked({ printed: [] })).toEqual([null]);
    const { sideNeck: _neck, bustPoint: _bust, ...points } = tissue.points;
    expect(marked({ printed: [{ ...tissue, points }] })).toEqual([{ ...mark, fromSideNeck: null, fromPrinted: null }]);
    const longer = planned(fit("lengthAboveBust"), { after: { front: tissue } }, "length");
    expect(marked({ alterations: [longer] })).toEqual([{ ...mark, isMoved: true }]);
    expect(marked({ alterations: [refused(longer)] })).toEqual([mark]);
    expect(marked({ alterations: [planned(fit("swayBack"), { after: { back: tissue } }, "length")] })).toEqual([mark]);
  });
});

const line = (more: Partial<CutLine> = {}): CutLine => ({
  piece: "front",
  level: "waist",
  between: ["12", "14"],
  share: 0.6,
  offset: 6,
  alterationMove: 0,
  at: piecePoint(106, 200),
  ...more,
});
const wider = piece({ sideWaist: [106, 200] });
/** The blend has put the side waist 6 out; it came to lie there. */
const blended = (x = 106, y = 200, more: Partial<ChecklistInputs> = {}): Partial<ChecklistInputs> => ({
  traced: { front: wider },
  pieces: { front: piece({ sideWaist: [x, y] }) },
  cutLines: [line()],
  ...more,
});

describe("a line of the blend", () => {
  it("is marked on its own piece, from where it leaves the traced one; at the bust there is none", () => {
    const band = (name: PieceName) => ({
      traced: { [name]: piece({}, name) },
      pieces: { [name]: piece({}, name) },
      cutLines: [line({ piece: name })],
    });
    const from = (more: Partial<ChecklistInputs>) => jobs("blend", more).map(({ step }) => step.from);
    expect(from(blended())).toEqual(["bust"]);
    expect(from(band("back"))).toEqual(["bust"]);
    expect([from(band("frontBand")), from(band("backBand"))]).toEqual([["underBust"], ["underBust"]]);
    expect([from(band("frontBasque")), from(band("backBasque"))]).toEqual([["hip"], ["hip"]]);
    expect(jobs("blend", { cutLines: [line({ level: "bust" }), line({ piece: "back" })] })).toEqual([]);
    expect(jobs("blend", blended())).toMatchObject([{ piece: "front", amount: 6, step: { taken: 0 } }]);
  });

  it("says by itself where the side waist lies, but for a height that moved, which is told from the mark", () => {
    const places = (more: Partial<ChecklistInputs>) =>
      jobs("places", more).flatMap(({ step }) => step.places.filter(({ point }) => point === "sideWaist"));
    const out = (by: number, down = 0) => ({ point: "sideWaist", from: "sideWaist", out: by, down });
    expect(places(blended())).toEqual([]);
    expect(places(blended(106.5))).toEqual([]);
    expect(places(blended(106.75))).toEqual([out(6.75)]);
    expect(places(blended(105.25))).toEqual([out(5.25)]);
    // Half a millimetre is read as nothing.
    expect(places(blended(106, 200.5))).toEqual([]);
    expect(places(blended(106, 203))).toEqual([{ ...out(0, 3), isFromMark: true }]);
    expect(places(blended(106, 197))).toEqual([{ ...out(0, -3), isFromMark: true }]);
    expect(places(blended(107, 203))).toEqual([out(7, 3)]);
    // Of another piece, or without one, it says nothing.
    expect(places({ ...blended(), cutLines: [] })).toEqual([out(6)]);
    expect(places({ ...blended(), printed: [] })).toEqual([]);
  });

  it("at the hip of a basque leads on to the hem below, where that lies as far out and no lower", () => {
    const basque = (hip: number, hem: number, down = 0): Piece =>
      cornerPiece({
        name: "frontBasque",
        corners: [
          ["centreWaist", 0, 0, "waist"],
          ["sideWaist", 90, 0, "side"],
          ["sideHip", 90 + hip, 100, "side"],
          ["sideHem", 90 + hem, 150 + down, "hem"],
          ["centreHem", 0, 150, "centre"],
        ],
      });
    const told = (hem: number, down = 0) => {
      const made = { frontBasque: basque(8, hem, down) };
      const cutLines = [line({ piece: "frontBasque", level: "hip", offset: 8 })];
      const [places] = jobs("places", { printed: [basque(0, 0)], traced: made, pieces: made, cutLines });
      const [blend] = jobs("blend", { printed: [basque(0, 0)], traced: made, pieces: made, cutLines });
      expect(blend?.step.from).toBe("waist");
      return places?.step.places.map(({ point, out, down: by }) => [point, out, by]) ?? [];
    };
    expect(told(8)).toEqual([]);
    expect(told(8.5)).toEqual([]);
    expect(told(9)).toEqual([["sideHem", 9, 0]]);
    expect(told(8, 0.75)).toEqual([["sideHem", 8, 0.75]]);
    expect(told(7.8, 0.3)).toEqual([]);
  });

  it("has taken off at once what darts give to the side seam at the waist, where nothing else moves it", () => {
    const given = (amount: number, more: Partial<AlterationTrace["given"][number]> = {}) =>
      ({ place: "sideSeam", piece: "front", amount, ...more }) as const;
    const narrower = (...of: AlterationTrace["given"]) => planned(mouth(-2, -2), { seam: "waist", given: of });
    const blend = (x: number, ...alterations: readonly PlannedAlteration[]) =>
      jobs("blend", { ...blended(x), alterations }).map(({ amount, step }) => [amount, step.taken]);
    // 4 off the waist on the side seam: it lies 4 further in than the blend alone has it.
    expect(blend(102, narrower(given(4)))).toEqual([[2, 4]]);
    expect(blend(101.5, narrower(given(4)))).toEqual([[2, 4]]);
    expect(blend(101.25, narrower(given(4)))).toEqual([[6, 0]]);
    expect(blend(102.75, narrower(given(4)))).toEqual([[6, 0]]);
    expect(blend(101, narrower(given(3), given(1)), narrower(given(1)))).toEqual([[1, 5]]);
    expect(blend(108, narrower(given(-2)))).toEqual([[8, -2]]);
    // At the centre, on another piece, in another seam, by a fit, or left out: nothing is taken there.
    expect(blend(106, narrower(given(4, { place: "centreSeam" }), given(4, { piece: "back" })))).toEqual([[6, 0]]);
    expect(blend(102, narrower(given(4, { piece: "back" }), given(4)))).toEqual([[2, 4]]);
    expect(blend(106, planned(mouth(-2, -2), { seam: "side", given: [given(4)] }))).toEqual([[6, 0]]);
    expect(blend(106, planned(fit("sideSeamWaist"), { seam: "waist", given: [given(4)] }))).toEqual([[6, 0]]);
    expect(blend(106, refused(narrower(given(4))))).toEqual([[6, 0]]);
    // At the hip of a basque no dart gives anything.
    const hip = cornerPiece({
      name: "frontBasque",
      corners: [
        ["centreWaist", 0, 0, "waist"],
        ["sideWaist", 90, 0, "side"],
        ["sideHip", 94, 100, "side"],
        ["centreHip", 0, 100, "centre"],
      ],
    });
    const [atHip] = jobs("blend", {
      traced: { frontBasque: hip },
      pieces: { frontBasque: hip },
      cutLines: [line({ piece: "frontBasque", level: "hip" })],
      alterations: [narrower(given(0.25, { piece: "frontBasque" }))],
    });
    expect(atHip?.step.taken).toBe(0);
  });
});

describe("an alteration", () => {
  const done = (...alterations: readonly PlannedAlteration[]) =>
    jobs("alteration", { alterations }).map(({ step, amount }) => [step.planned.id, amount]);
  const front: PieceSet = { front: tissue };

  it("of the body is done on each piece that it changed", () => {
    expect(done(planned(fit("chestWidth"), { before: front, after: front }))).toEqual([["chestWidth", 6]]);
    expect(done(planned(fit("chestWidth"), { before: {}, after: { back: tissue } }))).toEqual([]);
    expect(done(refused(planned(fit("chestWidth"), { after: front })))).toEqual([]);
  });

  it("of a dart is done on that dart's piece, unless it asks for nothing and nothing moved", () => {
    const at = { piece: "front", from: piecePoint(0, 0), to: piecePoint(0, 1) } as const;
    expect(done(planned(end(0)))).toEqual([]);
    expect(done(planned(end(0), { moved: [at] }))).toEqual([["end", 0]]);
    expect(done(planned(end(5)))).toEqual([["end", 5]]);
    expect(done(planned(end(0, -3)))).toEqual([["end", -3]]);
    expect(done(planned(end(5, -3)))).toEqual([["end", 5]]);
    expect(done(planned(mouth(0, 0)))).toEqual([]);
    expect(done(planned(mouth(2, 0)))).toEqual([["mouth", 2]]);
    expect(done(planned(mouth(0, 3)))).toEqual([["mouth", 3]]);
    expect(done(planned(mouth(2, 3)))).toEqual([["mouth", 5]]);
    expect(done(planned(place(0)))).toEqual([]);
    expect(done(planned(place(4)))).toEqual([["place", 4]]);
    expect(done(planned(place(4, ref("back", "waistDart"))))).toEqual([]);
  });

  it("that makes another thing of a dart is done where its piece is another", () => {
    expect(done(planned(gather))).toEqual([]);
    expect(done(planned(gather, { before: front, after: { front: wider } }))).toEqual([["gather", 0]]);
    const other: PieceSet = { front: wider };
    const changed = { before: front, after: other };
    expect(done(planned({ kind: "dartLegs", id: "legs", dart: waistDart, bow: -2 }, changed))).toEqual([["legs", -2]]);
    expect(done(planned({ kind: "dartSplit", id: "two", dart: waistDart, into: 2 }, changed))).toEqual([["two", 0]]);
    expect(done(planned({ kind: "dartPivot", id: "p", dart: waistDart, to: "side", share: 1 }, changed))).toEqual([
      ["p", 0],
    ]);
  });

  it("of the blend is none: its line is marked", () => {
    const blend: PlannedAlteration = {
      ...planned(fit("chestWidth"), { after: front }),
      what: { kind: "blend", level: "waist", cutLine: line() },
    };
    expect(done(blend)).toEqual([]);
    expect(kinds({ alterations: [blend] })).toEqual(["trace"]);
  });

  it("of the bust is spread on the half, about a point so far from the underarm", () => {
    const hinge = (...hinges: readonly PiecePoint[]) =>
      ({ piece: "front", cuts: [], hinges, parts: [], rest: [], area: 0 }) as const;
    const bust = (more: Partial<AlterationTrace>): PlannedAlteration => ({
      ...planned(fit("chestWidth"), more, "bust"),
      what: { kind: "bust", amount: 20, asked: 24, spread: 10, drop: 7, turn: radians(0.1) },
    });
    const spread = (more: Partial<AlterationTrace>) =>
      jobs("bust", { alterations: [bust(more)] }).map(({ amount, step }) => [
        amount,
        step.spread,
        step.whole,
        step.drop,
        step.hinge,
      ]);
    // The underarm is at (100, 0): 3 in and 4 down.
    const turned = { before: front, after: front, surgery: [hinge(piecePoint(97, 4), piecePoint(0, 0))] };
    expect(spread(turned)).toEqual([[10, 10, 20, 7, 5]]);
    expect(spread({ ...turned, surgery: [] })).toEqual([[10, 10, 20, 7, 0]]);
    expect(spread({ ...turned, surgery: [{ ...hinge(piecePoint(97, 4)), piece: "back" }] })).toEqual([
      [10, 10, 20, 7, 0],
    ]);
    expect(spread({ ...turned, before: {} })).toEqual([[10, 10, 20, 7, 0]]);
    expect(spread({ ...turned, after: { cup: tissue } })).toEqual([]);
    expect(jobs("bust", { alterations: [refused(bust(turned))] })).toEqual([]);
    expect(jobs("alteration", { alterations: [bust(turned)] })).toEqual([]);
  });
});

describe("a centre let in", () => {
  it("is let in on the piece that it lies on", () => {
    const levelled = (after: PieceSet) => ({ amount: 4, trace: trace({ after }) });
    const letIn = (after: PieceSet) =>
      jobs("level", { levelled: levelled(after) }).map(({ piece: name, amount, step }) => [
        name,
        amount,
        step.level.amount,
      ]);
    expect(letIn({ front: tissue })).toEqual([["front", 4, 4]]);
    expect(letIn({ back: tissue })).toEqual([]);
  });
});

describe("points and lines put on the tissue", () => {
  it("are told once for each piece, with what stayed to lay it by, or not at all", () => {
    expect(kinds({})).toEqual(["trace"]);
    const [moved] = jobs("places", { pieces: { front: piece({ underarm: [100, -4] }) } });
    expect(moved).toMatchObject({
      piece: "front",
      amount: 0,
      step: { places: [{ point: "underarm", out: 0, down: -4 }], lengths: [], stayed: ["centreNeck", "centreWaist"] },
    });
    expect(jobs("places", { pieces: {} })).toEqual([]);
  });

  it("are also where a line alone is another", () => {
    const bowed: Piece = {
      ...tissue,
      edges: tissue.edges.map((edge) =>
        edge.seam === "neck" ? { ...edge, curve: { c1: piecePoint(30, 20), c2: piecePoint(70, 20) } } : edge,
      ),
    };
    const [job] = jobs("places", { pieces: { front: bowed } });
    expect(job?.step.places).toEqual([]);
    expect(job?.step.lengths.map(({ seam }) => seam)).toEqual(["neck"]);
  });
});

describe("what is trued", () => {
  it("by hand is a seam that bends and a corner; lengths come right where points are put", () => {
    const change = (what: TruingChange["what"], name: PieceName = "front"): TruingChange => ({
      piece: name,
      seam: "side",
      what,
      point: null,
      amount: 2,
    });
    const truing = [
      change("seamWalked"),
      change("seamSmoothed"),
      change("cornerSquared"),
      change("legsEqualled"),
      change("seamSmoothed", "back"),
    ];
    expect(jobs("trued", { truing }).map(({ piece: name, amount, step }) => [name, amount, step.change.what])).toEqual([
      ["front", 0, "seamSmoothed"],
      ["front", 0, "cornerSquared"],
    ]);
  });
});

const at = (x: number, y: number): PiecePoint => piecePoint(x, y);
const figures = (apex: PiecePoint, inner: PiecePoint, outer: PiecePoint): DartFigures => ({
  apex,
  inner,
  outer,
  legInner: Math.hypot(apex.x - inner.x, apex.y - inner.y),
  legOuter: Math.hypot(apex.x - outer.x, apex.y - outer.y),
  intake: Math.hypot(outer.x - inner.x, outer.y - inner.y),
  angle: radians(0.25),
  fullness: 10,
  end: null,
});
/** Straight up and down: 80 long, 20 wide. */
const PRINTED = figures(at(50, 120), at(40, 200), at(60, 200));
const plannedDart = (drawn: DartFigures, more: Partial<PlannedDart> = {}): PlannedDart => ({
  ref: waistDart,
  printed: PRINTED,
  wanted: null,
  drawn,
  coneRadius: 80,
  verdict: "asWanted",
  bySight: null,
  endJudged: null,
  usualStop: null,
  truing: { inner: -0.5, outer: 0.3 },
  giveBackPlaces: [],
  ...more,
});
const lower = plannedDart(figures(at(50, 130), at(40, 200), at(60, 200)));

describe("a dart", () => {
  const isDrawn = (one: PlannedDart, more: Partial<ChecklistInputs> = {}) =>
    jobs("dart", { darts: [one], ...more }).length;

  it("is drawn where it is another by more than a millimetre: its width, its end, a leg; legs that only reach on are not", () => {
    expect(isDrawn(plannedDart(PRINTED))).toBe(0);
    expect(isDrawn(plannedDart(PRINTED, { printed: null }))).toBe(1);
    expect(isDrawn(lower)).toBe(1);
    expect(isDrawn(plannedDart({ ...PRINTED, apex: at(50, 121) }))).toBe(0);
    expect(isDrawn(plannedDart({ ...PRINTED, apex: at(50, 121.1) }))).toBe(1);
    expect(isDrawn(plannedDart({ ...PRINTED, intake: 21 }))).toBe(0);
    expect(isDrawn(plannedDart({ ...PRINTED, intake: 21.1 }))).toBe(1);
    expect(isDrawn(plannedDart({ ...PRINTED, intake: 18.9 }))).toBe(1);
    // A leg goes 10 out in 80 down: 1 across is 80/√6500 = 0.992 square off it, 1.1 is 1.09.
    expect(isDrawn(plannedDart({ ...PRINTED, inner: at(41, 200) }))).toBe(0);
    expect(isDrawn(plannedDart({ ...PRINTED, inner: at(41.1, 200) }))).toBe(1);
    expect(isDrawn(plannedDart({ ...PRINTED, outer: at(59, 200) }))).toBe(0);
    expect(isDrawn(plannedDart({ ...PRINTED, outer: at(58.9, 200) }))).toBe(1);
    expect(isDrawn(plannedDart({ ...PRINTED, inner: at(39, 208), outer: at(61, 208) }))).toBe(0);
  });

  it("is told by where it lies, how wide it is, and what its end goes by", () => {
    const front = piece({ waistDartApex: [50, 130] });
    const [job] = jobs("dart", { darts: [lower], pieces: { front }, bustPoint: { own: at(54, 103) } });
    expect(job).toEqual({
      piece: "front",
      amount: 20,
      step: {
        kind: "dart",
        dart: waistDart,
        figures: lower.drawn,
        places: {
          inner: { point: "waistDartInner", from: "waistDartInner", out: 0, down: 0 },
          outer: { point: "waistDartOuter", from: "waistDartOuter", out: 0, down: 0 },
          apex: { point: "waistDartApex", from: "waistDartApex", out: 0, down: 10 },
        },
        isByOwnPoint: true,
        isBySight: false,
        isMovedAlready: false,
        late: false,
      },
    });
    const bare = jobs("dart", { darts: [{ ...lower, bySight: "pointed" }], printed: [] });
    expect(bare[0]?.step).toMatchObject({ places: null, isByOwnPoint: false, isBySight: true });
    expect(isDrawn({ ...lower, ref: ref("back", "waistDart") })).toBe(0);
  });

  it("that is gathered has no legs to draw, nor anything to true", () => {
    const gathered = (name: DartName): Piece => ({
      ...tissue,
      darts: tissue.darts.map((one) => (one.name === name ? { ...one, gathered: true } : one)),
    });
    expect(isDrawn(lower, { pieces: { front: gathered("waistDart") } })).toBe(0);
    expect(isDrawn(lower, { pieces: { front: gathered("sideDart") } })).toBe(1);
    expect(jobs("trueDart", { darts: [lower], pieces: { front: gathered("waistDart") } })).toEqual([]);
  });

  it("has its mouth told where it is drawn, else with the other points", () => {
    const front = piece({ waistDartInner: [38, 200] });
    const told = (...darts: readonly PlannedDart[]) =>
      jobs("places", { pieces: { front }, darts }).flatMap(({ step }) => step.places.map(({ point }) => point));
    expect(told()).toEqual(["waistDartInner"]);
    expect(told(plannedDart(PRINTED))).toEqual(["waistDartInner"]);
    expect(told(lower)).toEqual([]);
    expect(told({ ...lower, ref: ref("back", "waistDart") })).toEqual(["waistDartInner"]);
  });

  it("is drawn late where something after the darts moves its end or its mouth by more than a millimetre", () => {
    const moved = (places: Places, phase: PlannedAlteration["phase"] = "edges") =>
      jobs("dart", {
        darts: [lower],
        alterations: [
          planned(fit("armholeDepth"), { before: { front: tissue }, after: { front: piece(places) } }, phase),
        ],
      }).map(({ step }) => step.late)[0];
    expect(moved({ waistDartApex: [50, 121] })).toBe(false);
    expect(moved({ waistDartApex: [50, 121.5] })).toBe(true);
    expect(moved({ waistDartInner: [38, 200] })).toBe(true);
    expect(moved({ waistDartOuter: [62, 200] })).toBe(true);
    expect(moved({ sideDartApex: [62, 75], underarm: [103, 0] })).toBe(false);
    expect(moved({ waistDartApex: [50, 124] }, "darts")).toBe(false);
    expect(moved({ waistDartApex: [50, 124] }, "widths")).toBe(true);
    const late = planned(fit("armholeDepth"), { before: { front: tissue }, after: { front: wider } }, "edges");
    const opened = { ...late, outcome: ok(trace({ before: {}, after: { front: piece({ waistDartApex: [9, 9] }) } })) };
    const step = (...alterations: readonly PlannedAlteration[]) =>
      jobs("dart", { darts: [lower], alterations }).map((job) => job.step.late);
    expect(step(opened)).toEqual([false]);
    expect(step(refused(late))).toEqual([false]);
  });

  it("is moved already where fits alone moved it that leave it whole", () => {
    const moving = (alteration: Alteration) =>
      planned(
        alteration,
        { before: { front: tissue }, after: { front: piece({ waistDartApex: [50, 130] }) } },
        "length",
      );
    const isMoved = (...alterations: readonly PlannedAlteration[]) =>
      jobs("dart", { darts: [lower], alterations }).map(({ step }) => step.isMovedAlready)[0];
    expect(isMoved()).toBe(false);
    for (const name of ["bustPointLevel", "lengthAboveBust", "sideSeamBust"] as const)
      expect(isMoved(moving(fit(name)))).toBe(true);
    expect(isMoved(moving(fit("swayBack")))).toBe(false);
    expect(isMoved(moving(fit("lengthAboveBust")), moving(end(4)))).toBe(false);
    expect(isMoved(moving(fit("lengthAboveBust")), planned(end(4)))).toBe(true);
    expect(isMoved(planned(fit("lengthAboveBust"), { before: { front: tissue }, after: { front: wider } }))).toBe(
      false,
    );
    const bust: PlannedAlteration = {
      ...moving(fit("lengthAboveBust")),
      what: { kind: "bust", amount: 1, asked: 1, spread: 1, drop: 1, turn: radians(0) },
    };
    expect(isMoved(bust)).toBe(false);
  });

  it("is trued by the most that either leg is, where it is drawn, or on a side seam that left the traced line", () => {
    const trued = (one: PlannedDart, more: Partial<ChecklistInputs> = {}) =>
      jobs("trueDart", { darts: [one], ...more }).map(({ piece: name, amount, step }) => [
        name,
        step.dart.dart,
        amount,
        step.amount,
      ]);
    expect(trued(plannedDart(PRINTED))).toEqual([]);
    expect(trued(lower)).toEqual([["front", "waistDart", 0.5, 0.5]]);
    expect(trued({ ...lower, truing: { inner: 0.2, outer: -0.7 } })).toEqual([["front", "waistDart", 0.7, 0.7]]);
    expect(trued({ ...lower, ref: ref("back", "waistDart") })).toEqual([]);
    const side = plannedDart(PRINTED, { ref: ref("front", "sideDart") });
    const out = (x: number): Partial<ChecklistInputs> => ({
      traced: { front: piece({ sideWaist: [x, 200] }) },
      cutLines: [line()],
    });
    expect(trued(side, out(106))).toEqual([["front", "sideDart", 0.5, 0.5]]);
    expect(trued(side, out(94))).toEqual([["front", "sideDart", 0.5, 0.5]]);
    expect(trued(side, out(100.5))).toEqual([]);
    expect(trued(plannedDart(PRINTED), out(106))).toEqual([]);
    expect(trued(side, { ...out(106), cutLines: [] })).toEqual([]);
    const back = piece({}, "back");
    expect(
      trued(side, {
        printed: [tissue, back],
        traced: { front: tissue, back: piece({ sideWaist: [106, 200] }, "back") },
        pieces: { front: tissue, back },
        cutLines: [line({ piece: "back" })],
      }),
    ).toEqual([]);
  });
});

describe("the last jobs", () => {
  it("are the new neckline on the pieces that it changed, and nothing where it cannot be had", () => {
    const drawn = { front: piece({ centreNeck: [0, 15] }) };
    const redrawn: RedrawnNeckline = {
      pieces: drawn,
      under: { front: tissue },
      before: 100,
      after: 101,
      front: { gape: 0, pinched: 0 },
      back: { gape: 0, pinched: 0 },
    };
    const edge = (neckline: ChecklistInputs["neckline"]) =>
      jobs("neckline", { neckline, drawn }).map(({ piece: name, amount, step }) => [name, amount, step.places.length]);
    expect(edge(ok(redrawn))).toEqual([["front", 0, 1]]);
    expect(edge(null)).toEqual([]);
    expect(jobs("neckline", { neckline: ok(redrawn) })).toEqual([]);
  });

  it("are the seams, of the pieces on either side those that have a part of it, with their ease", () => {
    const back = piece({}, "back");
    const walked = (pieces: PieceSet) =>
      jobs("walk", { traced: {}, pieces }).map(({ piece: name, amount, step }) => [
        name,
        step.seam,
        step.first,
        step.second,
        amount,
        step.ease,
      ]);
    expect(walked({ front: tissue, back: { ...back, seamEase: { side: 3 } } })).toEqual([
      ["back", "side", ["back"], ["front"], 3, 3],
    ]);
    // The waist of a bodice in two parts, of which one has none: the other alone is walked.
    const open: Piece = { ...tissue, name: "sideFront", edges: tissue.edges.filter(({ seam }) => seam !== "waist") };
    const basque = piece({}, "frontBasque");
    const parted = { centreFront: piece({}, "centreFront"), sideFront: open, frontBasque: basque };
    expect(walked(parted)).toContainEqual(["centreFront", "waist", ["centreFront"], ["frontBasque"], 0, 0]);
  });
});
