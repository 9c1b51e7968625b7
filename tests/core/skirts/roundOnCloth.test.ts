/** What a round skirt is cut into has room on the cloth that it is cut for, single or on the fold, as the lay places it. */
import { copiesOf } from "../../../src/core/cloth/copies";
import { draftSkirt } from "../../../src/core/skirts/draftSkirt";
import { SELVAGE } from "../../../src/core/skirts/skirtPractice";
import { describe, expect, it } from "vitest";
import { ASKED } from "../../support/skirts";

const toFloor = { front: 1010, side: 1030, back: 1000 };

describe.each([900, 1140, 1400, 1500])("on cloth %i wide", (clothWidth) => {
  it.each([
    { onFold: false, body: ASKED.body },
    { onFold: true, body: ASKED.body },
    { onFold: false, body: { ...ASKED.body, toFloor } },
    { onFold: true, body: { ...ASKED.body, toFloor } },
  ])("every share of a circle has room or is refused by name (on the fold: $onFold)", ({ onFold, body }) => {
    const faults: string[] = [];
    for (const share of [0.3, 0.5, 0.75, 1, 1.4, 2])
      for (const length of [260, 450, 600, 800, 1100])
        for (const place of ["centreBack", "side"] as const) {
          const closure = { place, belowWaist: 180 };
          const skirt = { kind: "circle", share, length } as const;
          const made = draftSkirt({ ...ASKED, body, closure, clothWidth, clothOnFold: onFold, skirt });
          const name = `${share} of a circle ${length} long, ${place}`;
          if (!made.ok) {
            if (made.failure.code !== "skirt/cloth-too-narrow") faults.push(`${name}: ${made.failure.code}`);
            continue;
          }
          const usable = onFold ? clothWidth / 2 - SELVAGE : clothWidth - 2 * SELVAGE;
          const copies = copiesOf(made.value.parts, {}, { oneWay: false, onFold, usable });
          if (!copies.ok) faults.push(`${name}: ${JSON.stringify(copies.failure)}`);
        }
    expect(faults).toEqual([]);
  });
});
