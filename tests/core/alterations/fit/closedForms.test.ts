/** The fit alterations against closed forms: circles, chords, and lengths that stay. */
import type { FitName } from "../../../../src/core/decisions/fitNames";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitOf } from "../../../../src/core/alterations/fit/index";
import type { FitApplied } from "../../../../src/core/alterations/outcome/definition";
import { pieceIn, piecesOf, type PieceSet } from "../../../../src/core/pattern/pieceSet";
import { levelWidth } from "../../../../src/core/girth/levelWidth";
import {
  pointOf,
  type DartName,
  type Piece,
  type PieceName,
  type PointName,
  type SeamName,
} from "../../../../src/core/pattern/piece";
import { invariant } from "../../../../src/core/result";
import { closeWedgeIntoDart } from "../../../../src/core/surgery/closeWedge";
import { anyAmount } from "../../../support/amounts";
import {
  anyGarmentOf,
  bustPointOf,
  changedPieces,
  cornerAt,
  expectStillSewn,
  garment,
  STYLE_NAMES,
} from "../../../support/garments";
import { seamByBezierJs } from "../../../support/independent";
import { expectPointClose } from "../../../support/matchers";

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Applied; where it is refused, with the amount that it says would work. */
function alteredBy(
  pieces: PieceSet,
  fit: FitName,
  amount: number,
): { readonly amount: number; readonly done: FitApplied } {
  const context = { bustPoint: bustPointOf(pieces) };
  const done = fitOf(fit).apply(pieces, amount, context);
  if (done.ok) return { amount, done: done.value };
  const most = "most" in done.failure ? done.failure.most : Number.NaN;
  const again = fitOf(fit).apply(pieces, most, context);
  return { amount: most, done: invariant(again.ok ? again.value : null, fit) };
}

const altered = (pieces: PieceSet, fit: FitName, amount: number): FitApplied => alteredBy(pieces, fit, amount).done;

const apart = (a: Place, b: Place): number => Math.hypot(b.x - a.x, b.y - a.y);
const towards = (a: Place, b: Place): number => Math.atan2(b.y - a.y, b.x - a.x);
const wrapped = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));

/** The angle between the legs of a dart drawn on to a point. */
const openingAt = (piece: Piece, dart: DartName, point: Place): number =>
  Math.abs(wrapped(towards(point, pointOf(piece, `${dart}Outer`)) - towards(point, pointOf(piece, `${dart}Inner`))));

/** The shortest way from a point to a seam, by looking at very many points of its cubics. */
function nearestTo(piece: Piece, seam: SeamName, point: Place): number {
  const LOOKS = 4000;
  return Math.min(
    ...piece.edges
      .filter((edge) => edge.seam === seam && edge.mouthOf === null)
      .map(({ from, to, curve }) => {
        const [a, b] = [pointOf(piece, from), pointOf(piece, to)];
        const { c1, c2 } = curve ?? { c1: a, c2: b };
        let least = Infinity;
        for (let i = 0; i <= LOOKS; i += 1) {
          const t = i / LOOKS;
          const [p, q, r, s] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
          least = Math.min(
            least,
            apart(point, { x: p * a.x + q * c1.x + r * c2.x + s * b.x, y: p * a.y + q * c1.y + r * c2.y + s * b.y }),
          );
        }
        return least;
      }),
  );
}

/** Shoelace formula over corners; mm². */
const area = (corners: readonly Place[]): number =>
  Math.abs(
    corners.reduce(
      (sum, p, i) =>
        sum +
        p.x * invariant(corners[(i + 1) % corners.length], "corner").y -
        invariant(corners[(i + 1) % corners.length], "corner").x * p.y,
      0,
    ),
  ) / 2;

