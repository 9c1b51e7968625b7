/** How seldom the search for a layout has to ask where two pieces clash. */
import { beforeEach, describe, expect, it, vi } from "vitest";
import { Clashes } from "../../../src/core/sheets/clashes";
import { FORMATS } from "../../../src/core/sheets/formats";
import { layPieces } from "../../../src/core/sheets/layPieces";
import { toLay } from "./laid";

const counted = vi.hoisted(() => ({ clashes: 0 }));

vi.mock("../../../src/core/sheets/clash", async (original) => {
  const real = await original<typeof import("../../../src/core/sheets/clash")>();
  return {
    ...real,
    clashOf: (...of: Parameters<typeof real.clashOf>) => {
      counted.clashes += 1;
      return real.clashOf(...of);
    },
  };
});

beforeEach(() => {
  counted.clashes = 0;
});

/** Nine pieces like those of a dress: a hollow at one corner, a slant at another. */
const NINE = Array.from({ length: 9 }, (_, at) => {
  const [width, height] = [180 + 35 * (at % 4), 620 - 50 * at];
  return toLay(`p${at}`, [
    [0, 0],
    [width - 60, 0],
    [width - 50, 70],
    [width, 110],
    [width - 8 * at, height],
    [0, height - 15],
  ]);
});

const MOST_ASKED = 28_500;

describe("laying nine pieces on Letter", () => {
  it("looks at no two turned pieces more than once, and at no sheet that takes more pages than one found", () => {
    const asked = vi.spyOn(Clashes.prototype, "on");
    const layout = layPieces(NINE, { format: FORMATS.Letter, margin: 10, overlap: 10, gap: 0 });
    expect(layout.ok).toBe(true);
    const calls = asked.mock.calls.length;
    asked.mockRestore();
    // As it is 28 148; where tries go on beyond the pages that were found, or a page is asked for each way to lie, more.
    expect(calls).toBeLessThan(MOST_ASKED);
    // Eight others in four turns for each of nine in four.
    expect(counted.clashes).toBeLessThanOrEqual(9 * 8 * 4 * 4);
    expect(counted.clashes).toBeGreaterThan(0);
  }, 240_000);
});
