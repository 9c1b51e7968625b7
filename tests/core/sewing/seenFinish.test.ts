/** How seams are finished: common practice, no source. A French seam encloses its edges, a lining that hangs free covers none. */
import { describe, expect, it } from "vitest";
import type { Dress } from "../../../src/core/decisions/dress";
import { dressOf } from "../../../src/core/dress/dressOf";
import { finishOf as finishOfStep } from "../../../src/core/sewing/seenFinish";
import type { SewingStepName } from "../../../src/core/sewing/sewingStep";
import { testWork } from "../../support/works";

function finishOf(dress: Dress, name: SewingStepName): unknown {
  const made = dressOf({ ...testWork, dress });
  return made.ok ? made.value.sewing.find((step) => step.name === name)?.finish : undefined;
}

const skirt = { kind: "aLine", panels: 2, length: 600 } as const;

describe("the seams of a dress that shows nothing", () => {
  it("are neatened where nothing covers them", () => {
    expect(finishOf({ skirt }, "skirtSides")).toBe("neatened");
    expect(finishOf({ skirt }, "bodiceSides")).toBe("neatened");
    expect(finishOf({ skirt }, "sewDarts")).toBeNull();
  });

  it("are covered in a lined bodice, and not by a skirt's lining, which hangs free", () => {
    const lined = { skirt, lining: { bodice: true, skirt: true } };
    expect(finishOf(lined, "shoulderSeams")).toBeNull();
    expect(finishOf(lined, "skirtSides")).toBe("neatened");
  });

  it("are covered by an underlining", () => {
    expect(finishOf({ skirt, under: "underlining" }, "skirtSides")).toBeNull();
  });
});

describe("the seams of a sheer dress", () => {
  it("are French seams, double stitched or bound, as is told of what shows", () => {
    const sheer = { skirt, opacity: "sheer", under: "slip" } as const;
    expect(finishOf(sheer, "skirtSides")).toBe("frenchSeam");
    expect(finishOf(sheer, "sewDarts")).toBe("narrow");
    expect(finishOf(sheer, "skirtToBodice")).toBe("bound");
    expect(finishOf(sheer, "hemShell")).toBe("narrowHem");
  });
});

describe("a side that is sewn in one go with its lining", () => {
  it("is no French seam: it cannot be enclosed in itself", () => {
    const seen = [{ of: "side", by: "frenchSeam" }] as const;
    const covered = { bodice: true, skirt: false };
    expect(finishOfStep({ name: "bodiceSides", way: "withLining" }, seen, covered)).toBeNull();
    expect(finishOfStep({ name: "bodiceSides" }, seen, covered)).toBe("frenchSeam");
  });
});