describe("a gape closed into a dart", () => {
  const CASES: readonly [FitName, "sideDart" | "midriff", PieceName, SeamName, DartName][] = [
    ["necklineGape", "sideDart", "front", "neck", "sideDart"],
    ["armholeGape", "sideDart", "front", "armhole", "sideDart"],
    ["armholeGape", "midriff", "cup", "armhole", "underBustDart"],
    ["edgeGape", "midriff", "cup", "neck", "underBustDart"],
  ];

  it.each(CASES)(
    "%s on %s: the dart opens by 2 asin(p / 2R), the edge is shorter by p, all other seams keep their length",
    (fit, style, name, seam, dart) => {
      fc.assert(
        fc.property(anyGarmentOf(style), anyAmount(0.1, 20), (body, asked) => {
          const pieces = garment(body);
          const { amount, done } = alteredBy(pieces, fit, asked);
          const [before, after] = [pieceIn(pieces, name), pieceIn(done.pieces, name)];
          const bustPoint = pointOf(before, "bustPoint");
          const opened = openingAt(after, dart, bustPoint) - openingAt(before, dart, bustPoint);
          // The fold goes the shortest way to the edge, unless that is near its end; no shorter way, so no larger an angle.
          const radius = nearestTo(before, seam, bustPoint);
          const widest = 2 * Math.asin(amount / (2 * radius));
          // Truing the legs moves the mouth by some hundredths of a millimetre at some 100 mm from the point.
          expect(opened).toBeLessThan(widest + 0.001);
          expect(opened).toBeGreaterThan(0.75 * widest - 0.001);
          expect(seamByBezierJs(before, seam) - seamByBezierJs(after, seam)).toBeCloseTo(amount, 1);
          for (const other of (
            ["neck", "shoulder", "armhole", "side", "waist", "underBust", "centre", "strap"] as const
          ).filter((s) => s !== seam)) {
            expect(seamByBezierJs(after, other)).toBeCloseTo(seamByBezierJs(before, other), 2);
          }
          const legs = (["Inner", "Outer"] as const).map((end) =>
            apart(pointOf(after, `${dart}Apex`), pointOf(after, `${dart}${end}`)),
          );
          expect(invariant(legs[0], "leg")).toBeCloseTo(invariant(legs[1], "leg"), 3);
          expect(apart(bustPoint, pointOf(after, `${dart}Apex`))).toBeCloseTo(
            apart(bustPoint, pointOf(before, `${dart}Apex`)),
            6,
          );
          expect(pointOf(after, "centreNeck")).toEqual(pointOf(before, "centreNeck"));
          expect(pointOf(after, "centreWaist" in before.points ? "centreWaist" : "underBustCentre")).toEqual(
            pointOf(before, "centreWaist" in before.points ? "centreWaist" : "underBustCentre"),
          );
        }),
        { numRuns: 25 },
      );
    },
  );

  it("turns just one part, rigidly: by the angle of its chord", () => {
    fc.assert(
      fc.property(anyGarmentOf("sideDart"), anyAmount(1, 20), (body, amount) => {
        const pieces = garment(body);
        const front = pieceIn(pieces, "front");
        const point = pointOf(front, "bustPoint");
        const done = closeWedgeIntoDart(front, { seam: "neck", amount, point });
        const { trace, turn, piece } = invariant(done.ok ? done.value : null, "closed");
        const part = invariant(trace.parts[0], "part");
        expect(trace.parts).toHaveLength(1);
        const fold = invariant(invariant(trace.cuts[0], "cut")[0], "fold");
        expect(2 * apart(fold, point) * Math.sin(turn / 2)).toBeCloseTo(amount, 9);
        const corners = (edges: typeof part.before): Place[] =>
          edges.flatMap(({ a, curve }) => [a, ...(curve === null ? [] : [curve.c1, curve.c2])]);
        expect(area(corners(part.after))).toBeCloseTo(area(corners(part.before)), 6);
        // The side neck, the shoulder's end and the underarm keep their distances from each other and from the bust point.
        const kept: readonly PointName[] = ["bustPoint", "sideNeck", "shoulderTip", "underarm", "sideBust"];
        for (const a of kept)
          for (const b of kept)
            expect(apart(pointOf(piece, a), pointOf(piece, b))).toBeCloseTo(
              apart(pointOf(front, a), pointOf(front, b)),
              9,
            );
      }),
      { numRuns: 25 },
    );
  });

  it("is refused where the edge or the dart cannot take it, with the most that works", () => {
    const pieces = garment({ style: "midriff" });
    const cup = pieceIn(pieces, "cup");
    const wedge = { seam: "neck", point: pointOf(cup, "bustPoint") } as const;
    const refused = closeWedgeIntoDart(cup, { ...wedge, amount: 90 });
    expect(refused).toMatchObject({ ok: false, failure: { code: "wedge/too-much" } });
    const most = invariant(
      refused.ok || refused.failure.code === "wedge/no-dart" ? null : refused.failure.most,
      "most",
    );
    expect(most).toBeGreaterThan(10);
    expect(closeWedgeIntoDart(cup, { ...wedge, amount: most }).ok).toBe(true);
    expect(
      closeWedgeIntoDart(
        { ...cup, darts: cup.darts.map((dart) => ({ ...dart, aimsAt: null })) },
        { ...wedge, amount: 5 },
      ),
    ).toEqual({
      ok: false,
      failure: { code: "wedge/no-dart" },
    });
  });
});

