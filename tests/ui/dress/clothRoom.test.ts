import { describe, expect, it } from "vitest";
import { layPrepared } from "../../../src/core/cloth/layPrepared";
import { createClothRoom } from "../../../src/ui/dress/cloth/clothRoom";
import type { ClothAnswer, ClothAsk, ClothWorker } from "../../../src/ui/dress/cloth/clothMessages";
import { invariant } from "../../../src/core/result";
import { askedOf, rectanglePart } from "../../support/clothParts";
import { sampleWork } from "../../support/sampleWork";

interface FakeWorker {
  readonly asked: ClothAsk[];
  closed: boolean;
  readonly say: (answer: ClothAnswer) => void;
}

const setUp = () => {
  const all: FakeWorker[] = [];
  const room = createClothRoom((hear): ClothWorker => {
    const fake: FakeWorker = { asked: [], closed: false, say: hear };
    all.push(fake);
    return {
      ask: (ask) => void fake.asked.push(ask),
      close: () => {
        fake.closed = true;
      },
    };
  });
  /** The worker at hand lays what it was asked for last. */
  const layNow = (): void => {
    const worker = invariant(
      all.find(({ closed }) => !closed),
      "a worker",
    );
    const { id, wanted } = invariant(worker.asked.at(-1), "ask");
    worker.say({ kind: "laid", id, lay: layPrepared(wanted.prepared, { effort: 0.01 }) });
  };
  return { all, room, layNow, state: () => room.state.getState() };
};

const main = (width = 1400) => askedOf({ parts: [rectanglePart("tier", 460, 300, 3)], cloth: { width } });
const lining = askedOf(
  { parts: [rectanglePart("lining", 400, 200, 2, { cloth: "lining" })], cloth: { width: 1400 } },
  "lining",
);

describe("lays", () => {
  it("starts a worker when first asked, and lays one cloth after the other", () => {
    const { all, room, layNow, state } = setUp();
    expect(all).toHaveLength(0);
    room.lay([main(), lining]);
    expect(all).toHaveLength(1);
    expect(all[0]?.asked.map(({ wanted }) => wanted.prepared.name)).toEqual(["main"]);
    all[0]?.say({ kind: "progress", id: all[0].asked[0]?.id ?? 0, share: 0.4 });
    expect(state().lays.main).toEqual({ kind: "laying", share: 0.4, last: null });
    layNow();
    expect(state().lays.main).toMatchObject({ kind: "answered", answer: { ok: true, value: { length: 300 } } });
    expect(state().lays.lining).toMatchObject({ kind: "laying" });
    layNow();
    expect(state().lays.lining).toMatchObject({ kind: "answered", answer: { ok: true, value: { length: 200 } } });
  });

  it("lays nothing again that is as it was", () => {
    const { all, room, layNow } = setUp();
    room.lay([main()]);
    layNow();
    room.lay([main()]);
    expect(all[0]?.asked).toHaveLength(1);
  });

  it("breaks off what is no longer hers, keeps what was laid last, and lays what she chose anew", () => {
    const { all, room, layNow, state } = setUp();
    room.lay([main()]);
    layNow();
    room.lay([main(1500)]);
    room.lay([main(900)]);
    expect(all.map(({ closed }) => closed)).toEqual([true, false]);
    expect(state().lays.main).toMatchObject({ kind: "laying", last: { value: { length: 300 } } });
    // Too late: of a worker that was closed.
    all[0]?.say({ kind: "progress", id: all[0].asked.at(-1)?.id ?? 0, share: 0.9 });
    expect(state().lays.main).toMatchObject({ share: 0 });
    layNow();
    expect(state().lays.main).toMatchObject({ answer: { value: { length: 900 } } });
  });

  it("says at once what cannot be laid, and forgets a cloth that is no more", () => {
    const { all, room, state } = setUp();
    room.lay([main(400), lining]);
    expect(state().lays.main).toMatchObject({ answer: { failure: { code: "cloth/part-too-wide" } } });
    room.lay([main(400)]);
    expect(state().lays.lining).toBeUndefined();
    expect(all.map(({ closed }) => closed)).toEqual([true]);
  });

  it("says what broke, and begins again when it is asked once more", () => {
    const { all, room, layNow, state } = setUp();
    room.lay([main(), lining]);
    all[0]?.say({ kind: "broke", why: "worker" });
    expect(state().lays).toEqual({ main: { kind: "broke", why: "worker" }, lining: { kind: "broke", why: "worker" } });
    room.lay([main()]);
    layNow();
    expect(state().lays.main).toMatchObject({ kind: "answered" });
  });
});

describe("questions of several lays", () => {
  it("asks for one width after another, beside the lays, and none once they are forgotten", () => {
    const { all, room, layNow, state } = setUp();
    room.compareWidths(sampleWork, "main");
    expect(state().tables.main).toMatchObject({ kind: "laying" });
    for (let lays = 0; state().tables.main?.kind === "laying" && lays < 10; lays++) layNow();
    const found = state().tables.main;
    expect(found).toMatchObject({ kind: "answered" });
    if (found?.kind !== "answered") return;
    expect(found.answer.map(({ width }) => width)).toEqual([900, 1100, 1140, 1400, 1500]);
    room.compareWidths(sampleWork, "main");
    room.forgetQuestions();
    expect(state().tables).toEqual({});
    expect(all.every(({ closed }) => closed)).toBe(true);
  });

  it("answers at once where nothing has to be laid: she has not said how much there is", () => {
    const { room, state } = setUp();
    room.tryRemnant(sampleWork, "main");
    expect(state().remnants.main).toEqual({ kind: "answered", answer: null });
  });
});
