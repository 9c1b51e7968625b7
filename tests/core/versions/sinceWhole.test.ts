/** The whole way from one version's paper to another's, in short: what is said of each piece, reasoned from what was decided. */
import { describe, expect, it } from "vitest";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { Work } from "../../../src/core/decisions/work";
import type { Plan } from "../../../src/core/plan/plan";
import type { TruingChange } from "../../../src/core/truing/changes";
import { checklistSince, type PieceSince, type Since } from "../../../src/core/versions/checklistSince";
import { dartIn, planOf, ref, testWork, withAlterations } from "../../support/works";

const since = (from: Work, to: Work): Since => checklistSince(planOf(from), planOf(to));
const styled = (pattern: Partial<Work["pattern"]>): Work => ({
  ...testWork,
  pattern: { ...testWork.pattern, ...pattern },
});
const picked = (picks: Work["picks"]): Work => ({ ...testWork, picks });
const waistDart = ref("front", "waistDart");
const at = (half?: Half): { readonly half?: Half } => (half === undefined ? {} : { half });
const end = (shorten: number): Alteration => ({
  kind: "dartEnd",
  id: "end",
  dart: waistDart,
  shorten,
  across: 0,
  hold: "mouth",
  giveBack: {},
});
const mouth = (by: number): Alteration => ({
  kind: "dartMouth",
  id: "mouth",
  dart: waistDart,
  inner: by,
  outer: by,
  giveBack: { sideSeam: 1 },
});
const legs = (bow: number, piece: "front" | "back" = "front"): Alteration => ({
  kind: "dartLegs",
  id: `legs ${piece}`,
  dart: ref(piece, "waistDart"),
  bow,
});
const sway = (amount: number, half?: Half): Alteration => ({
  kind: "fit",
  id: "sway",
  fit: "swayBack",
  amount,
  ...at(half),
});
const slope = (amount: number, half?: Half): Alteration => ({
  kind: "fit",
  id: "slope",
  fit: "shoulderSlope",
  amount,
  ...at(half),
});

const named = (some: readonly PieceSince[]) =>
  some.map(({ piece, half }) => (half === null ? piece : `${piece} ${half}`));
/** Kinds of the steps of every piece that is worked on. */
const changes = ({ changed }: Since) =>
  Object.fromEntries(changed.map((one) => [named([one])[0] ?? "", one.items.map(({ step }) => step.kind)] as const));
const walks = (made: Since) =>
  made.walks.map(({ step }) =>
    step.kind === "walk" ? `${step.seam}: ${step.first.join()} ${step.second.join()}` : "",
  );

describe("pieces that are not worked on", () => {
  it("stay where nothing was decided otherwise, or where a bust altered by a cup is the next cup as it is drawn", () => {
    const all = ["front", "back", "frontBasque", "backBasque"];
    for (const [from, to] of [
      [testWork, testWork],
      // The draft makes its cups by the very alteration: 25 mm more are from B to C. Its tissue is another, its pieces are not.
      [picked({ cup: "B", baseSize: "12", bustAlteration: 25 }), picked({ cup: "C", baseSize: "12" })],
    ] as const) {
      const made = since(from, to);
      expect(named(made.stays)).toEqual(all);
      expect([made.changed, made.anew, made.gone, made.walks]).toEqual([[], [], [], []]);
    }
  });

  it("are gone, or made anew, where the pattern has others: a basque less or more, a front in two", () => {
    const shorter = since(testWork, styled({ length: "waist" }));
    expect([named(shorter.stays), named(shorter.gone), shorter.anew, walks(shorter)]).toEqual([
      ["front", "back"],
      ["frontBasque", "backBasque"],
      [],
      [],
    ]);
    const longer = since(styled({ length: "waist" }), testWork);
    expect([named(longer.stays), named(longer.gone), named(longer.anew)]).toEqual([
      ["front", "back"],
      [],
      ["frontBasque", "backBasque"],
    ]);
    expect(longer.anew.map(({ why }) => why)).toEqual(["notThere", "notThere"]);
    expect(walks(longer)).toEqual([
      "waist: front frontBasque",
      "waist: back backBasque",
      "side: backBasque frontBasque",
    ]);
    const princess = since(testWork, styled({ style: "princessArmhole" }));
    expect([named(princess.gone), princess.anew.map(({ piece, why }) => [piece, why])]).toEqual([
      ["front"],
      [
        ["centreFront", "notThere"],
        ["sideFront", "notThere"],
      ],
    ]);
    expect(named(princess.stays)).toEqual(["back", "frontBasque", "backBasque"]);
  });
});