describe("a gape closed into a princess seam", () => {
  it.each([
    ["necklineGape", "centreFront", "neck"],
    ["armholeGape", "sideFront", "armhole"],
  ] as const)("%s: the upper end swings on its circle and the seam keeps its length", (fit, name, seam) => {
    fc.assert(
      fc.property(anyGarmentOf("princessArmhole", "princessShoulder"), anyAmount(0.1, 20), (body, asked) => {
        const pieces = garment(body);
        const { amount, done } = alteredBy(pieces, fit, asked);
        const { pieces: set, values } = done;
        const [before, after] = [pieceIn(pieces, name), pieceIn(set, name)];
        const hinge = pointOf(before, "princessBust");
        expect(changedPieces(pieces, set)).toEqual([name]);
        expect(apart(hinge, pointOf(after, "princessTop"))).toBeCloseTo(
          apart(hinge, pointOf(before, "princessTop")),
          1,
        );
        expect(apart(pointOf(before, "princessTop"), pointOf(after, "princessTop"))).toBeCloseTo(
          invariant(values.wider, "wider"),
          9,
        );
        const turn = Math.abs(
          wrapped(towards(hinge, pointOf(after, "princessTop")) - towards(hinge, pointOf(before, "princessTop"))),
        );
        const widest = 2 * Math.asin(amount / (2 * nearestTo(before, seam, hinge)));
        expect(turn).toBeLessThan(widest + 1e-6);
        expect(turn).toBeGreaterThan(0.75 * widest);
        expect(seamByBezierJs(after, "princess")).toBeCloseTo(seamByBezierJs(before, "princess"), 1);
        expect(seamByBezierJs(before, seam) - seamByBezierJs(after, seam)).toBeCloseTo(amount, 1);
        expect(Math.abs(cornerAt(after, "princessBust") - 180)).toBeLessThan(0.01);
        expectStillSewn(pieces, set);
      }),
      { numRuns: 25 },
    );
  });
});

