/**
 * Facings walked against the finished edges by bezier-js, and measured off them by sampling; bindings by their closed form;
 * straps by points read off the pieces.
 */
import { describe, expect, it } from "vitest";
import type { Edges, Straps } from "../../../src/core/decisions/dress";
import { STYLE_NAMES, type Closure, type StyleName } from "../../../src/core/decisions/pattern";
import { draftEdges } from "../../../src/core/edges/draftEdges";
import { validateOutline } from "../../../src/core/geometry/outline";
import { drawnPieces } from "../../../src/core/parts/halfParts";
import type { PiecePart } from "../../../src/core/parts/part";
import { isFrontPiece } from "../../../src/core/pattern/pieceGroups";
import { pointOf, type Piece, type SeamName } from "../../../src/core/pattern/piece";
import { pieceIn, piecesOf, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { outlineOf } from "../../../src/core/pattern/ring";
import { invariant } from "../../../src/core/result";
import type { Work } from "../../../src/core/decisions/work";
import { seamByBezierJs } from "../../support/independent";
import { planOf, testWork } from "../../support/works";

const workOf = (style: StyleName, more: Partial<Work> = {}): Work => ({
  ...testWork,
  ...more,
  pattern: { ...testWork.pattern, style },
});

const bodiceOf = (work: Work): readonly [PieceSet, PieceSet] => {
  const { left, right } = planOf(work);
  const one = setOf(left.pieces);
  return [one, right === left ? one : setOf(right.pieces)];
};

interface Asked {
  readonly edges?: Edges;
  readonly straps?: Straps;
  readonly isLined?: boolean;
  readonly closure?: Closure;
}

const drafted = (
  bodice: readonly [PieceSet, PieceSet],
  { edges = {}, straps, isLined = false, closure = testWork.pattern.closure }: Asked = {},
) =>
  draftEdges({
    edges,
    straps: straps ?? null,
    bodice,
    isLined,
    closure,
    allowances: {},
  });

const facingsOf = (draft: ReturnType<typeof drafted>): readonly PiecePart[] =>
  draft.parts.flatMap((part) => (part.kind === "piece" && part.cloth === "main" ? [part] : []));

const edgeOf = (bodice: PieceSet, seam: SeamName, isFront: boolean): number =>
  piecesOf(bodice)
    .filter(({ name }) => name !== "strap" && isFrontPiece(name) === isFront)
    .reduce((sum, piece) => sum + seamByBezierJs(piece, seam), 0);

/** Points along edges of some seams, by the polynomial itself. */
function sampled(piece: Piece, seams: readonly SeamName[]): { readonly x: number; readonly y: number }[] {
  return piece.edges
    .filter(({ seam }) => seams.includes(seam))
    .flatMap(({ from, to, curve }) => {
      const [a, b] = [pointOf(piece, from), pointOf(piece, to)];
      const [c, d] = curve === null ? [a, b] : [curve.c1, curve.c2];
      const isStraight = curve === null;
      return Array.from({ length: 41 }, (_, i) => {
        const t = i / 40;
        const u = 1 - t;
        const by = (p: "x" | "y") =>
          isStraight
            ? u * a[p] + t * b[p]
            : u ** 3 * a[p] + 3 * u * u * t * c[p] + 3 * u * t * t * d[p] + t ** 3 * b[p];
        return { x: by("x"), y: by("y") };
      });
    });
}

describe("facings of which one half's shoulder is too narrow for two", () => {
  it.each(["left", "right"] as const)(
    "wider on the %s: neck and armhole of each half have one facing, and no other",
    (half) => {
      const wider = { kind: "fit", id: "a", fit: "shoulderWidth", amount: 6, half } as const;
      const bodice = bodiceOf(workOf("sideDart", { alterations: [wider] }));
      const shoulders = bodice.map((set) => edgeOf(set, "shoulder", true));
      // Two of 53 with 20 between them, 126: the one half has it, the other has not.
      expect(Math.min(...shoulders)).toBeLessThan(126);
      expect(Math.max(...shoulders)).toBeGreaterThan(126);
      const facings = drawnPieces(facingsOf(drafted(bodice, { edges: { facingDepth: 53 } })));
      for (const own of ["left", "right"] as const)
        for (const seam of ["neck", "armhole"] as const) {
          const faced = facings.filter(
            ({ half: of, piece }) => (of ?? own) === own && piece.edges.some((edge) => edge.seam === seam),
          );
          expect(faced.map(({ piece: { name } }) => name)).toEqual(["frontFacing", "backFacing"]);
        }
    },
  );
});

describe.each(STYLE_NAMES)("facings of %s", (style) => {
  const bodice = bodiceOf(workOf(style));
  const isStrapped = style === "midriff";

  it.each([
    ["neck and armhole", { neck: "facing", armhole: "facing" }, 60],
    ["neck alone", { neck: "facing", armhole: "binding" }, 60],
    ["narrow", { neck: "facing", armhole: "facing", facingDepth: 30 }, 30],
  ] as const)("%s: as long as their edges, and sound", (_, edges, depth) => {
    const draft = drafted(bodice, { edges });
    const facings = facingsOf(draft);
    expect(facings.length).toBeGreaterThanOrEqual(2);
    for (const { piece } of facings) {
      expect(validateOutline(outlineOf(piece))).toEqual([]);
      const seams = (["neck", "strap", "armhole"] as const).filter((seam) => seamByBezierJs(piece, seam) > 0);
      for (const seam of seams) {
        expect(seamByBezierJs(piece, seam)).toBeCloseTo(edgeOf(bodice[0], seam, isFrontPiece(piece.name)), 1);
      }
      expect(pointOf(piece, piece.name.includes("Armhole") ? "underarm" : "centreNeck")).toBeDefined();
    }
    const walked = (seam: SeamName) =>
      (["front", "back"] as const).map((side) =>
        facings
          .filter(({ piece }) => piece.name.startsWith(side))
          .reduce((sum, { piece }) => sum + seamByBezierJs(piece, seam), 0),
      );
    const [frontSide = 0, backSide = 0] = walked("side");
    expect(frontSide).toBeCloseTo(backSide, 1);
    // The whole shoulder has the ease of the back's, 6; a part of it none.
    const [frontShoulder = 0, backShoulder = 0] = walked("shoulder");
    const whole = edgeOf(bodice[0], "shoulder", true);
    expect(backShoulder - frontShoulder).toBeCloseTo(frontShoulder > whole - 1 && whole > 0 ? 6 : 0, 1);
    expect(isStrapped ? depth : invariant(draft.facing, "facing").depth).toBe(depth);
  });

  it("their lower line lies at the depth all along", () => {
    const draft = drafted(bodice, { edges: { neck: "facing", armhole: "facing", facingDepth: 45 } });
    const { depth } = invariant(draft.facing, "facing");
    for (const { piece } of facingsOf(draft)) {
      const isBoth = (["neck", "armhole"] as const).every((seam) => piece.edges.some((edge) => edge.seam === seam));
      const upper = sampled(piece, ["neck", "strap", "armhole", ...(isBoth ? (["shoulder"] as const) : [])]);
      const lower = sampled(piece, ["edge"]);
      const away = lower.map((p) => Math.min(...upper.map((q) => Math.hypot(p.x - q.x, p.y - q.y))));
      // At its ends it meets centre and side, which lean; between them it may cut the corner where two of its parts meet.
      expect(Math.min(...away)).toBeGreaterThan(depth - 6);
      expect(Math.max(...away)).toBeLessThan(depth + 8);
      const close = away.filter((one) => Math.abs(one - depth) < 1.5).length;
      expect(close / away.length).toBeGreaterThan(0.75);
    }
  });

  it("each has its interfacing, and none is drafted where a lining takes the edge", () => {
    const draft = drafted(bodice);
    const keys = draft.parts.map(({ key, cloth }) => [key, cloth]);
    for (const { key } of facingsOf(draft)) expect(keys).toContainEqual([`${key}-interfacing`, "interfacing"]);
    const lined = drafted(bodice, { isLined: true, edges: { neck: "binding" } });
    expect(lined).toMatchObject({ parts: [], bias: [], facing: null });
    expect(new Set(lined.edges.map(({ finish }) => finish))).toEqual(new Set(["lining"]));
    expect(new Set(lined.edges.map(({ strip }) => strip))).toEqual(new Set([null]));
  });
});

describe("darts that cross a facing", () => {
  it.each(["neck", "shoulder", "armhole"] as const)("lie shut in it: from the %s", (seam) => {
    const work = workOf("sideDart", {
      alterations: [{ kind: "dartPivot", id: "a", dart: { piece: "front", dart: "sideDart" }, to: seam, share: 1 }],
    });
    const bodice = bodiceOf(work);
    const front = pieceIn(bodice[0], "front");
    const dart = invariant(
      front.darts.find(({ seam: of }) => of === seam),
      "pivoted dart",
    );
    const [inner, outer] = [pointOf(front, dart.inner), pointOf(front, dart.outer)];
    expect(Math.hypot(outer.x - inner.x, outer.y - inner.y)).toBeGreaterThan(20);
    const { piece } = invariant(
      facingsOf(drafted(bodice)).find(({ piece: { name } }) => name === "frontFacing"),
      "facing",
    );
    expect(seamByBezierJs(piece, seam)).toBeCloseTo(seamByBezierJs(front, seam), 1);
    expect(validateOutline(outlineOf(piece))).toEqual([]);
  });
});

describe("bindings", () => {
  const bodice = bodiceOf(workOf("sideDart"));

  it("are strips four times as wide, of 97 of 100 of the edge and 50", () => {
    const { edges, bias, parts } = drafted(bodice, {
      edges: { neck: "binding", armhole: "binding", bindingWidth: 10 },
    });
    const neck = 2 * (edgeOf(bodice[0], "neck", true) + edgeOf(bodice[0], "neck", false));
    const armhole = edgeOf(bodice[0], "armhole", true) + edgeOf(bodice[0], "armhole", false);
    const [ofNeck, ofArmhole] = edges;
    expect(ofNeck?.length).toBeCloseTo(neck, 1);
    expect(ofNeck?.strip?.length).toBeCloseTo(0.97 * neck + 50, 1);
    expect(ofNeck?.strip).toMatchObject({ width: 40, count: 1 });
    expect(ofArmhole?.strip?.length).toBeCloseTo(0.97 * armhole + 50, 1);
    expect(ofArmhole?.strip).toMatchObject({ width: 40, count: 2 });
    expect(bias).toHaveLength(1);
    expect(bias[0]?.width).toBe(40);
    expect(bias[0]?.length).toBeCloseTo(0.97 * neck + 50 + 2 * (0.97 * armhole + 50), 1);
    expect(parts.map(({ grain }) => grain)).toEqual(["bias", "bias"]);
  });

  it("on halves that differ are as long as the edges of both", () => {
    const uneven = bodiceOf(
      workOf("sideDart", {
        alterations: [
          { kind: "fit", id: "a", fit: "necklineGape", amount: 6, half: "left" },
          { kind: "fit", id: "b", fit: "armholeDepth", amount: 8, half: "right" },
        ],
      }),
    );
    const { edges } = drafted(uneven, { edges: { neck: "binding", armhole: "binding" } });
    const of = (half: 0 | 1, seam: SeamName) => edgeOf(uneven[half], seam, true) + edgeOf(uneven[half], seam, false);
    expect(Math.abs(of(0, "neck") - of(1, "neck"))).toBeGreaterThan(1);
    expect(edges.map(({ edge, half, length }) => [edge, half, length])).toEqual([
      ["neck", undefined, expect.closeTo(of(0, "neck") + of(1, "neck"), 1)],
      ["armhole", "left", expect.closeTo(of(0, "armhole"), 1)],
      ["armhole", "right", expect.closeTo(of(1, "armhole"), 1)],
    ]);
  });

  it("of a strapped bodice go round front and back apart", () => {
    const strapped = bodiceOf(workOf("midriff"));
    const { edges } = drafted(strapped, { edges: { neck: "binding" } });
    expect(edges.map(({ edge, at, strip }) => [edge, at, strip?.count])).toEqual([
      ["neck", "front", 1],
      ["neck", "back", 2],
      ["armhole", undefined, 2],
    ]);
    // Its strips run on over the seams of the straps, whose ends they take in; the back is in two, each bound by itself.
    const [cup, back] = [pieceIn(strapped[0], "cup"), pieceIn(strapped[0], "back")];
    const [ofCup, ofBack] = [seamByBezierJs(cup, "strap"), seamByBezierJs(back, "strap")];
    expect(edges[0]?.strip?.length).toBeCloseTo(0.97 * 2 * (seamByBezierJs(cup, "neck") + ofCup) + 50, 1);
    expect(edges[1]?.strip?.length).toBeCloseTo(0.97 * (seamByBezierJs(back, "neck") + ofBack) + 50, 1);
    const atSide = drafted(strapped, { edges: { neck: "binding" }, closure: { place: "side", belowWaist: 150 } });
    expect(atSide.edges[1]?.strip?.count).toBe(1);
    expect(atSide.edges[1]?.strip?.length).toBeCloseTo(0.97 * 2 * (seamByBezierJs(back, "neck") + ofBack) + 50, 1);
    expect(edges[0]?.length).toBeCloseTo(2 * edgeOf(strapped[0], "neck", true), 1);
  });
});

describe("straps", () => {
  const bodice = bodiceOf(workOf("midriff"));
  const [pieces] = bodice;
  const middle = (piece: Piece) => {
    const [a, b] = [pointOf(piece, "strapInner"), pointOf(piece, "strapOuter")];
    return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  };
  const [cup, back] = [pieceIn(pieces, "cup"), pieceIn(pieces, "back")];
  const front = Math.hypot(middle(cup).x - pointOf(cup, "strapAim").x, middle(cup).y - pointOf(cup, "strapAim").y);
  const behind = pointOf(back, "strapAim");
  const figures = (straps: Straps) => invariant(drafted(bodice, { straps }).strap, "strap").left;

  it("are as long as their way and the ease, or as the pattern's without a word", () => {
    const way = front + Math.hypot(middle(back).x - behind.x, middle(back).y - behind.y);
    expect(figures({ kind: "plain", ease: -20 }).length).toBeCloseTo(way - 20, 6);
    const [top, foot] = [
      pointOf(pieceIn(pieces, "strap"), "strapBackInner"),
      pointOf(pieceIn(pieces, "strap"), "strapFrontInner"),
    ];
    expect(figures({ kind: "plain" }).length).toBeCloseTo(Math.hypot(foot.x - top.x, foot.y - top.y), 6);
    expect(figures({ kind: "plain", width: 25 })).toMatchObject({ width: 25 });
    expect(figures({ kind: "plain" }).width).toBeCloseTo(40, 6);
    // Cup and back have seams of 40: no wider one fits them.
    const wide = figures({ kind: "plain", width: 55 });
    expect(wide.width).toBeCloseTo(40, 6);
    expect(wide).toMatchObject({ asked: 55 });
  });

  it("crossed, they go over to the other side of the back", () => {
    const way = front + Math.hypot(middle(back).x + behind.x, middle(back).y - behind.y);
    expect(figures({ kind: "crossed", ease: 0 }).length).toBeCloseTo(way, 6);
    expect(figures({ kind: "crossed" }).length).toBeGreaterThan(figures({ kind: "plain" }).length);
  });

  it("cover what is worn under them with 5 on each side", () => {
    expect(figures({ kind: "plain", width: 25, braStrap: 15 }).coversBra).toBe(true);
    expect(figures({ kind: "plain", width: 24, braStrap: 15 })).toMatchObject({ coversBra: false, coversFrom: 25 });
    expect(figures({ kind: "plain" }).coversBra).toBeNull();
  });

  it("are strips twice as wide; tied, four of them; of elastic, with its casing", () => {
    const of = (straps: Straps) => drafted(bodice, { straps }).parts.filter(({ group }) => group === "strap");
    expect(of({ kind: "plain", width: 12 })).toMatchObject([
      { kind: "rectangle", name: "strap", width: 24, cut: { count: 2 }, allowances: { sides: 6 } },
    ]);
    expect(of({ kind: "tied", width: 12 })).toMatchObject([{ name: "tie", cut: { count: 4 } }]);
    const [strip, casing] = of({ kind: "plain", elastic: true });
    expect(strip).toMatchObject({ name: "strap" });
    expect(strip?.kind === "rectangle" && strip.depth).toBeCloseTo(figures({ kind: "plain" }).length - 100, 6);
    expect(casing).toMatchObject({ name: "elasticCasing", depth: 150 });
    expect(figures({ kind: "tied", elastic: true }).elastic).toBeNull();
  });

  it("are none on a bodice without them", () => {
    expect(drafted(bodiceOf(workOf("sideDart")), { straps: { kind: "plain" } }).strap).toBeNull();
  });
});