describe("pieces made anew", () => {
  it("are told by the order of work of the new plan, but for the seams that are walked at the end", () => {
    const to = planOf(picked({ baseSize: "16" }));
    const made = checklistSince(planOf(testWork), to);
    expect(made.anew.map(({ piece, half, why }) => [piece, half, why])).toEqual(
      ["front", "back", "frontBasque", "backBasque"].map((piece) => [piece, null, "otherSize"]),
    );
    const told = made.anew.flatMap(({ items }) => items);
    expect(new Set([...told, ...made.walks])).toEqual(new Set(to.checklist));
    expect(told.some(({ step }) => step.kind === "walk")).toBe(false);
    for (const { piece, items } of made.anew) expect(items.every((item) => item.piece === piece)).toBe(true);
  });

  it("are those whose darts are others, or are gathered", () => {
    const pivot: Alteration = { kind: "dartPivot", id: "p", dart: ref("front", "sideDart"), to: "shoulder", share: 1 };
    const gather: Alteration = { kind: "dartGather", id: "g", dart: waistDart };
    for (const one of [pivot, gather]) {
      const made = since(testWork, withAlterations(one));
      expect(made.anew.map(({ piece, why }) => [piece, why])).toEqual([["front", "otherDarts"]]);
      expect(named(made.stays)).toEqual(["back", "frontBasque", "backBasque"]);
      expect(made.changed).toEqual([]);
      // What is sewn to the front is walked, the seams of the basque are not.
      expect(walks(made)).toEqual(["shoulder: back front", "side: back front", "waist: front frontBasque"]);
    }
  });

  it("of one half have what is done on both or on that half, and not what is done on the other", () => {
    const to = planOf({
      ...withAlterations(slope(6, "left"), slope(3, "right")),
      picks: { baseSize: "16" },
    });
    const made = checklistSince(planOf(testWork), to);
    const own = made.anew.filter(({ half }) => half !== null);
    expect(named(own)).toEqual(["front left", "back left", "front right", "back right"].toSorted(inPlan));
    for (const { half, items } of own) {
      expect(items.some((item) => item.half === half)).toBe(true);
      expect(items.some((item) => item.half === undefined)).toBe(true);
      expect(items.every((item) => item.half === undefined || item.half === half)).toBe(true);
    }
  });
});

/** Piece by piece, the left half first. */
const inPlan = (a: string, b: string): number => {
  const place = (name: string): number => Number(name.startsWith("back")) * 2 + Number(name.endsWith("right"));
  return place(a) - place(b);
};

describe("a dart that ends elsewhere", () => {
  it("is told whole: the paper taken up, what is other, the dart as it is now, where it lies, and its legs trued", () => {
    const to = planOf(withAlterations(end(10)));
    const { drawn } = dartIn(to, "front", "waistDart");
    const made = checklistSince(planOf(testWork), to);
    expect(changes(made)).toEqual({ front: ["takeUp", "altered", "dart", "trueDart"] });
    const [takeUp, altered, dart, trued] = made.changed[0]?.items ?? [];
    expect(takeUp).toEqual({ piece: "front", amount: 0, step: { kind: "takeUp", isTwice: false } });
    expect(altered).toEqual({
      piece: "front",
      amount: 10,
      step: {
        kind: "altered",
        row: { half: null, before: null, after: end(10), by: 10, isChanged: true },
        trace: null,
      },
    });
    const still = (point: string) => ({ point, from: point, out: 0, down: 0 });
    expect(dart).toEqual({
      piece: "front",
      amount: drawn.intake,
      step: {
        kind: "dart",
        dart: waistDart,
        figures: drawn,
        places: {
          inner: still("waistDartInner"),
          outer: still("waistDartOuter"),
          // Its axis stands upright: shortened by 10 it ends 10 lower.
          apex: { ...still("waistDartApex"), out: expect.closeTo(0, 6), down: expect.closeTo(10, 6) },
        },
        // The bust point of the body was measured, width and depth.
        isByOwnPoint: true,
        isBySight: false,
        isMovedAlready: false,
        late: false,
      },
    });
    // Both legs are as long as before against each other, so nothing is left to true.
    expect(trued).toEqual({ piece: "front", amount: 0, step: { kind: "trueDart", dart: waistDart, amount: 0 } });
    expect(named(made.stays)).toEqual(["back", "frontBasque", "backBasque"]);
    expect(walks(made)).toEqual(["shoulder: back front", "side: back front", "waist: front frontBasque"]);
  });

  // Half a millimetre is what a hand sees on paper.
  it("is told from what a hand can draw on, and not under it", () => {
    const pieces = (a: Alteration, b: Alteration) =>
      since(withAlterations(a), withAlterations(b)).changed.map(({ piece }) => piece);
    expect(pieces(end(10), end(10.4))).toEqual([]);
    expect(pieces(end(10), end(10.6))).toEqual(["front"]);
    expect(pieces(legs(2), legs(2.4))).toEqual([]);
    expect(pieces(legs(2.6), legs(2))).toEqual(["front"]);
    // Each end of the mouth by so much, the side seam by twice.
    expect(pieces(mouth(-2), mouth(-2.2))).toEqual([]);
    expect(pieces(mouth(-2), mouth(-2.6))).toEqual(["front"]);
  });

  it("is by nobody's own point where none was measured", () => {
    const { bustPointWidth: _width, sideNeckToBustPoint: _depth, ...rest } = testWork.tapes[0]?.readings ?? {};
    const unmeasured: Work = { ...testWork, tapes: [{ readings: rest }] };
    const { changed } = since(unmeasured, { ...unmeasured, alterations: [end(10)] });
    const steps = changed.flatMap(({ items }) => items.map(({ step }) => step));
    expect(steps.flatMap((step) => (step.kind === "dart" ? [step.isByOwnPoint] : []))).toEqual([false]);
  });

  it("has bowed legs drawn after it where its legs are bowed, and not those of another piece", () => {
    const made = since(withAlterations(legs(2, "back"), legs(2)), withAlterations(legs(2, "back"), legs(4)));
    expect(changes(made)).toEqual({ front: ["takeUp", "altered", "dart", "alteration", "trueDart"] });
    const drawn = made.changed[0]?.items.flatMap(({ step }) => (step.kind === "alteration" ? [step.planned.id] : []));
    expect(drawn).toEqual(["legs front"]);
  });
});