describe("the shoulder", () => {
  const styles = ["sideDart", "princessArmhole", "princessShoulder"] as const;
  const tipPiece = ({ front, centreFront, sideFront }: PieceSet): Piece =>
    invariant(
      [front, sideFront, centreFront].find((piece) => piece?.points.shoulderTip !== undefined),
      "tip piece",
    );

  it("rises at its end by the amount and keeps its length; side seams grow by the amount, front and back alike", () => {
    fc.assert(
      fc.property(anyGarmentOf("sideDart"), anyAmount(-12, 20), (body, amount) => {
        const pieces = garment(body);
        const { pieces: set } = altered(pieces, "shoulderSlope", amount);
        for (const name of ["front", "back"] as const) {
          const [before, after] = [pieceIn(pieces, name), pieceIn(set, name)];
          expect(pointOf(before, "shoulderTip").y - pointOf(after, "shoulderTip").y).toBeCloseTo(amount, 6);
          expect(apart(pointOf(after, "sideNeck"), pointOf(after, "shoulderTip"))).toBeCloseTo(
            apart(pointOf(before, "sideNeck"), pointOf(before, "shoulderTip")),
            6,
          );
          expect(seamByBezierJs(after, "side") - seamByBezierJs(before, "side")).toBeCloseTo(amount, 3);
          // Redrawn to the same length as nearly as a line that stays smooth can be.
          expect(Math.abs(seamByBezierJs(after, "armhole") - seamByBezierJs(before, "armhole"))).toBeLessThan(
            0.25 * Math.abs(amount) + 0.01,
          );
          expect(cornerAt(after, "shoulderTip")).toBeCloseTo(cornerAt(before, "shoulderTip"), 6);
          expect(cornerAt(after, "sideNeck")).toBeCloseTo(cornerAt(before, "sideNeck"), 6);
        }
      }),
      { numRuns: 25 },
    );
  });

  it("moved forward: its end goes along by a chord of the amount on both pieces, its length and the whole armhole stay", () => {
    fc.assert(
      fc.property(anyGarmentOf(...styles), anyAmount(-18, 18), (body, amount) => {
        const pieces = garment(body);
        const { pieces: set } = altered(pieces, "forwardShoulder", amount);
        const armhole = (s: PieceSet): number =>
          piecesOf(s)
            .filter(({ name }) => name !== "strap")
            .reduce((sum, piece) => sum + seamByBezierJs(piece, "armhole"), 0);
        expect(
          apart(pointOf(pieceIn(pieces, "back"), "shoulderTip"), pointOf(pieceIn(set, "back"), "shoulderTip")),
        ).toBeCloseTo(Math.abs(amount), 6);
        expect(
          Math.sign(pointOf(pieceIn(pieces, "back"), "shoulderTip").y - pointOf(pieceIn(set, "back"), "shoulderTip").y),
        ).toBe(Math.sign(amount));
        expect(Math.abs(armhole(set) - armhole(pieces))).toBeLessThan(2);
        const shoulder = (s: PieceSet): number =>
          ["front", "centreFront", "sideFront"].reduce(
            (sum, name) => sum + seamByBezierJs(s[name as PieceName] ?? pieceIn(s, "frontBasque"), "shoulder"),
            0,
          );
        expect(shoulder(set)).toBeCloseTo(shoulder(pieces), 6);
        expect(seamByBezierJs(pieceIn(set, "back"), "side")).toBe(seamByBezierJs(pieceIn(pieces, "back"), "side"));
      }),
      { numRuns: 25 },
    );
  });

  it("made longer: its end goes straight on by the amount", () => {
    fc.assert(
      fc.property(anyGarmentOf(...styles), anyAmount(-20, 20), (body, amount) => {
        const pieces = garment(body);
        const { pieces: set } = altered(pieces, "shoulderWidth", amount);
        const [before, after] = [tipPiece(pieces), tipPiece(set)];
        const edge = invariant(
          before.edges.find(({ to }) => to === "shoulderTip"),
          "edge",
        );
        const [from, tip] = [pointOf(before, edge.from), pointOf(before, "shoulderTip")];
        const along = amount / apart(from, tip);
        expectPointClose(
          pointOf(after, "shoulderTip"),
          { x: tip.x + (tip.x - from.x) * along, y: tip.y + (tip.y - from.y) * along },
          1e-6,
        );
        expect(cornerAt(after, "shoulderTip")).toBeCloseTo(cornerAt(before, "shoulderTip"), 6);
      }),
      { numRuns: 25 },
    );
  });

  it("armhole depth: both underarms go along their side seams by the amount", () => {
    fc.assert(
      fc.property(anyGarmentOf(...STYLE_NAMES), anyAmount(-20, 15), (body, amount) => {
        const pieces = garment(body);
        const { pieces: set } = altered(pieces, "armholeDepth", amount);
        for (const name of changedPieces(pieces, set)) {
          const [before, after] = [pieceIn(pieces, name), pieceIn(set, name)];
          expect(apart(pointOf(before, "underarm"), pointOf(after, "underarm"))).toBeCloseTo(Math.abs(amount), 6);
          expect(seamByBezierJs(before, "side") - seamByBezierJs(after, "side")).toBeCloseTo(amount, 6);
        }
      }),
      { numRuns: 25 },
    );
  });

  it("armhole depth is refused where the side seam above the bust line ends, with the most that works", () => {
    const pieces = garment({ style: "sideDart" });
    const room = Math.min(
      ...(["front", "back"] as const).map((name) =>
        apart(pointOf(pieceIn(pieces, name), "underarm"), pointOf(pieceIn(pieces, name), "sideBust")),
      ),
    );
    const refused = fitOf("armholeDepth").apply(pieces, 29.5, { bustPoint: bustPointOf(pieces) });
    expect(refused).toMatchObject({ ok: false, failure: { code: "alteration/too-much" } });
    const most = refused.ok || !("most" in refused.failure) ? Number.NaN : refused.failure.most;
    // 2 mm are the shortest edge that can be cut or sewn (tolerance of the project).
    expect(most).toBeCloseTo(room - 2, 3);
  });
});

