/**
 * Pieces that cannot be trued when all is done: the alteration at fault is found and left out by name, the rest stands. No
 * chain is known that truing does not come to an end with, so here it is said to fail wherever certain alterations are made.
 */
import { beforeEach, describe, expect, it, vi } from "vitest";
import type { Alteration } from "../../../src/core/decisions/alteration";
import type { PieceSet } from "../../../src/core/pattern/pieceSet";
import type { TruingLeft } from "../../../src/core/truing/truingLeft";
import { alterationFailureSentence } from "../../../src/words/planned";
import { planOf, withAlterations } from "../../support/works";

interface Truing {
  left: (after: PieceSet) => TruingLeft | null;
  looks: number;
}
const truing = vi.hoisted((): Truing => ({ left: () => null, looks: 0 }));

vi.mock("../../../src/core/truing/truingLeft", () => ({
  leftOf: (_: PieceSet, after: PieceSet) => {
    truing.looks += 1;
    return truing.left(after);
  },
}));

const LEFT: TruingLeft = { piece: "back", seam: "shoulder", off: 7 };
/** The tip of the back's shoulder lies out by what the shoulder was widened. */
const tipOf = (pieces: PieceSet): number => pieces.back?.points.shoulderTip?.at.x ?? NaN;
const untouched = tipOf(Object.fromEntries(planOf(withAlterations()).left.pieces.map((piece) => [piece.name, piece])));

const wider = (id: string, amount: number, half?: "left"): Alteration => ({
  kind: "fit",
  id,
  fit: "shoulderWidth",
  amount,
  ...(half === undefined ? {} : { half }),
});
const sway: Alteration = { kind: "fit", id: "sway", fit: "swayBack", amount: 6 };
const sides = (id: string): Alteration => ({ kind: "fit", id, fit: "sideSeamWaist", amount: 2 });

const refusedOf = (...alterations: readonly Alteration[]): readonly string[] =>
  planOf(withAlterations(...alterations)).ledger.flatMap(({ id, outcome }) => (outcome.ok ? [] : [id]));

beforeEach(() => {
  truing.left = (pieces) => (tipOf(pieces) - untouched > 4 ? LEFT : null);
  truing.looks = 0;
});

describe("pieces that cannot be trued", () => {
  it("leave out the one alteration they cannot be trued after, with what stays over, and keep the others", () => {
    const { ledger, left } = planOf(withAlterations(sides("a"), wider("w", 6), sway, sides("b")));
    expect(ledger.flatMap(({ id, outcome }) => (outcome.ok ? [] : [[id, outcome.failure]]))).toEqual([
      ["w", { code: "alteration/not-trued", ...LEFT }],
    ]);
    expect(left.pieces).toEqual(planOf(withAlterations(sides("a"), sway, sides("b"))).left.pieces);
    expect(alterationFailureSentence({ code: "alteration/not-trued", ...LEFT }, "cm")).toBe(
      "The shoulder seam of the back could not be trued after it: 7 mm would be left over.",
    );
  });

  it("leave out each that is at fault, and on both halves what cannot be trued on one", () => {
    expect(refusedOf(wider("w", 6), sway, wider("v", 8))).toEqual(["w", "v"]);
    // Only with the left half's own does the tip of the left go too far.
    expect(refusedOf(wider("one", 3, "left"), sway, wider("w", 3))).toEqual(["w"]);
  });

  it("are sought for no longer than is bearable: then all that follow are left out", () => {
    const many = Array.from({ length: 40 }, (_, index) => wider(String(index), 6));
    expect(refusedOf(sides("a"), ...many, sides("b"))).toEqual([...many.map(({ id }) => id), "b"]);
    expect(truing.looks).toBeLessThan(60);
  });

  it("are no alteration's fault where the blended pieces cannot be trued themselves", () => {
    truing.left = () => LEFT;
    expect(refusedOf(sides("a"), sway)).toEqual([]);
  });
});