describe("a mouth narrowed", () => {
  it("has the side seam marked where it was taken in, and the side dart it moves trued besides", () => {
    const made = since(testWork, withAlterations(mouth(-3)));
    expect(changes(made)).toEqual({ front: ["takeUp", "altered", "dart", "places", "trueDart", "trueDart"] });
    const steps = made.changed[0]?.items.map(({ step }) => step) ?? [];
    const trued = steps.flatMap((step) => (step.kind === "trueDart" ? [step.dart.dart] : []));
    expect(trued).toEqual(["waistDart", "sideDart"]);
    const places = steps.flatMap((step) => (step.kind === "places" ? step.places : []));
    // What comes off is 3 on each side of the mouth, along the waist line, which rises a little to the side.
    expect(places.map(({ point }) => point)).toEqual(["sideWaist"]);
    expect(Math.hypot(places[0]?.out ?? 0, places[0]?.down ?? 0)).toBeCloseTo(6, 0);
    expect(places[0]?.out).toBeLessThan(-5.5);
  });
});

describe("a fit of another amount", () => {
  const traced = (made: Since) =>
    made.changed.flatMap(({ items }) =>
      items.flatMap(({ step, amount }) =>
        step.kind === "altered" ? [[amount, step.trace === null ? null : Object.keys(step.trace.after)]] : [],
      ),
    );

  it("is made on the paper as it lies by what it is more or less", () => {
    expect(traced(since(withAlterations(sway(8)), withAlterations(sway(14))))).toEqual([[6, ["back"]]]);
    expect(traced(since(withAlterations(sway(8)), testWork))).toEqual([[-8, ["back"]]]);
    expect(traced(since(testWork, withAlterations(slope(6))))).toEqual([
      [6, ["front", "back"]],
      [6, ["front", "back"]],
    ]);
    // As much as was to be done: the same as a fold of 6 mm on a back that was never altered takes off its centre.
    const [more] = since(withAlterations(sway(8)), withAlterations(sway(14))).changed[0]?.items.slice(1) ?? [];
    const trace = more?.step.kind === "altered" ? more.step.trace : null;
    const length = (pieces: "before" | "after"): number => {
      const points = trace?.[pieces].back?.points;
      const [top, low] = [points?.centreNeck?.at, points?.centreWaist?.at];
      return top === undefined || low === undefined ? Number.NaN : Math.hypot(low.x - top.x, low.y - top.y);
    };
    expect(length("before") - length("after")).toBeCloseTo(6, 1);
  });

  it("that cannot be made so is still said of the pieces it shows on", () => {
    // Of an end, however it lies, nothing is folded.
    expect(traced(since(withAlterations(end(10)), testWork))).toEqual([[-10, null]]);
    expect(traced(since(withAlterations(legs(2)), testWork))).toEqual([[-2, null]]);
  });

  it("on one half is said of that half's pieces alone", () => {
    const made = since(testWork, withAlterations(slope(6, "left")));
    expect(named(made.changed)).toEqual(["front left", "back left"]);
    expect(named(made.stays)).toEqual(["front right", "back right", "frontBasque", "backBasque"]);
    for (const { items } of made.changed) {
      expect(items.every(({ half }) => half === "left")).toBe(true);
      expect(items[0]?.step).toEqual({ kind: "takeUp", isTwice: true });
      expect(items[1]?.step).toMatchObject({ kind: "altered", row: { half: "left", by: 6 } });
    }
  });
});

