import { describe, expect, it } from "vitest";
import { renamed } from "../../src/store/conflictCopy";
import { beginGesture, commitGesture, createWorkStore, run, undo } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";

describe("renamed", () => {
  const first = { ...sampleWork, name: "first" };
  const work = { ...sampleWork, name: "now" };
  const before = { ...work, invented: !work.invented };

  it("gives the work and the steps of the same name the other one, and leaves earlier names", () => {
    expect(renamed({ work, past: [first, before], future: [before], gesture: null }, "new")).toEqual({
      work: { ...work, name: "new" },
      past: [first, { ...before, name: "new" }],
      future: [{ ...before, name: "new" }],
      gesture: null,
    });
  });

  it("lets a gesture that has changed nothing end without a step", () => {
    const store = createWorkStore(work);
    const hand = beginGesture(store, "keys");
    store.setState(renamed(store.getState(), "new"));
    commitGesture(store, hand);
    expect(store.getState()).toMatchObject({ past: [], gesture: null, work: { name: "new" } });
  });

  it("does not come undone with the next change", () => {
    const store = createWorkStore(work);
    run(store, { kind: "setUnit", unit: work.unit === "cm" ? "in" : "cm" });
    store.setState(renamed(store.getState(), "new"));
    undo(store);
    expect(store.getState().work).toEqual({ ...work, name: "new" });
  });
});
