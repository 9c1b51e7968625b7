/** The printed pieces and what there is to pick from, against chart figures. */
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { printedNestOf } from "../../../src/core/plan/planOf";
import { onOffer, printedGirths } from "../../../src/core/plan/printed";
import { planOf, testWork } from "../../support/works";

const picked = (picks: Work["picks"], more: Partial<Work> = {}): Work => ({ ...testWork, ...more, picks });

describe("the printed nest", () => {
  const labelOf = (work: Work): boolean => {
    const nest = printedNestOf(work);
    return nest.ok && nest.value === planOf(picked({ ...work.picks, baseSize: "12" })).nest;
  };

  it("is that of the cup picked, or planned, there even before there is a body", () => {
    expect(labelOf(testWork)).toBe(true);
    expect(labelOf(picked({ cup: "D" }))).toBe(true);
    const bodiless: Work = { ...testWork, tapes: [{ readings: {} }] };
    const [none, drafted] = [printedNestOf(bodiless), printedNestOf(picked({ cup: "B" }))];
    // The chart is drafted for a difference of 50, which is its B.
    expect(none.ok && drafted.ok && none.value.sizes).toEqual(drafted.ok ? drafted.value.sizes : null);
    const asked = printedNestOf({ ...bodiless, picks: { cup: "D" } });
    const d = printedNestOf(picked({ cup: "D" }));
    expect(asked.ok && d.ok && asked.value.sizes).toEqual(d.ok ? d.value.sizes : null);
    expect(asked).not.toEqual(none);
  });

  it("has a finished waist for every size with the base size's darts, and hips where it goes there", () => {
    const offer = onOffer(testWork);
    if (!offer.ok) throw new Error(offer.failure.code);
    const { waist, hip } = printedGirths(offer.value.pieces, "C", 3);
    // Hips of bust + 60 with 50 of ease.
    expect(hip?.[0]).toBeCloseTo(760 + 60 + 50, 6);
    expect(hip).toHaveLength(12);
    expect(waist).toHaveLength(12);
    // Its own is as the chart has it: 700 and 40.
    expect(waist[3]).toBeCloseTo(740, 3);
  });

  it("offers all picks of a pattern that has them", () => {
    const picks = { baseSize: "12", cup: "B", halfCups: { left: "C" }, waist: 2, hip: 3, bustAlteration: 5 };
    const offer = onOffer({ pattern: testWork.pattern, picks });
    expect(offer.ok && offer.value.picks).toEqual(picks);
  });
});
