import { describe, expect, it } from "vitest";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { fail, invariant, ok } from "../../../src/core/result";
import type { PaperMade, PaperRequest } from "../../../src/paper/request";
import { requestFor } from "../../../src/ui/paper/paperRequest";
import { createPaperRoom } from "../../../src/ui/paper/paperRoom";
import { sampleWork } from "../../support/sampleWork";
import { fakeWorkers, madeFile, previewOf } from "./fakeWorkers";

const planned = derivePlan(sampleWork);
const plan = invariant(planned.ok ? planned.value : null, "a plan of the sample");
const request = (under: readonly string[] = []): PaperRequest =>
  requestFor(
    sampleWork,
    plan,
    "pieces",
    {
      size: null,
      nested: false,
      leftOut: [],
      replacedToo: [],
      partsLeftOut: [],
      under,
      before: false,
      allowances: true,
      toile: false,
    },
    "2026-11-25",
  );

const setUp = () => {
  const workers = fakeWorkers();
  const offered: PaperMade[] = [];
  const room = createPaperRoom(workers.open, (made) => void offered.push(made));
  return {
    workers,
    offered,
    room,
    preview: () => room.state.getState().preview,
    making: () => room.state.getState().making,
  };
};

describe("a preview", () => {
  it("starts a worker only when it is asked for, and asks the same one again", () => {
    const { workers, room, preview } = setUp();
    expect(workers.all).toHaveLength(0);
    const [first, second] = [request(), request(["12"])];
    room.preview(first);
    workers.all[0]?.say({ kind: "previewed", result: ok(previewOf(14)) });
    expect(preview()).toMatchObject({ kind: "drawn", request: first, result: { ok: true, value: { pages: 14 } } });
    room.preview(second);
    expect(preview()).toMatchObject({ kind: "drawing", request: second, last: { pages: 14 } });
    expect(workers.all).toHaveLength(1);
  });

  it("drops the answer to a request that is no longer hers, and the worker that was at it", () => {
    const { workers, room, preview } = setUp();
    const [first, second] = [request(), request(["12"])];
    room.preview(first);
    room.preview(second);
    expect(workers.all.map(({ closed }) => closed)).toEqual([true, false]);
    workers.all[0]?.say({ kind: "previewed", result: ok(previewOf(99)) });
    expect(preview()).toMatchObject({ kind: "drawing", request: second });
    workers.all[1]?.say({ kind: "previewed", result: ok(previewOf(7)) });
    expect(preview()).toMatchObject({ kind: "drawn", request: second, result: { value: { pages: 7 } } });
  });

  it("is let go of, whatever still comes", () => {
    const { workers, room, preview } = setUp();
    room.preview(request());
    room.leave();
    workers.all[0]?.say({ kind: "previewed", result: ok(previewOf(14)) });
    expect(preview()).toEqual({ kind: "none" });
    expect(workers.all[0]?.closed).toBe(true);
  });

  it("ends in words where the worker breaks, and can be asked for again", () => {
    const { workers, room, preview } = setUp();
    room.preview(request());
    workers.all[0]?.say({ kind: "broke", why: "fault" });
    expect(preview()).toMatchObject({ kind: "broke", why: "fault" });
    room.preview(request());
    workers.all[1]?.say({ kind: "previewed", result: fail({ code: "paper/nothing-changed" }) });
    expect(preview()).toMatchObject({ kind: "drawn", result: { ok: false } });
  });

  it("ends in words where no worker can be had at all", () => {
    const room = createPaperRoom(
      () => {
        throw new Error("no workers here");
      },
      () => undefined,
    );
    room.preview(request());
    expect(room.state.getState().preview).toMatchObject({ kind: "broke", why: "fault" });
  });
});

describe("a file", () => {
  it("is handed out once it is made, and again when she asks", () => {
    const { workers, offered, room, making } = setUp();
    room.make(request(), "pdf");
    workers.all[0]?.say({ kind: "progress", progress: { stage: "layout", share: 0.4 } });
    expect(making()).toMatchObject({ kind: "making", file: "pdf", progress: { share: 0.4 } });
    const made = madeFile("blue.pdf");
    workers.all[0]?.say({ kind: "made", result: ok(made) });
    expect(making()).toMatchObject({ kind: "made", made });
    expect(offered).toEqual([made]);
    room.offerAgain();
    expect(offered).toEqual([made, made]);
  });

  it("is made one at a time", () => {
    const { workers, room, making } = setUp();
    room.make(request(), "pdf");
    room.make(request(), "svg");
    expect(workers.all.flatMap(({ asked }) => asked)).toHaveLength(1);
    expect(making()).toMatchObject({ file: "pdf" });
  });

  it("is not made any more once she cancels; the next one starts a new worker", () => {
    const { workers, offered, room, making } = setUp();
    room.make(request(), "pdf");
    room.cancel();
    expect(workers.all[0]?.closed).toBe(true);
    workers.all[0]?.say({ kind: "made", result: ok(madeFile("late.pdf")) });
    expect(offered).toEqual([]);
    expect(making()).toMatchObject({ kind: "cancelled", file: "pdf" });
    room.make(request(), "dxf");
    workers.all[1]?.say({ kind: "made", result: ok(madeFile("next.dxf")) });
    expect(offered.map(({ fileName }) => fileName)).toEqual(["next.dxf"]);
  });

  it("goes on while previews come and go", () => {
    const { workers, offered, room } = setUp();
    room.make(request(), "pdf");
    room.preview(request());
    room.leave();
    workers.lastAsked("make").say({ kind: "made", result: ok(madeFile("blue.pdf")) });
    expect(offered).toHaveLength(1);
  });

  it("is still handed out after another work was opened, and only then is everything put away", () => {
    const { workers, offered, room } = setUp();
    room.make(request(), "pdf");
    room.preview(request());
    room.end();
    expect(workers.all.map(({ closed }) => closed)).toEqual([false, true]);
    workers.lastAsked("make").say({ kind: "progress", progress: { stage: "pieces", share: 0.5 } });
    expect(workers.all[0]?.closed).toBe(false);
    workers.lastAsked("make").say({ kind: "made", result: ok(madeFile("blue.pdf")) });
    expect(offered.map(({ fileName }) => fileName)).toEqual(["blue.pdf"]);
    expect(workers.all[0]?.closed).toBe(true);
  });

  it("that is done leaves no worker behind when another work is opened", () => {
    const { workers, room } = setUp();
    room.make(request(), "pdf");
    workers.all[0]?.say({ kind: "made", result: ok(madeFile("blue.pdf")) });
    room.end();
    expect(workers.all[0]?.closed).toBe(true);
  });

  it.each(["worker", "typefaces", "fault"] as const)("ends in words where the worker breaks: %s", (why) => {
    const { workers, offered, room, making } = setUp();
    room.make(request(), "pdf");
    workers.all[0]?.say({ kind: "broke", why });
    expect(making()).toMatchObject({ kind: "broke", why });
    expect(workers.all[0]?.closed).toBe(true);
    expect(offered).toEqual([]);
  });
});
