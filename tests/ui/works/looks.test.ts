import { describe, expect, it, vi } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { writeWorkFile } from "../../../src/document/workFile";
import type { FrontDrawing } from "../../../src/drawing/frontDrawing";
import { createLooks } from "../../../src/ui/works/looks";
import { sampleWork } from "../../support/sampleWork";

const DRAWN: FrontDrawing = { box: { x: 0, y: 0, width: 1, height: 1 }, halves: [] };

/** Idle when the test says so; the id of each work is its name. */
function looking(peek = async (id: string): Promise<Work | null> => ({ ...sampleWork, name: id })) {
  const rests: (() => void)[] = [];
  const draw = vi.fn<(work: Work) => FrontDrawing | null>(() => DRAWN);
  const peeked = vi.fn<typeof peek>(peek);
  const looks = createLooks({
    peek: peeked,
    drawer: async () => draw,
    idle: () =>
      new Promise((resolve) => {
        rests.push(resolve);
      }),
  });
  const rest = async (times = 1): Promise<void> => {
    for (let at = 0; at < times; at += 1) {
      rests.shift()?.();
      await new Promise((resolve) => {
        setTimeout(resolve);
      });
    }
  };
  return { looks, draw, peeked, rest };
}

const kept = (id: string, stamp = "1") => ({ id, stamp });

describe("looking into works", () => {
  it("goes one at a time, each when nothing else is to be done", async () => {
    const { looks, draw, peeked, rest } = looking();
    for (const id of ["a", "b", "c"]) looks.want(kept(id), "front");
    expect(peeked).not.toHaveBeenCalled();
    await rest();
    expect(draw).toHaveBeenCalledTimes(1);
    expect(looks.of(kept("a"))?.front).toBe(DRAWN);
    expect(looks.of(kept("b"))).toBeUndefined();
    await rest(2);
    expect(peeked.mock.calls.flat()).toEqual(["a", "b", "c"]);
  });

  it("leaves out what nobody looks at any more", async () => {
    const { looks, peeked, rest } = looking();
    const giveUp = looks.want(kept("a"), "front");
    looks.want(kept("b"), "front");
    giveUp();
    await rest(3);
    expect(peeked.mock.calls.flat()).toEqual(["b"]);
  });

  it("looks once at what has not been saved since, and again at what has", async () => {
    const { looks, peeked, rest } = looking();
    looks.want(kept("a"), "front");
    await rest(2);
    looks.want(kept("a"), "front");
    await rest(2);
    expect(peeked).toHaveBeenCalledTimes(1);
    looks.want(kept("a", "2"), "front");
    await rest(2);
    expect(peeked).toHaveBeenCalledTimes(2);
  });

  it("draws nothing where only the text is asked for", async () => {
    const { looks, draw, rest } = looking();
    looks.want(kept("a"), "text");
    await rest();
    expect(draw).not.toHaveBeenCalled();
    expect(looks.of(kept("a"))?.text).toBe(writeWorkFile({ ...sampleWork, name: "a" }));
  });

  it("says where there are no pieces yet, and where nothing can be read, and goes on after a fault", async () => {
    const { looks, draw, rest } = looking(async (id) => {
      if (id === "fault") throw new Error("a fault");
      return id === "damaged" ? null : { ...sampleWork, name: id };
    });
    draw.mockReturnValueOnce(null);
    for (const id of ["empty", "fault", "damaged", "whole"]) looks.want(kept(id), "front");
    await rest(5);
    expect(["empty", "fault", "damaged", "whole"].map((id) => looks.of(kept(id))?.front)).toEqual([
      "noPieces",
      undefined,
      "unreadable",
      DRAWN,
    ]);
  });
});
