/**
 * Random chains of alterations on nests of a house that is not ours: seams of several cubics, corners within a seam, other darts
 * or none. As on the stand-in: pieces that can be cut with every fault told, or a named refusal; never a crash.
 */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Piece, PieceName, SeamName } from "../../../src/core/pattern/piece";
import { badNumbers, isSpoilt, isToldOf } from "../../support/faultsOfPlan";
import { foreignNest } from "../../support/foreign/foreignNest";
import type { ForeignFront, ForeignNest } from "../../support/foreign/foreignTypes";
import { anyForeignWork, bodyOfSize, planOfForeign, workOn } from "../../support/foreign/foreignWork";
import { tracedOf } from "../../support/foreign/asTraced";
import { seamByBezierJs } from "../../support/independent";

const RUNS = Number(process.env.CHAINS ?? 7);

/** mm, as on the stand-in: what the checks allow, and a hundredth for the library. */
const NEAR = 0.06;
/** mm. What is not altered stays as it was read. */
const AS_READ = 0.05;

const FRONTS: readonly PieceName[] = ["front", "centreFront", "sideFront"];

function unwalked(pieces: readonly Piece[], { shoulderEase }: ForeignNest): string[] {
  const sewn: readonly (readonly [SeamName, readonly PieceName[], readonly PieceName[], number])[] = [
    ["shoulder", ["back"], FRONTS, shoulderEase],
    ["side", ["back"], FRONTS, 0],
    ["princess", ["centreFront"], ["sideFront"], 0],
    ["waist", FRONTS, ["frontBasque"], 0],
    ["waist", ["back"], ["backBasque"], 0],
    ["side", ["backBasque"], ["frontBasque"], 0],
  ];
  const of = (names: readonly PieceName[], seam: SeamName): number =>
    pieces.filter(({ name }) => names.includes(name)).reduce((sum, piece) => sum + seamByBezierJs(piece, seam), 0);
  return sewn.flatMap(([seam, first, second, ease]) => {
    const [a, b] = [of(first, seam), of(second, seam)];
    return a > 0 && b > 0 && !(Math.abs(a - b - ease) <= NEAR) ? [`${seam} of ${first.join("+")}: ${a} and ${b}`] : [];
  });
}

/** The furthest that any point or handle of a piece lies from where it was, mm; both have the same ring. */
function furthestMoved(before: Piece, after: Piece): number {
  let most = 0;
  after.edges.forEach((edge, index) => {
    const was = before.edges[index];
    if (was?.from !== edge.from) throw new Error(`another ring at ${edge.from}`);
    const pairs = [
      [before.points[edge.from]?.at, after.points[edge.from]?.at],
      [was.curve?.c1, edge.curve?.c1],
      [was.curve?.c2, edge.curve?.c2],
    ] as const;
    for (const [a, b] of pairs)
      if (a !== undefined && b !== undefined) most = Math.max(most, Math.hypot(b.x - a.x, b.y - a.y));
  });
  return most;
}

const KINDS: readonly ForeignFront[] = ["side", "french", "waist", "none", "princessArmhole", "princessShoulder"];

describe.each(KINDS)("chains on foreign fronts: %s", (front) => {
  it("give pieces that can be cut, or say which fault or refusal there is", () => {
    fc.assert(
      fc.property(anyForeignWork({ front }), (made) => {
        const plan = planOfForeign(made);
        if (!plan.ok) {
          if (!plan.failure.code.startsWith("plan/")) throw new Error(plan.failure.code);
          return;
        }
        const { value } = plan;
        expect(badNumbers([value.left.pieces, value.right.pieces, value.levels, value.checks])).toEqual([]);
        const unnamed = value.ledger.filter(
          ({ outcome }) => !outcome.ok && !outcome.failure.code.startsWith("alteration/"),
        );
        expect(unnamed).toEqual([]);
        const isTold = value.checks.some(({ name, ok }) => name === "seamsWalk" && !ok);
        for (const half of [value.left, value.right]) {
          expect(isTold ? [] : unwalked(half.pieces, made.foreign)).toEqual([]);
          expect(half.pieces.filter((piece) => isSpoilt(piece) && !isToldOf(value, piece))).toEqual([]);
        }
      }),
      { numRuns: RUNS },
    );
  }, 120_000);

  it("leave what is not altered as it was read, and tell no fault of it", () => {
    for (const neck of ["sweetheart", "zigzag"] as const) {
      const foreign = foreignNest({ seed: 17, front, neck, side: "shaped", basque: true, unlike: true, other: true });
      const size = 1;
      const plan = planOfForeign(workOn(foreign, bodyOfSize(foreign, size)));
      if (!plan.ok) throw new Error(plan.failure.code);
      const read = tracedOf(foreign).sizes[size]?.pieces ?? [];
      expect(plan.value.left.pieces.length).toBe(read.length);
      for (const piece of plan.value.left.pieces) {
        const was = read.find(({ name }) => name === piece.name);
        if (was === undefined) throw new Error(piece.name);
        expect(furthestMoved(was, piece)).toBeLessThan(AS_READ);
      }
      const faults = plan.value.checks.filter(
        ({ ok, name }) => !ok && !name.startsWith("dart") && name !== "openingPasses",
      );
      expect(faults).toEqual([]);
    }
  });

  it("leave pieces alone that an alteration is not made on, and corners within a seam corners", () => {
    const foreign = foreignNest({ seed: 23, front, neck: "zigzag", basque: true, hem: "zigzag", other: true });
    const plan = planOfForeign(
      workOn(foreign, bodyOfSize(foreign, 1), [{ kind: "fit", id: "a", fit: "shoulderSlope", amount: 8 }]),
    );
    if (!plan.ok) throw new Error(plan.failure.code);
    const read = tracedOf(foreign).sizes[1]?.pieces ?? [];
    for (const name of ["frontBasque", "backBasque", "other1"] as const) {
      const [was, is] = [read, plan.value.left.pieces].map((all) => all.find((piece) => piece.name === name));
      if (was === undefined || is === undefined) throw new Error(name);
      expect(furthestMoved(was, is)).toBeLessThan(AS_READ);
    }
    const neckPiece = front.startsWith("princess") ? "centreFront" : "front";
    const [was, is] = [read, plan.value.left.pieces].map((all) => all.find((piece) => piece.name === neckPiece));
    if (was === undefined || is === undefined) throw new Error(neckPiece);
    // Six teeth: eleven corners between straight lines, each still a corner of much the same angle.
    const corners = (piece: Piece): readonly number[] => {
      const neck = piece.edges.filter(({ seam }) => seam === "neck");
      return neck.slice(1).map(({ from, to, curve }, index) => {
        // The last comes to the shoulder at the angle that it did.
        expect(index === neck.length - 2 ? null : curve).toBeNull();
        const [a, b, c] = [neck[index]?.from ?? from, from, to].map((point) => piece.points[point]?.at);
        if (a === undefined || b === undefined || c === undefined) throw new Error("corner");
        const turn = Math.atan2(c.y - b.y, c.x - b.x) - Math.atan2(b.y - a.y, b.x - a.x);
        return Math.atan2(Math.sin(turn), Math.cos(turn));
      });
    };
    const [before, after] = [corners(was), corners(is)];
    expect(before).toHaveLength(11);
    before.forEach((turn, index) => {
      expect(Math.abs((after[index] ?? 0) - turn)).toBeLessThan(0.15);
      expect(Math.abs(turn)).toBeGreaterThan(0.5);
    });
  });
});
