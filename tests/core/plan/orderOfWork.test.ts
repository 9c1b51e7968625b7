/** The order of work of small works, whole and in short: which jobs there are is reasoned from what a dressmaker has to do. */
import { describe, expect, it } from "vitest";
import type { Alteration, DartRedraw, Half } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { Work } from "../../../src/core/decisions/work";
import { pointOf, type PieceName } from "../../../src/core/pattern/piece";
import type { ChecklistItem, Plan } from "../../../src/core/plan/plan";
import { inOrderOfWork, phaseOfStep } from "../../../src/core/plan/workPhases";
import { dartIn, planOf, ref, testWork, withAlterations } from "../../support/works";

const waistDart = ref("front", "waistDart");
const fit = (name: FitName, amount: number, half?: Half): Alteration => ({
  kind: "fit",
  id: name,
  fit: name,
  amount,
  ...(half === undefined ? {} : { half }),
});
const end = (shorten: number, across = 0): DartRedraw => ({
  kind: "dartEnd",
  id: "end",
  dart: waistDart,
  shorten,
  across,
  hold: "mouth",
  giveBack: {},
});
const mouth = (by: number): DartRedraw => ({
  kind: "dartMouth",
  id: "mouth",
  dart: waistDart,
  inner: by,
  outer: by,
  giveBack: { sideSeam: 1 },
});
const styled = (pattern: Partial<Work["pattern"]>): Work => ({
  ...testWork,
  pattern: { ...testWork.pattern, ...pattern },
});

/** A job in a word or two. */
function inShort({ step, half }: ChecklistItem): string {
  const of = (): string => {
    switch (step.kind) {
      case "trace":
        return `trace${step.isTwice ? " twice" : ""}`;
      case "blend":
        return `${step.cutLine.level} from ${step.from}`;
      case "dart":
        return `${step.dart.dart}${step.late ? " late" : ""}${step.isMovedAlready ? " moved" : ""}`;
      case "trueDart":
        return `true ${step.dart.dart}`;
      case "walk":
        return `${step.seam}: ${step.first.join("+")} ${step.second.join("+")}`;
      case "alteration":
        return step.planned.id;
      default:
        return step.kind;
    }
  };
  return half === undefined ? of() : `${of()} (${half})`;
}
const jobsOn = (plan: Plan, piece: PieceName) =>
  plan.checklist.filter((item) => item.piece === piece && item.step.kind !== "walk");
const short = (plan: Plan, piece: PieceName) => jobsOn(plan, piece).map(inShort);
type Kind = ChecklistItem["step"]["kind"];
type Job<K extends Kind> = ChecklistItem & { readonly step: Extract<ChecklistItem["step"], { readonly kind: K }> };

const isJob = <K extends Kind>(item: ChecklistItem, kind: K): item is Job<K> => item.step.kind === kind;
const found = <K extends Kind>(plan: Plan, piece: PieceName, kind: K) =>
  jobsOn(plan, piece).flatMap((item) => (isJob(item, kind) ? [{ step: item.step, amount: item.amount }] : []));

