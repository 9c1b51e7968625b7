/** At which darts a front is spread for the bust, told of pieces made up for it: which was there, which is opened, how far down. */
import { describe, expect, it } from "vitest";
import type { Dart, Piece } from "../../../src/core/pattern/piece";
import { pointOf } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { listWork } from "../../../src/core/plan/checklist";
import type { BustSpreadAt } from "../../../src/core/plan/plan";
import { planOf, testWork } from "../../support/works";

const plan = planOf({ ...testWork, picks: { baseSize: "12", cup: "B", bustAlteration: 20 } });

type Change = (piece: Piece) => Piece;
const same: Change = (piece) => piece;
const withDarts =
  (change: (dart: Dart) => readonly Dart[]): Change =>
  (piece) => ({ ...piece, darts: piece.darts.flatMap(change) });

/** What is told of the spread, the front before and after it being changed so. */
function toldOf(before: Change, after: Change): BustSpreadAt | undefined {
  const alterations = plan.left.alterations.map((planned) => {
    const { outcome } = planned;
    if (planned.source !== "bust" || !outcome.ok) return planned;
    const { before: was, after: is } = outcome.value;
    if (was.front === undefined || is.front === undefined) throw new Error("no front");
    const value = { ...outcome.value, before: { front: before(was.front) }, after: { front: after(is.front) } };
    return { ...planned, outcome: { ok: true as const, value } };
  });
  const jobs = listWork({
    ...plan.left,
    alterations,
    traced: setOf(plan.blended),
    pieces: setOf(plan.left.fitted),
    drawn: setOf(plan.left.pieces),
    twice: new Set(),
  });
  return jobs.flatMap(({ step }) => (step.kind === "bust" ? [step.at] : []))[0];
}

const onlySide = withDarts((dart) => (dart.name === "sideDart" ? [dart] : []));
const onlyWaist = withDarts((dart) => (dart.name === "waistDart" ? [dart] : []));

describe("a front spread for the bust", () => {
  it("is at the darts that were there", () => {
    expect(toldOf(same, same)).toEqual({
      side: "sideDart",
      sideOpened: null,
      waist: "waistDart",
      isWaistOpened: false,
    });
  });

  it("is at a dart that it opens: at the side so far from the bust line's corner, or from the underarm", () => {
    const front = plan.left.alterations.flatMap(({ source, outcome }) =>
      source === "bust" && outcome.ok && outcome.value.after.front !== undefined ? [outcome.value.after.front] : [],
    )[0];
    if (front === undefined) throw new Error("no front");
    const from = (point: "sideBust" | "underarm"): number => {
      const [a, b] = [pointOf(front, point), pointOf(front, "sideDartInner")];
      return Math.hypot(a.x - b.x, a.y - b.y);
    };
    expect(toldOf(onlyWaist, same)?.sideOpened).toEqual({
      from: "sideBust",
      by: expect.closeTo(from("sideBust"), 9),
    });
    const unmarked: Change = (piece) => {
      const { sideBust: _gone, ...points } = piece.points;
      return { ...piece, points };
    };
    expect(toldOf(onlyWaist, unmarked)?.sideOpened).toEqual({
      from: "underarm",
      by: expect.closeTo(from("underarm"), 9),
    });
    expect(toldOf(onlySide, same)).toMatchObject({ sideOpened: null, isWaistOpened: true });
  });

  it("is at no gathers, nor at darts that serve no bust, and then nothing is told of where", () => {
    const gathered = withDarts((dart) => [dart.name === "waistDart" ? { ...dart, gathered: true } : dart]);
    const aside = withDarts((dart) => [dart.name === "sideDart" ? { ...dart, aimsAt: null } : dart]);
    for (const one of [gathered, aside, onlySide, onlyWaist]) expect(toldOf(same, one)).toBeUndefined();
  });
});
