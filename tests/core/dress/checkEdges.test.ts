/** The dress as a whole: its checks of edges and opening hold, fail where a part is spoilt, and are the one word on getting in. */
import { describe, expect, it } from "vitest";
import type { Dress } from "../../../src/core/decisions/dress";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { checkEdges } from "../../../src/core/dress/checkEdges";
import { dressOf } from "../../../src/core/dress/dressOf";
import type { DressPlan } from "../../../src/core/dress/dressPlan";
import { bodiceParts } from "../../../src/core/dress/bodiceParts";
import type { Part } from "../../../src/core/parts/part";
import type { Piece } from "../../../src/core/pattern/piece";
import { piecePoint } from "../../../src/core/geometry/point";
import { invariant } from "../../../src/core/result";
import { planOf, testWork } from "../../support/works";

const workOf = (dress: Dress | undefined, more: Partial<Work["pattern"]> = {}): Work => ({
  ...testWork,
  pattern: { ...testWork.pattern, ...more },
  ...(dress === undefined ? {} : { dress }),
});

function dressed(work: Work): DressPlan {
  const dress = dressOf(work);
  if (!dress.ok) throw new Error(JSON.stringify(dress.failure));
  return dress.value;
}

const asked = ({ bodice, waist, edges, closure, parts }: DressPlan, changed: readonly Part[] = parts) => ({
  dress: {},
  bodice,
  waist,
  skirt: null,
  lining: null,
  edges,
  closure: testWork.pattern.closure,
  reading: closure,
  under: "nothing" as const,
  parts: changed,
  allowances: {},
});

describe.each(STYLE_NAMES)("%s", (style) => {
  it("its facings walk", () => {
    const { checks } = dressed(workOf({ edges: { facingDepth: 50 } }, { style }));
    const walks = checks.filter(({ name }) => name === "facingsWalk");
    expect(walks.length).toBeGreaterThanOrEqual(4);
    expect(walks.filter(({ ok }) => !ok)).toEqual([]);
  });
});

describe("a facing that is spoilt", () => {
  it("fails at its edge", () => {
    const plan = dressed(workOf({}));
    const parts = plan.parts.map((part): Part =>
      part.kind === "piece" && part.key === "backFacing" ? { ...part, piece: moved(part.piece) } : part,
    );
    expect(checkEdges(asked(plan)).filter(({ ok }) => !ok)).toEqual([]);
    const failing = checkEdges(asked(plan, parts)).filter(({ ok }) => !ok);
    expect(failing.length).toBeGreaterThan(0);
    expect(new Set(failing.map(({ name }) => name))).toEqual(new Set(["facingsWalk"]));
  });
});

/** Its neck at the shoulder 3 mm further out. */
function moved(piece: Piece): Piece {
  const at = invariant(piece.points.sideNeck, "side neck");
  return { ...piece, points: { ...piece.points, sideNeck: { ...at, at: piecePoint(at.at.x + 3, at.at.y) } } };
}

describe("getting in", () => {
  it("is told by the plan of a bodice, and by the dress alone of a dress, with the same numbers", () => {
    for (const place of ["centreBack", "side"] as const) {
      for (const belowWaist of [20, 120, 180]) {
        const closure = { place, belowWaist };
        const plain = planOf(workOf(undefined, { closure })).checks.filter(({ name }) => name === "openingPasses");
        expect(plain.length).toBeGreaterThan(0);
        const inDress = workOf({ opacity: "opaque" }, { closure });
        expect(planOf(inDress).checks.filter(({ name }) => name === "openingPasses")).toEqual([]);
        const { checks, closure: reading } = dressed(inDress);
        const [opens] = checks.filter(({ name }) => name === "opensEnough");
        expect(opens?.ok).toBe(plain.every(({ ok }) => ok));
        expect(reading?.passes).toBe(opens?.ok);
        // The tightest of what the plan tells.
        const tightest = plain.toSorted((a, b) => a.measured - a.expected - (b.measured - b.expected))[0];
        expect([opens?.measured, opens?.expected]).toEqual([tightest?.measured, tightest?.expected]);
      }
    }
  });
});

describe("a strap drafted anew", () => {
  it("takes the place of the pattern's", () => {
    const plan = dressed(workOf({ straps: { kind: "plain", width: 15 } }, { style: "midriff" }));
    expect(plan.parts.filter(({ group }) => group === "strap").map(({ key }) => key)).toEqual(["strap-strip"]);
    const own = dressed(workOf({}, { style: "midriff" }));
    expect(own.parts.filter(({ group }) => group === "strap").map(({ key }) => key)).toEqual(["strap"]);
    expect(bodiceParts(plan.bodice, own.edges).some(({ key }) => key === "strap")).toBe(true);
  });
});