describe("a bodice that is only blended", () => {
  const plan = planOf(testWork);

  it("is traced, its lines marked from where they leave the traced ones, its side trued over the dart, its seams walked", () => {
    expect(plan.checklist.map(inShort)).toEqual([
      "trace",
      "waist from bust",
      // The side dart stands on the side seam, and goes along with it.
      "places",
      "true sideDart",
      "trace",
      "waist from bust",
      "trace",
      "waist from hip",
      "hip from waist",
      "trace",
      "waist from hip",
      "hip from waist",
      "shoulder: back front",
      "side: back front",
      "waist: front frontBasque",
      "waist: back backBasque",
      "side: backBasque frontBasque",
    ]);
    expect(new Set(plan.checklist.slice(0, 4).map(({ piece }) => piece))).toEqual(new Set(["front"]));
  });

  it("marks each line by its share of the 10 mm between two printed ones, a quarter of a size's 40", () => {
    const offset = (piece: PieceName, level: "waist" | "hip"): number =>
      found(plan, piece, "blend").find(({ step }) => step.cutLine.level === level)?.amount ?? Number.NaN;
    const share = (level: "waist" | "hip"): number => plan.levels.find((one) => one.level === level)?.share ?? 0;
    for (const piece of ["front", "back"] as const) expect(offset(piece, "waist")).toBeCloseTo(10 * share("waist"), 6);
    for (const piece of ["frontBasque", "backBasque"] as const)
      expect(offset(piece, "hip")).toBeCloseTo(10 * share("hip"), 6);
  });

  it("has her own bust point marked on the front alone: half the width out, the depth down from the side neck", () => {
    const printed = plan.bustPoint.printed;
    const own = plan.bustPoint.own ?? printed;
    // 190 between the bust points, 268 from the side neck at (69, -40).
    expect(own.x).toBeCloseTo(95, 9);
    expect(own.y).toBeCloseTo(-40 + Math.sqrt(268 ** 2 - (95 - 69) ** 2), 6);
    expect(found(plan, "front", "trace")).toEqual([
      {
        amount: 0,
        step: {
          kind: "trace",
          size: "12",
          cup: "C",
          isTwice: false,
          own: {
            fromCentre: expect.closeTo(95, 9),
            fromSideNeck: expect.closeTo(268, 6),
            fromPrinted: { out: expect.closeTo(95 - printed.x, 9), down: expect.closeTo(own.y - printed.y, 9) },
            isMoved: false,
          },
        },
      },
    ]);
    for (const piece of ["back", "frontBasque", "backBasque"] as const)
      expect(found(plan, piece, "trace")[0]?.step).toMatchObject({ size: "12", cup: null, own: null });
  });

  it("has no mark where she measured none, and none to true where all is of the traced size", () => {
    const { bustPointWidth: _width, sideNeckToBustPoint: _depth, ...rest } = testWork.tapes[0]?.readings ?? {};
    const own = planOf({ ...testWork, tapes: [{ readings: rest }], picks: { baseSize: "12", waist: 3, hip: 3 } });
    expect(found(own, "front", "trace")[0]?.step.own).toBeNull();
    expect(short(own, "front")).toEqual(["trace", "waist from bust"]);
    expect(found(own, "front", "blend")[0]?.amount).toBeCloseTo(0, 9);
  });

  it("without a basque is walked at shoulder and side, and has no hip", () => {
    const plainly = planOf(styled({ length: "waist" }));
    expect(plainly.checklist.map(inShort).filter((one) => one.includes(":"))).toEqual([
      "shoulder: back front",
      "side: back front",
    ]);
    expect(plainly.levels.map(({ level }) => level)).toEqual(["bust", "waist"]);
  });
});

