import { describe, expect, it } from "vitest";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { pointOf, type Edge, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { withArmholeDart } from "../../../src/core/style/princessStyle";
import { sideDartFront } from "../../../src/core/style/sideDartStyle";
import { splitAtBustPoint } from "../../../src/core/surgery/splitAtBustPoint";
import { clothCorners, polygonOf, seamByBezierJs } from "../../support/independent";
import { invariant } from "../../../src/core/result";

const chart = { sizes: [], draftedDifference: 50, cups: [] };
const ease = { bust: 80, waist: 40, hip: 50 };
const SEAMS = ["neck", "shoulder", "armhole", "side", "waist", "centre"] as const;

const blockOf = (bust: number): Piece =>
  draftFrontBlock(draftMeasuresFor({ label: "x", bust, waist: bust - 180, hip: bust + 60 }, chart, ease));
const corners = (piece: Piece): PointName[] => piece.edges.map((edge) => edge.from);
const closes = (edges: readonly Edge[]): boolean =>
  edges.every((edge, i) => edge.to === edges[(i + 1) % edges.length]?.from);
const place = (piece: Piece, name: PointName): [number, number] => [pointOf(piece, name).x, pointOf(piece, name).y];

describe.each([740, 880, 1250])("a front split over the bust point at bust %d", (bust) => {
  describe.each([
    ["armholeDart", withArmholeDart(blockOf(bust))],
    ["shoulderDart", blockOf(bust)],
  ] as const)("along its %s and its waist dart", (dart, front) => {
    const { centreFront, sideFront } = splitAtBustPoint(front, dart);

    it("shares every seam between the two pieces and loses none of it", () => {
      for (const seam of SEAMS) {
        expect(seamByBezierJs(centreFront, seam) + seamByBezierJs(sideFront, seam)).toBeCloseTo(
          seamByBezierJs(front, seam),
          6,
        );
      }
      expect(seamByBezierJs(sideFront, "centre")).toBe(0);
      expect(seamByBezierJs(centreFront, "side")).toBe(0);
    });

    it("shares the cloth, darts cut out to the bust point", () => {
      const whole = polygonOf(clothCorners(front, { [dart]: ["bustPoint"], waistDart: ["bustPoint"] })).area();
      const parts = [centreFront, sideFront].map((piece) => polygonOf(clothCorners(piece)).area());
      expect(invariant(parts[0], "centre") + invariant(parts[1], "side")).toBeCloseTo(whole, 3);
    });

    it("draws the legs straight from the ends of the mouths to the bust point", () => {
      for (const [piece, end] of [
        [centreFront, "Inner"],
        [sideFront, "Outer"],
      ] as const) {
        expect(place(piece, "princessTop")).toEqual(place(front, `${dart}${end}`));
        expect(place(piece, "princessBust")).toEqual(place(front, "bustPoint"));
        expect(place(piece, "princessWaist")).toEqual(place(front, `waistDart${end}`));
        expect(piece.edges.filter((edge) => edge.seam === "princess").map((edge) => edge.curve)).toEqual([null, null]);
      }
    });

    it("gives two closed rings that go the same way round, without darts", () => {
      expect([closes(centreFront.edges), closes(sideFront.edges)]).toEqual([true, true]);
      expect([centreFront.darts, sideFront.darts]).toEqual([[], []]);
      expect(corners(centreFront).slice(0, 2)).toEqual(["centreNeck", "sideNeck"]);
      expect(corners(centreFront).slice(-5)).toEqual([
        "princessTop",
        "princessBust",
        "princessWaist",
        "centreWaist",
        "centreBust",
      ]);
      expect(corners(sideFront).slice(-5)).toEqual([
        "underarm",
        "sideBust",
        "sideWaist",
        "princessWaist",
        "princessBust",
      ]);
      expect([centreFront.centreOnFold, sideFront.centreOnFold]).toEqual([true, false]);
    });
  });
});

it("draws legs to the bust point on a front whose darts were ended short of it, and leaves its other darts on their piece", () => {
  const block = blockOf(880);
  const printed = sideDartFront(block, 100);
  const front = invariant(printed.ok ? printed.value : null, "front");
  // The side dart is left where it is; the waist dart and a slit at the top of the shoulder make the seam.
  const shoulder = front.edges.findIndex((edge) => edge.seam === "shoulder");
  const edge = invariant(front.edges[shoulder], "shoulder");
  const at = invariant(front.points.sideNeck, "neck");
  const tip = invariant(front.points.shoulderTip, "tip");
  const middle = { ...at, at: { ...at.at, x: (at.at.x + tip.at.x) / 2, y: (at.at.y + tip.at.y) / 2 } };
  const slit: Piece = {
    ...front,
    points: { ...front.points, shoulderDartInner: middle, shoulderDartOuter: middle, shoulderDartApex: middle },
    edges: front.edges.flatMap((e, i): Edge[] =>
      i === shoulder
        ? [
            { ...edge, to: "shoulderDartInner" },
            { ...edge, from: "shoulderDartInner", to: "shoulderDartOuter", mouthOf: "shoulderDart" },
            { ...edge, from: "shoulderDartOuter" },
          ]
        : [e],
    ),
    darts: [
      ...front.darts,
      {
        name: "shoulderDart",
        seam: "shoulder",
        inner: "shoulderDartInner",
        outer: "shoulderDartOuter",
        apex: "shoulderDartApex",
        aimsAt: "bustPoint",
      },
    ],
  };
  const { centreFront, sideFront } = splitAtBustPoint(slit, "shoulderDart");
  expect(place(centreFront, "princessBust")).toEqual(place(front, "bustPoint"));
  expect(place(sideFront, "princessWaist")).toEqual(place(front, "waistDartOuter"));
  expect([centreFront.darts.map((d) => d.name), sideFront.darts.map((d) => d.name)]).toEqual([[], ["sideDart"]]);
  expect(place(sideFront, "sideDartApex")).toEqual(place(front, "sideDartApex"));
  expect(place(centreFront, "centreBust")).toEqual([0, pointOf(front, "bustPoint").y]);
});