describe("the side seams", () => {
  const halves = (pieces: PieceSet, level: "bust" | "waist" | "hip", names: readonly PieceName[]): number =>
    names.reduce(
      (sum, name) => sum + (pieces[name] === undefined ? 0 : (levelWidth(pieceIn(pieces, name), level) ?? 0)),
      0,
    );
  const BODICE = ["front", "centreFront", "sideFront", "cup", "frontBand", "back", "backBand"] as const;
  const BASQUE = ["frontBasque", "backBasque"] as const;

  it.each([
    ["sideSeamBust", "bust", [BODICE]],
    ["sideSeamWaist", "waist", [BODICE, BASQUE]],
    ["sideSeamHip", "hip", [BASQUE]],
  ] as const)(
    "%s: the whole girth grows by just the amount, a quarter at each edge, and it is declared",
    (fit, level, groups) => {
      fc.assert(
        fc.property(anyGarmentOf(...STYLE_NAMES), anyAmount(-40, 40), (body, amount) => {
          const pieces = garment(body);
          const { pieces: set, girths, values } = altered(pieces, fit, amount);
          for (const group of groups)
            expect(2 * (halves(set, level, group) - halves(pieces, level, group))).toBeCloseTo(amount, 3);
          for (const other of (["bust", "waist", "hip"] as const).filter((l) => l !== level)) {
            expect(halves(set, other, [...BODICE, ...BASQUE])).toBeCloseTo(
              halves(pieces, other, [...BODICE, ...BASQUE]),
              3,
            );
          }
          for (const name of changedPieces(pieces, set)) {
            expect(
              invariant(levelWidth(pieceIn(set, name), level), level) -
                invariant(levelWidth(pieceIn(pieces, name), level), level),
            ).toBeCloseTo(amount / 4, 3);
          }
          expect(girths).toEqual({ [level]: amount });
          expect(values).toEqual({ quarter: Math.abs(amount) / 4 });
        }),
        { numRuns: 30 },
      );
    },
  );

  it("at the under-bust: a quarter at each of the four edges, bust and waist as they were, the sides of a pair longer alike", () => {
    fc.assert(
      fc.property(anyGarmentOf("midriff"), anyAmount(-60, 40), (body, asked) => {
        const pieces = garment(body);
        const { amount, done } = alteredBy(pieces, "sideSeamUnderBust", asked);
        const { pieces: set, girths, values } = done;
        const longer = (name: PieceName, seam: SeamName): number =>
          seamByBezierJs(pieceIn(set, name), seam) - seamByBezierJs(pieceIn(pieces, name), seam);
        for (const name of ["cup", "frontBand", "back", "backBand"] as const)
          expect(longer(name, "underBust")).toBeCloseTo(amount / 4, 3);
        expect(longer("cup", "side")).toBeCloseTo(longer("back", "side"), 3);
        expect(longer("frontBand", "side")).toBeCloseTo(longer("backBand", "side"), 3);
        for (const level of ["bust", "waist", "hip"] as const)
          expect(halves(set, level, [...BODICE, ...BASQUE])).toBe(halves(pieces, level, [...BODICE, ...BASQUE]));
        // Nothing else moves: one corner of each piece, and how it stands in its seams stays.
        for (const name of changedPieces(pieces, set)) {
          const [before, after] = [pieceIn(pieces, name), pieceIn(set, name)];
          expect({ ...after.points, sideUnderBust: null }).toEqual({ ...before.points, sideUnderBust: null });
          expect(cornerAt(after, "sideUnderBust")).toBeCloseTo(cornerAt(before, "sideUnderBust"), 6);
        }
        expect(changedPieces(pieces, set).toSorted()).toEqual(["back", "backBand", "cup", "frontBand"]);
        expect(girths).toBeUndefined();
        expect(values).toEqual({ quarter: Math.abs(amount) / 4 });
      }),
      { numRuns: 30 },
    );
  });

  it("at the under-bust lean by no more than 25 degrees from straight, and what is refused names just that", () => {
    const pieces = garment({ style: "midriff" });
    const context = { bustPoint: bustPointOf(pieces) };
    const refused = fitOf("sideSeamUnderBust").apply(pieces, -158, context);
    expect(refused).toMatchObject({ ok: false, failure: { code: "alteration/too-much" } });
    const most = refused.ok || !("most" in refused.failure) ? Number.NaN : refused.failure.most;
    const { pieces: set } = altered(pieces, "sideSeamUnderBust", most);
    const leans = (["cup", "frontBand", "back", "backBand"] as const).flatMap((name) => {
      const piece = pieceIn(set, name);
      const edge = invariant(
        piece.edges.find(
          ({ seam, from, to }) => seam === "side" && (from === "sideUnderBust" || to === "sideUnderBust"),
        ),
        "side",
      );
      const { c1, c2 } = invariant(edge.curve, "curve");
      const [a, b] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
      return [towards(a, c1), towards(c2, b)].map((way) => Math.abs(wrapped(way - towards(a, b))));
    });
    expect((Math.max(...leans) * 180) / Math.PI).toBeGreaterThan(24.9);
    expect((Math.max(...leans) * 180) / Math.PI).toBeLessThanOrEqual(25);
  });

  it("at the waist keeps every side seam as long as it was", () => {
    fc.assert(
      fc.property(anyGarmentOf(...STYLE_NAMES), anyAmount(-40, 40), (body, amount) => {
        const pieces = garment(body);
        const { pieces: set } = altered(pieces, "sideSeamWaist", amount);
        for (const name of changedPieces(pieces, set))
          expect(seamByBezierJs(pieceIn(set, name), "side")).toBeCloseTo(
            seamByBezierJs(pieceIn(pieces, name), "side"),
            3,
          );
      }),
      { numRuns: 20 },
    );
  });
});