describe("the jobs of a dart", () => {
  it("that ends elsewhere are to move and draw it, and to true it; the other pieces stay as they are", () => {
    const plan = planOf(withAlterations(end(10)));
    expect(short(plan, "front")).toEqual([
      "trace",
      "waist from bust",
      "end",
      "waistDart",
      "places",
      "true waistDart",
      "true sideDart",
    ]);
    expect(short(plan, "back")).toEqual(short(planOf(testWork), "back"));
    expect(found(plan, "front", "trace")[0]?.step.own?.isMoved).toBe(true);
    expect(found(plan, "front", "alteration")[0]?.amount).toBe(10);
    const { drawn } = dartIn(plan, "front", "waistDart");
    expect(found(plan, "front", "dart")).toMatchObject([
      { amount: drawn.intake, step: { figures: drawn, isByOwnPoint: true, isBySight: false } },
    ]);
    // Straight down its axis: told across where it does not get shorter.
    expect(found(plan, "front", "dart")[0]?.step.places?.apex).toMatchObject({ down: expect.closeTo(10, 6) });
    expect(found(planOf(withAlterations(end(0, 6))), "front", "alteration")[0]?.amount).toBe(6);
  });

  it("are none where it is asked for nothing, and one where it is asked for too little to see", () => {
    expect(short(planOf(withAlterations(end(0.3))), "front")).toContain("end");
    expect(short(planOf(withAlterations(end(0))), "front")).toEqual(short(planOf(testWork), "front"));
  });

  it("narrowed at its mouth leave the side seam marked once, with what it gives taken off the blend", () => {
    const plan = planOf(withAlterations(mouth(-3)));
    const [blend] = found(plan, "front", "blend");
    // 3 mm off either end, 6 in all, along a waist that rises a little to the side.
    expect(blend?.step.taken).toBeCloseTo(6, 0);
    expect(blend?.amount).toBeCloseTo((blend?.step.cutLine.offset ?? 0) - (blend?.step.taken ?? 0), 9);
    expect(found(plan, "front", "alteration")[0]?.amount).toBe(-6);
    const places = found(plan, "front", "places").flatMap(({ step }) => step.places.map(({ point }) => point));
    expect(places).not.toContain("sideWaist");
  });

  it("drawn up as gathers are to gather it; there is nothing to draw or to fold", () => {
    const plan = planOf(withAlterations({ kind: "dartGather", id: "gather", dart: waistDart }));
    expect(short(plan, "front")).toEqual(["trace", "waist from bust", "gather", "places", "true sideDart"]);
  });

  it("split in two are to draw and true each", () => {
    const plan = planOf(withAlterations({ kind: "dartSplit", id: "split", dart: waistDart, into: 2 }));
    expect(short(plan, "front").filter((one) => one.includes("waistDart"))).toEqual([
      "waistDart",
      "waistDart2",
      "true waistDart",
      "true waistDart2",
    ]);
  });

  it("with bowed legs are told by the bow; its points lie where they are printed", () => {
    const plan = planOf(withAlterations({ kind: "dartLegs", id: "legs", dart: waistDart, bow: 2 }));
    expect(found(plan, "front", "alteration")[0]?.amount).toBe(2);
    expect(found(plan, "front", "dart")).toEqual([]);
  });

  it("moved along its seam are told by how far", () => {
    const place: Alteration = { kind: "dartPlace", id: "place", dart: waistDart, by: 8, how: "redraw", giveBack: {} };
    const plan = planOf(withAlterations(place));
    expect(found(plan, "front", "alteration")[0]?.amount).toBe(8);
    const [trued] = found(plan, "front", "trueDart");
    const { truing } = dartIn(plan, "front", "waistDart");
    expect(trued?.amount).toBe(Math.max(Math.abs(truing.inner), Math.abs(truing.outer)));
    expect(trued?.amount).toBeGreaterThan(0.1);
  });
});

describe("a dart that other alterations move", () => {
  it("is moved already by a slash that leaves it whole: what is told of it is a check", () => {
    const plan = planOf(withAlterations(fit("lengthAboveBust", 20)));
    expect(short(plan, "front")).toEqual([
      "trace",
      "waist from bust",
      "lengthAboveBust",
      "waistDart moved",
      "sideDart moved",
      "places",
      "true waistDart",
      "true sideDart",
    ]);
    expect(short(plan, "back").filter((one) => one.includes("Dart"))).toEqual(["waistDart moved", "true waistDart"]);
    // All below the slash lies 20 lower, and nothing above it.
    const places = found(plan, "front", "places").flatMap(({ step }) => step.places);
    const down = new Map(places.map((place) => [place.point, place.down]));
    expect(down.get("centreWaist")).toBeCloseTo(20, 6);
    expect(down.has("sideNeck")).toBe(false);
  });

  it("is to be drawn where it is redrawn besides", () => {
    const plan = planOf(withAlterations(fit("bustPointLevel", 15), end(10)));
    expect(short(plan, "front").filter((one) => /^(waist|side)Dart/.test(one))).toEqual([
      "waistDart",
      "sideDart moved",
    ]);
  });

  it("is drawn late where a width is let out after it, on that half alone", () => {
    const plan = planOf(withAlterations(fit("sideSeamBust", 24)));
    expect(short(plan, "front").filter((one) => one.startsWith("sideDart"))).toEqual(["sideDart late moved"]);
    const left = planOf(withAlterations(fit("sideSeamBust", 12, "left")));
    expect(short(left, "front")).toContain("sideDart late moved (left)");
    // Her mark on the front is moved on one half alone, so its tracing is told of each.
    expect(short(left, "front").slice(0, 2)).toEqual(["trace twice (left)", "trace twice (right)"]);
    expect(short(left, "back")[0]).toBe("trace twice");
    expect(found(left, "back", "alteration")[0]?.amount).toBe(12);
    expect(short(left, "frontBasque")).toEqual(short(planOf(testWork), "frontBasque"));
  });

  it("is drawn anew, where a wedge turns it with its piece", () => {
    const plan = planOf(withAlterations(fit("swayBack", 10)));
    expect(short(plan, "back").filter((one) => one.includes("Dart"))).toEqual(["waistDart", "true waistDart"]);
  });
});

