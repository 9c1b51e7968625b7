/** What the first page says of buttons, held against the marks on the very pieces of that sheet. */
import { describe, expect, it } from "vitest";
import { distance } from "../../src/core/geometry/point";
import type { Work } from "../../src/core/decisions/work";
import { invariant } from "../../src/core/result";
import { makePaper } from "../../src/paper/makePaper";
import type { PaperRequest } from "../../src/paper/request";
import { truePiecesFor } from "../../src/paper/sheets";
import { TYPEFACES as typefaces } from "../support/inkPages";
import { textOf } from "../support/poppler";
import { planOf, testWork } from "../support/works";

const work: Work = {
  ...testWork,
  pattern: { ...testWork.pattern, length: "hip", closure: { place: "centreBack", belowWaist: 180, buttons: 9 } },
};
const plan = planOf(work);

const asked = (choices: Partial<PaperRequest["choices"]>): PaperRequest => ({
  work,
  plan,
  day: "2026-11-29",
  choices: {
    kind: "pieces",
    format: "A4",
    margin: 10,
    size: null,
    pieces: plan.left.pieces.map(({ name }) => name),
    under: [],
    before: false,
    allowances: true,
    ...choices,
  },
});

function firstPage(request: PaperRequest): string {
  const made = makePaper(request, "pdf", typefaces, () => undefined);
  if (!made.ok) throw new Error(made.failure.code);
  return textOf(made.value.bytes, 1);
}

/** mm between the two uppermost buttons marked on the back. */
function marked(request: PaperRequest): number {
  const pieces = truePiecesFor(request);
  if (!pieces.ok) throw new Error(pieces.failure.code);
  const back = invariant(
    pieces.value.find(({ name }) => name === "back"),
    "back",
  );
  const [one, two] = back.drills.filter(({ what }) => what === "button").toSorted((p, q) => p.at.y - q.at.y);
  return distance(invariant(one, "button").at, invariant(two, "button").at);
}

describe("how far apart buttons are said to come", () => {
  const labels = plan.nest.labels;
  it.each([null, labels[0], labels.at(-1)])("is as they are marked on the pieces of size %s", (size = null) => {
    const request = asked({ size });
    const said = /9 buttons: (\d+)\smm from one to the next/u.exec(firstPage(request))?.[1];
    expect(Math.abs(Number(said) - marked(request))).toBeLessThanOrEqual(0.5);
  });

  it("differs between the smallest and the largest size, so that one does not stand for the other", () => {
    const [small, large] = [labels[0] ?? null, labels.at(-1) ?? null].map((size) =>
      Math.round(marked(asked({ size }))),
    );
    expect(small).not.toBe(large);
  });

  it("is not said where all sizes lie one in another, which have no marks", () => {
    const said = firstPage(asked({ nested: true, allowances: false }));
    expect(said).not.toMatch(/Circles on the centre back|buttons:/u);
  });
});
