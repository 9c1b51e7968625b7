/** The lining within the whole dress: any dress at all, any lining of it, on any demo. */
import * as fc from "fast-check";
import { expect, it } from "vitest";
import type { Lining } from "../../../src/core/decisions/dress";
import { dressOf } from "../../../src/core/dress/dressOf";
import { validateOutline } from "../../../src/core/geometry/outline";
import { piecesOf } from "../../../src/core/pattern/pieceSet";
import { outlineOf } from "../../../src/core/pattern/ring";
import { anyDressWork } from "../../support/arbitraryDress";

const RUNS = Number(process.env.CHAINS ?? 40);

const anyLining: fc.Arbitrary<Lining> = fc.record(
  {
    bodice: fc.constant(true),
    skirt: fc.constant(true),
    bodiceEase: fc.integer({ min: 0, max: 30 }),
    hipEase: fc.integer({ min: 30, max: 90 }),
    hemGirth: fc.integer({ min: 900, max: 1800 }),
    shorter: fc.integer({ min: -10, max: 60 }),
    freeBelow: fc.integer({ min: 0, max: 60 }),
    freeBeside: fc.integer({ min: 0, max: 12 }),
    shaping: fc.constantFrom("darts" as const, "pleats" as const),
  },
  { requiredKeys: [] },
);

it(
  "is sewn to the finished waist and walks, passes by the one reading of the closure, and can be cut",
  { timeout: 300_000 },
  () => {
    let count = 0;
    fc.assert(
      fc.property(anyDressWork, anyLining, ({ dress, ...work }, lining) => {
        const made = dressOf({ ...work, dress: { ...dress, lining } });
        if (!made.ok) return;
        const { checks, lining: result, closure, parts } = made.value;
        if (result?.ok !== true) return;
        count += 1;
        const ours = checks.filter(
          ({ name }) => name === "liningWaistWalks" || name === "liningSidesWalk" || name === "liningOverHip",
        );
        expect(ours.filter(({ ok }) => !ok)).toEqual([]);
        const { bodice, skirt, notes, skirtFigures } = result.value;
        for (const piece of [...bodice, ...skirt].flatMap(piecesOf))
          expect([
            piece.name,
            validateOutline(outlineOf(piece)).filter(({ code }) => code !== "outline/short-edge"),
          ]).toEqual([piece.name, []]);
        const keys = parts.map(({ key }) => key);
        expect(new Set(keys).size).toBe(keys.length);
        // What the closure finds tightest in the lining is what the lining says of itself.
        const note = notes.find(({ code }) => code === "lining/over-hips");
        const stepping = closure?.ways.find(({ way }) => way === "steppingIn");
        const lets = stepping?.tightest.of === "lining" && stepping.tightest.below >= 0 ? stepping.tightest.lets : null;
        const own = note?.code === "lining/over-hips" ? note.lets : null;
        expect(lets === null || own === null || Math.abs(lets - own) < 0.5).toBe(true);
        expect(own === null).toBe(skirtFigures === null);
      }),
      { numRuns: RUNS },
    );
    expect(count).toBeGreaterThan(RUNS / 4);
  },
);