describe("a bust altered", () => {
  const plan = planOf({ ...testWork, picks: { baseSize: "12", cup: "B", bustAlteration: 20 } });

  it("is spread by half on the half, at the darts that are there, about a point of the armhole", () => {
    const planned = plan.left.alterations.find(({ source }) => source === "bust");
    const blended = plan.left.pieces.find(({ name }) => name === "front");
    const before = planned?.outcome.ok === true ? planned.outcome.value.before.front : undefined;
    const [waist, line] = [blended, before].map((piece) =>
      piece === undefined ? Number.NaN : pointOf(piece, "centreWaist").y,
    );
    // The centre is longer by what the spread opens at its foot.
    const drop = (waist ?? 0) - (line ?? 0);
    expect(drop).toBeGreaterThan(5);
    const [bust] = found(plan, "front", "bust");
    expect(bust).toEqual({
      amount: 10,
      step: {
        kind: "bust",
        spread: 10,
        whole: 20,
        drop: expect.closeTo(drop, 6),
        hinge: expect.any(Number),
        at: { side: "sideDart", sideOpened: null, waist: "waistDart", isWaistOpened: false },
      },
    });
    // What is turned about a point leaves it where it was.
    const [hinge, underarm] = [blended?.points.armholeHinge?.at, before?.points.underarm?.at];
    const apart = Math.hypot((hinge?.x ?? 0) - (underarm?.x ?? 0), (hinge?.y ?? 0) - (underarm?.y ?? 0));
    expect(bust?.step.hinge).toBeCloseTo(apart, 6);
  });

  it("comes after the blend and before the darts, which are both drawn anew, and shows on the front alone", () => {
    expect(short(plan, "front")).toEqual([
      "trace",
      "waist from bust",
      "bust",
      "waistDart",
      "sideDart",
      "places",
      "true waistDart",
      "true sideDart",
    ]);
    for (const piece of ["back", "frontBasque", "backBasque"] as const)
      expect(short(plan, piece)).toEqual(short(planOf(testWork), piece));
    const places = found(plan, "front", "places").flatMap(({ step }) => step.places);
    // The blend's own mark and the spread: both in one place.
    const side = places.find(({ point }) => point === "sideWaist");
    const offset = found(plan, "front", "blend")[0]?.amount ?? 0;
    expect(side?.out).toBeCloseTo(offset + 20, 6);
  });
});

describe("one half alone", () => {
  it("has its own jobs beside those of both, pieces that differ being traced twice", () => {
    const plan = planOf(withAlterations(fit("shoulderSlope", 6, "left")));
    expect(short(plan, "front")).toEqual([
      "trace twice (left)",
      "trace twice (right)",
      "waist from bust",
      "shoulderSlope (left)",
      "places (left)",
      "places (right)",
      "true sideDart",
    ]);
    // On the back nothing tells its tracing apart.
    expect(short(plan, "back")).toEqual(["trace twice", "waist from bust", "shoulderSlope (left)", "places (left)"]);
    expect(short(plan, "backBasque")).toEqual(["trace", "waist from hip", "hip from waist"]);
    const tip = found(plan, "back", "places").flatMap(({ step }) =>
      step.places.map(({ point, down }) => [point, down]),
    );
    // Taken up 6 at the shoulder tip, and the armhole with it.
    expect(tip).toEqual([
      ["shoulderTip", expect.closeTo(-6, 6)],
      ["armholeTouch", expect.closeTo(-6, 6)],
      ["underarm", expect.closeTo(-6, 6)],
    ]);
  });
});