describe("a bust altered by more", () => {
  const bust = (from: number, to: number) =>
    since(
      picked({ baseSize: "14", cup: "B", bustAlteration: from }),
      picked({ baseSize: "14", cup: "B", bustAlteration: to }),
    );
  const said = (made: Since) =>
    made.changed.flatMap(({ piece, items }) =>
      items.flatMap(({ step, amount }) =>
        step.kind === "bustAltered" ? [[piece, amount, step.before, step.after]] : [],
      ),
    );

  it("is said of the piece that is spread, by half on the half, and of no other", () => {
    expect(said(bust(10, 18))).toEqual([["front", 4, 10, 18]]);
    expect(said(bust(18, 10))).toEqual([["front", -4, 18, 10]]);
    expect(said(bust(0, 18))).toEqual([["front", 9, 0, 18]]);
    expect(said(bust(18, 0))).toEqual([["front", -9, 18, 0]]);
    expect(said(since(testWork, withAlterations(mouth(-3), sway(8))))).toEqual([]);
  });
});

describe("a waist line that lies elsewhere", () => {
  it("is said with where it was, by how far it lies further out", () => {
    // Waist lines lie 10 mm apart on a half's piece, a quarter of the 40 mm of a size: half a size is 5 mm.
    const made = since(picked({ baseSize: "12", waist: 1 }), picked({ baseSize: "12", waist: 1.5 }));
    const lines = made.changed.flatMap(({ piece, items }) =>
      items.flatMap(({ step, amount }) =>
        step.kind === "lineMoved" ? [[piece, step.after.level, amount, step.before?.share]] : [],
      ),
    );
    // On the curved side of a basque a little more.
    const near = expect.closeTo(5, 0);
    expect(lines.map(([piece, level, amount]) => [piece, level, amount])).toEqual(
      ["front", "back", "frontBasque", "backBasque"].map((piece) => [piece, "waist", near]),
    );
    expect(lines.slice(0, 2).map(([, , amount]) => amount)).toEqual([expect.closeTo(5, 6), expect.closeTo(5, 6)]);
  });
});

describe("what truing changed", () => {
  const trued = (what: TruingChange["what"], piece: TruingChange["piece"] = "front"): TruingChange => ({
    piece,
    seam: "side",
    what,
    point: null,
    amount: 1,
  });

  it("is said of a piece that is worked on, where a seam was smoothed or a corner squared on it", () => {
    const to = planOf(withAlterations(end(10)));
    const half = {
      ...to.left,
      truing: [
        trued("seamSmoothed"),
        trued("seamWalked"),
        trued("cornerSquared"),
        trued("legsEqualled"),
        trued("seamSmoothed", "back"),
      ],
    };
    const plan: Plan = { ...to, left: half, right: half };
    const made = checklistSince(planOf(testWork), plan);
    expect(changes(made)).toEqual({ front: ["takeUp", "altered", "dart", "trued", "trued", "trueDart"] });
    const said = made.changed[0]?.items.flatMap(({ step }) => (step.kind === "trued" ? [step.change] : []));
    expect(said).toEqual([trued("seamSmoothed"), trued("cornerSquared")]);
  });

  it("is by how much the longer of a dart's legs was moved, either way", () => {
    const to = planOf(withAlterations(end(10)));
    const half = {
      ...to.left,
      darts: to.left.darts.map((dart) => ({ ...dart, truing: { inner: 1, outer: -2 } })),
    };
    const made = checklistSince(planOf(testWork), { ...to, left: half, right: half });
    expect(made.changed[0]?.items.at(-1)).toEqual({
      piece: "front",
      amount: 2,
      step: { kind: "trueDart", dart: waistDart, amount: 2 },
    });
  });
});