describe("the back neck", () => {
  it("loses half of the gape on each half, its centre leaning straight from the bust line and square to the neck", () => {
    fc.assert(
      fc.property(anyGarmentOf("sideDart", "princessArmhole"), anyAmount(0.1, 25), (body, amount) => {
        const pieces = garment(body);
        const { pieces: set, values } = altered(pieces, "backNeckGape", amount);
        const [before, after] = [pieceIn(pieces, "back"), pieceIn(set, "back")];
        expect(seamByBezierJs(before, "neck") - seamByBezierJs(after, "neck")).toBeCloseTo(amount / 2, 3);
        expect(values).toEqual({ half: amount / 2 });
        expect(cornerAt(after, "centreNeck")).toBeCloseTo(cornerAt(before, "centreNeck"), 6);
        expect(pointOf(after, "centreBust")).toEqual(pointOf(before, "centreBust"));
        // A back neck is nearly level at the centre, so the corner moves across by nearly the half.
        expect(pointOf(after, "centreNeck").x).toBeGreaterThan(0.95 * (amount / 2));
        expect(after.centreOnFold).toBe(false);
      }),
      { numRuns: 25 },
    );
  });

  it("takes no more than what still sews as a smooth centre seam: 5 degrees at the bust line", () => {
    const pieces = garment({ style: "sideDart", bust: 760 });
    const back = pieceIn(pieces, "back");
    const refused = fitOf("backNeckGape").apply(pieces, 60, { bustPoint: bustPointOf(pieces) });
    expect(refused).toMatchObject({ ok: false, failure: { code: "alteration/too-much" } });
    const most = refused.ok || !("most" in refused.failure) ? Number.NaN : refused.failure.most;
    expect(most).toBeLessThanOrEqual(
      2 * Math.sin((5 * Math.PI) / 180) * apart(pointOf(back, "centreNeck"), pointOf(back, "centreBust")) + 1e-9,
    );
    expect(most).toBeGreaterThan(20);
  });
});