describe("styles", () => {
  it("in two pieces of a front are traced and walked along the princess seam", () => {
    const plan = planOf(styled({ style: "princessArmhole" }));
    expect(plan.checklist.map(inShort).filter((one) => one.includes(":"))).toEqual([
      "shoulder: back centreFront",
      "princess: sideFront centreFront",
      "side: back sideFront",
      "waist: centreFront+sideFront frontBasque",
      "waist: back backBasque",
      "side: backBasque frontBasque",
    ]);
    expect(short(plan, "centreFront")).toEqual(["trace"]);
    expect(short(plan, "sideFront").slice(0, 2)).toEqual(["trace", "waist from bust"]);
    expect(found(plan, "sideFront", "trace")[0]?.step.cup).toBe("C");
  });

  it("with a band have its lines marked from the under-bust, cups in their version", () => {
    const plan = planOf(styled({ style: "midriff" }));
    expect(short(plan, "frontBand").slice(0, 2)).toEqual(["trace", "waist from underBust"]);
    expect(short(plan, "strap")).toEqual(["trace"]);
    expect(found(plan, "cup", "trace")[0]?.step).toMatchObject({ cup: "C", own: { fromSideNeck: null } });
    expect(found(plan, "frontBand", "trace")[0]?.step.cup).toBeNull();
    // The band's line is marked by the blend; its height alone is told from that mark.
    const places = found(plan, "frontBand", "places").flatMap(({ step }) => step.places);
    expect(places.find(({ point }) => point === "sideWaist")).toMatchObject({ out: 0, isFromMark: true });
  });

  it("with another neckline have it drawn last, on both pieces that have it", () => {
    const plan = planOf({ ...testWork, dress: { neckline: { shape: "scoop", deeper: 20 } } });
    expect(short(plan, "front").at(-1)).toBe("neckline");
    expect(short(plan, "back").at(-1)).toBe("neckline");
    expect(short(plan, "front").slice(0, -1)).toEqual(short(planOf(testWork), "front"));
    const [edge] = found(plan, "front", "neckline");
    // The edge begins 20 lower at the centre; where it is not made wider the shoulder's end stays.
    const centre = edge?.step.places.find(({ point }) => point === "centreNeck");
    expect([centre?.from, centre?.out]).toEqual(["centreNeck", expect.closeTo(0, 6)]);
    expect(centre?.down).toBeCloseTo(20, 6);
    expect(edge?.step.wider).toBeCloseTo(0, 6);
    expect(edge?.step.pinched).toBe(0);
    expect(edge?.step.lines[0]?.isSquare).toBe(true);
  });
});

describe("the order of work", () => {
  it("puts points before what is trued between them, pieces one after the other, and walks seams last", () => {
    const plan = planOf({ ...withAlterations(end(10), fit("swayBack", 8)), dress: { neckline: { shape: "vee" } } });
    const mixed = plan.checklist.toReversed();
    const sorted = inOrderOfWork(mixed);
    const kinds = (list: readonly ChecklistItem[]) => list.map(({ piece, step }) => `${piece} ${phaseOfStep(step)}`);
    expect(kinds(sorted).filter((one) => !one.endsWith("truing"))).toEqual(
      kinds(plan.checklist).filter((one) => !one.endsWith("truing")),
    );
    const of = sorted
      .filter(({ piece, step }) => piece === "front" && step.kind !== "walk")
      .map(({ step }) => step.kind);
    expect(of.indexOf("places")).toBeLessThan(of.indexOf("trueDart"));
    expect(of.indexOf("places")).toBeGreaterThan(of.indexOf("dart"));
    expect(of.at(-1)).toBe("neckline");
    const walks = sorted.map(({ step }) => step.kind === "walk");
    expect(walks.indexOf(true)).toBe(walks.length - walks.filter(Boolean).length);
  });
});
