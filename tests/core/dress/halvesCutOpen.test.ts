/**
 * A piece on the fold whose halves differ is cut once, open. Held against the true-scale paper, which prints its halves apart,
 * each right side up: one lies at the right of the line that joins them, the other at its left, and together they are the piece.
 */
import { describe, expect, it } from "vitest";
import { cutListOf, layCloth } from "../../../src/core/cloth/layCloth";
import { printedParts, truePartsOf } from "../../../src/core/cutting/trueParts";
import type { TruePiece } from "../../../src/core/cutting/truePiece";
import { truePiecesOf } from "../../../src/core/cutting/truePieces";
import { CLOTH_NAMES } from "../../../src/core/decisions/dress";
import type { Work } from "../../../src/core/decisions/work";
import { dressOf } from "../../../src/core/dress/dressOf";
import { PIECE_ORDER } from "../../../src/core/pattern/pieceSet";
import { planOf } from "../../../src/core/plan/planOf";
import { cutWords } from "../../../src/words/dressParts";
import { testWork } from "../../support/works";

interface Spot {
  readonly x: number;
  readonly y: number;
}

const DRESS: Work = {
  ...testWork,
  pattern: { ...testWork.pattern, style: "sideDart", length: "waist" },
  dress: {
    skirt: { kind: "straight", length: 600 },
    lining: { bodice: true, skirt: true },
    edges: { neck: "facing", armhole: "facing" },
    opacity: "clear",
    under: "underlining",
  },
};
const UNEVEN: Work = {
  ...DRESS,
  alterations: [
    { kind: "fit", id: "a", fit: "sideSeamWaist", amount: 14, half: "left" },
    { kind: "fit", id: "b", fit: "shoulderSlope", amount: -9, half: "left" },
  ],
};
const AT_THE_SIDE: Work = {
  ...DRESS,
  pattern: { ...DRESS.pattern, closure: { place: "side", belowWaist: 180 } },
};

const areaOf = (ring: readonly Spot[]): number =>
  Math.abs(
    ring.reduce((sum, { x, y }, at) => {
      const next = ring[(at + 1) % ring.length] ?? { x, y };
      return sum + x * next.y - next.x * y;
    }, 0),
  ) / 2;

/** What lies to the right of an upright line. */
function rightOf(ring: readonly Spot[], line: number): readonly Spot[] {
  return ring.flatMap((a, at) => {
    const b = ring[(at + 1) % ring.length] ?? a;
    const crosses = a.x < line !== b.x < line;
    const t = crosses ? (line - a.x) / (b.x - a.x) : 0;
    return [...(a.x >= line ? [a] : []), ...(crosses ? [{ x: line, y: a.y + t * (b.y - a.y) }] : [])];
  });
}

function cutOf(work: Work) {
  const [dress, plan] = [dressOf(work), planOf(work)];
  if (!dress.ok || !plan.ok) throw new Error("no dress");
  const { parts } = dress.value;
  const allowances = work.allowances ?? {};
  const { closure } = work.pattern;
  const bodice = truePiecesOf(plan.value, { names: PIECE_ORDER, size: null, allowances, closure });
  const ids = printedParts(parts).map(({ id }) => id);
  const printed = truePartsOf({ parts, ids, allowances, closure, liningOpen: null });
  if (!bodice.ok || !printed.ok) throw new Error("no paper");
  const lays = dress.value.cloths.flatMap((name) => {
    const lay = layCloth({ name, cloth: {}, parts, allowances, closure, unit: "cm" });
    return lay.ok ? lay.value.parts : [];
  });
  return { parts, paper: [...bodice.value, ...printed.value], list: cutListOf(parts, allowances, closure), lays };
}

const ring = (piece: TruePiece | undefined): readonly Spot[] => (piece?.cutting ?? []).map(({ at }) => at);

describe.each([
  // Shell, skirt, underlining, linings, facings and their interfacing; the back opens, and is cut for each half.
  ["an uneven bodice", UNEVEN, ["front", "skirtFront", "lining-front", "lining-skirtFront"], 8],
  // Of a lined dress that opens at the side only the lining's halves differ.
  ["an opening at the side", AT_THE_SIDE, ["lining-front", "lining-skirtFront", "lining-skirtBack"], 2],
])("a piece on the fold whose halves differ: %s", (_, work, keys, least) => {
  const { parts, paper, list, lays } = cutOf(work);
  const joined = parts.flatMap((part) =>
    part.kind === "piece" && paper.some(({ key, cut }) => key === `${part.key}-left` && cut.onFold) ? [part] : [],
  );

  it("is one part, cut once, not on the fold, in one layer", () => {
    expect(joined.map(({ key }) => key)).toEqual(expect.arrayContaining(keys));
    expect(parts.filter(({ cut, half }) => cut.onFold && half !== null)).toEqual([]);
    expect(parts.filter(({ kind, key }) => kind === "piece" && /-(?:left|right)$/u.test(key)).length % 2).toBe(0);
    for (const part of joined) {
      expect(part).toMatchObject({ cut: { onFold: false, count: 1 }, half: null });
      expect(cutWords(part)).toBe("1, opened out, one layer, right side up");
      expect(list.filter(({ key }) => key === part.key)).toMatchObject([{ count: 1, onFold: false, inPairs: false }]);
      expect(lays.filter(({ key }) => key === part.key)).toMatchObject([{ layers: 1, atFold: false }]);
    }
    const fused = parts.filter(({ cut, cloth }) => cloth !== "main" && cut.count === 1 && !cut.onFold);
    expect(joined.length + fused.length).toBeGreaterThanOrEqual(least);
    expect(CLOTH_NAMES).toContain("underlining");
  });

  it("is laid as both of its printed halves lie beside each other, right side up", () => {
    for (const { key } of joined) {
      const [left, right] = ["left", "right"].map((half) =>
        ring(paper.find((piece) => piece.key === `${key}-${half}`)),
      );
      const laid = lays.find((one) => one.key === key);
      if (left === undefined || right === undefined || laid === undefined) throw new Error(key);
      const reach = (of: readonly Spot[], way: 1 | -1): number => Math.max(0, ...of.map(({ x }) => way * x));
      // Which of the halves lies at the right of the line that joins them.
      const [atRight, atLeft] = reach(left, 1) > reach(left, -1) ? [left, right] : [right, left];
      expect(reach(atRight, 1)).toBeGreaterThan(50);
      expect(reach(atLeft, -1)).toBeGreaterThan(50);
      expect(laid.width).toBeCloseTo(reach(atRight, 1) + reach(atLeft, -1), 1);
      expect(areaOf(laid.ring) / (areaOf(left) + areaOf(right))).toBeCloseTo(1, 4);
      const isUpright = laid.turn === 0;
      const [low] = laid.ring.map(({ x }) => x).toSorted((a, b) => a - b);
      const line = (low ?? 0) + reach(isUpright ? atLeft : atRight, isUpright ? -1 : 1);
      expect(areaOf(rightOf(laid.ring, line)) / areaOf(isUpright ? atRight : atLeft)).toBeCloseTo(1, 4);
    }
  });
});
