import { measuresOf } from "../../src/core/measures/tape";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Command } from "../../src/core/plan/commands";
import {
  beginGesture,
  canRedo,
  canUndo,
  cancelGesture,
  commitGesture,
  createWorkStore,
  endGesture,
  HISTORY_LIMIT,
  isGoingOn,
  preview,
  redo,
  run,
  runAll,
  toSave,
  undo,
  type GestureKind,
  type Hand,
  type WorkStore,
} from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";

const bust = (value: number): Command => ({ kind: "setMeasure", measure: "bustGirth", value });
const bustOf = (store: WorkStore): number | undefined => measuresOf(store.getState().work.tapes).bustGirth;
const steps = (store: WorkStore): readonly [number, number] => [
  store.getState().past.length,
  store.getState().future.length,
];
const START = measuresOf(sampleWork.tapes).bustGirth;

describe("run, undo and redo", () => {
  it("takes a command back and brings it on again", () => {
    const store = createWorkStore(sampleWork);
    expect([canUndo(store.getState()), canRedo(store.getState())]).toEqual([false, false]);
    run(store, bust(940));
    run(store, bust(950));
    undo(store);
    expect([bustOf(store), steps(store)]).toEqual([940, [1, 1]]);
    undo(store);
    expect(store.getState().work).toEqual(sampleWork);
    expect([canUndo(store.getState()), canRedo(store.getState())]).toEqual([false, true]);
    redo(store);
    redo(store);
    expect([bustOf(store), steps(store)]).toEqual([950, [2, 0]]);
  });

  it("does nothing where there is nothing to take back or bring on", () => {
    const store = createWorkStore(sampleWork);
    const before = store.getState();
    undo(store);
    redo(store);
    expect(store.getState()).toEqual(before);
  });

  it("makes no step of a command that changes nothing", () => {
    const store = createWorkStore(sampleWork);
    run(store, bust(START ?? 0));
    expect(store.getState().work).toBe(sampleWork);
    expect(steps(store)).toEqual([0, 0]);
  });

  it("drops what was taken back once something else is done", () => {
    const store = createWorkStore(sampleWork);
    run(store, bust(940));
    undo(store);
    run(store, bust(960));
    expect(steps(store)).toEqual([1, 0]);
  });

  it("keeps so many steps and no more, the last ones", () => {
    const store = createWorkStore(sampleWork);
    for (let index = 0; index <= HISTORY_LIMIT; index += 1) run(store, bust(800 + index));
    expect(steps(store)).toEqual([HISTORY_LIMIT, 0]);
    for (let index = 0; index < HISTORY_LIMIT; index += 1) undo(store);
    expect(bustOf(store)).toBe(800);
    expect(canUndo(store.getState())).toBe(false);
  });

  it("goes back and forth over any run of commands exactly", () => {
    const commands = fc.array(fc.integer({ min: 700, max: 720 }).map(bust), { maxLength: 20 });
    fc.assert(
      fc.property(commands, fc.nat(20), (list, back) => {
        const store = createWorkStore(sampleWork);
        const seen = [sampleWork];
        for (const command of list) {
          run(store, command);
          if (store.getState().work !== seen.at(-1)) seen.push(store.getState().work);
        }
        const to = Math.max(0, seen.length - 1 - back);
        for (let index = 0; index < back; index += 1) undo(store);
        expect(store.getState().work).toEqual(seen[to]);
        for (let index = 0; index < back; index += 1) redo(store);
        expect(store.getState().work).toEqual(seen.at(-1));
      }),
    );
  });
});

describe("entries that could not be read", () => {
  it("are no steps, and stay through undo and redo", () => {
    const store = createWorkStore(sampleWork);
    run(store, bust(940));
    run(store, { kind: "setUnread", field: "waist", text: "7o" });
    expect(steps(store)).toEqual([1, 0]);
    undo(store);
    expect(store.getState().work).toEqual({ ...sampleWork, unread: { waist: "7o" } });
    redo(store);
    expect(store.getState().work.unread).toEqual({ waist: "7o" });
    run(store, { kind: "clearUnread", field: "waist" });
    undo(store);
    expect(store.getState().work).toEqual(sampleWork);
  });

  it("leave what was taken back to be brought on again", () => {
    const store = createWorkStore(sampleWork);
    run(store, bust(940));
    undo(store);
    run(store, { kind: "setUnread", field: "waist", text: "7o" });
    expect(canRedo(store.getState())).toBe(true);
    redo(store);
    expect(bustOf(store)).toBe(940);
  });

  it("go along with their rows, back and forward too", () => {
    const unread = { "row.0": "6x", "row.2": "8o", other: "7o" };
    const store = createWorkStore({ ...sampleWork, unread });
    const now = () => store.getState().work.unread;
    // The first row goes: what stood in the third stands in the second.
    const after = { "row.1": "8o", other: "7o" };
    runAll(store, [
      bust(940),
      { kind: "clearUnread", field: "row.0" },
      { kind: "setUnread", field: "row.1", text: "8o" },
      { kind: "clearUnread", field: "row.2" },
    ]);
    expect(now()).toEqual(after);
    undo(store);
    expect(now()).toEqual(unread);
    redo(store);
    expect(now()).toEqual(after);
    undo(store);
    run(store, { kind: "setUnread", field: "other", text: "7p" });
    expect(now()).toEqual({ ...unread, other: "7p" });
    redo(store);
    expect(now()).toEqual({ ...after, other: "7p" });
    run(store, { kind: "setUnread", field: "row.1", text: "8oo" });
    undo(store);
    expect(now()).toEqual({ ...unread, other: "7p" });
    // What was typed meanwhile comes again with its row.
    redo(store);
    expect(now()).toEqual({ "row.1": "8oo", other: "7p" });
  });

  it("are not kept once for every step", () => {
    const store = createWorkStore({ ...sampleWork, unread: { paste: "a page" } });
    run(store, bust(940));
    run(store, bust(950));
    undo(store);
    const { past, future } = store.getState();
    expect([...past, ...future].map(({ unread }) => unread)).toEqual([{}, {}]);
    expect(store.getState().work.unread).toEqual({ paste: "a page" });
  });
});

describe("a gesture", () => {
  it("is one step however often it was previewed, each time from its start", () => {
    const store = createWorkStore(sampleWork);
    const hand = beginGesture(store, "drag");
    preview(store, hand, [bust(931)]);
    preview(store, hand, [{ kind: "setName", name: "Dragged" }]);
    expect(bustOf(store)).toBe(START);
    preview(store, hand, [bust(945)]);
    expect([bustOf(store), store.getState().work.name, steps(store)]).toEqual([945, sampleWork.name, [0, 0]]);
    commitGesture(store, hand);
    expect([bustOf(store), steps(store), store.getState().gesture]).toEqual([945, [1, 0], null]);
    undo(store);
    expect(store.getState().work).toEqual(sampleWork);
  });

  it("leaves no trace when cancelled: the very same work, and what was taken back still there", () => {
    const store = createWorkStore(sampleWork);
    run(store, bust(940));
    undo(store);
    const before = store.getState();
    const hand = beginGesture(store, "drag");
    preview(store, hand, [bust(990)]);
    cancelGesture(store, hand);
    expect(store.getState()).toEqual(before);
    expect(store.getState().work).toBe(before.work);
  });

  it("is no step where nothing changed in the end", () => {
    const store = createWorkStore(sampleWork);
    const hand = beginGesture(store, "drag");
    preview(store, hand, [bust(990)]);
    preview(store, hand, [bust(START ?? 0)]);
    commitGesture(store, hand);
    expect([steps(store), store.getState().gesture]).toEqual([[0, 0], null]);
  });

  it("is no step where nothing but what could not be read is other than before", () => {
    const store = createWorkStore(sampleWork);
    const hand = beginGesture(store, "keys");
    preview(store, hand, [bust(990)]);
    preview(store, hand, [{ kind: "setUnread", field: "bust", text: "ninety" }]);
    commitGesture(store, hand);
    expect([steps(store), store.getState().work.unread]).toEqual([[0, 0], { bust: "ninety" }]);
  });

  it("drops what was taken back only once it is committed with a change", () => {
    const store = createWorkStore(sampleWork);
    run(store, bust(940));
    undo(store);
    commitGesture(store, beginGesture(store, "drag"));
    expect(canRedo(store.getState())).toBe(true);
    const hand = beginGesture(store, "drag");
    preview(store, hand, [bust(950)]);
    expect(canRedo(store.getState())).toBe(true);
    commitGesture(store, hand);
    expect(canRedo(store.getState())).toBe(false);
  });

  it("is committed by the next command or gesture", () => {
    const store = createWorkStore(sampleWork);
    preview(store, beginGesture(store, "drag"), [bust(940)]);
    preview(store, beginGesture(store, "keys"), [bust(950)]);
    run(store, bust(960));
    expect(steps(store)).toEqual([3, 0]);
  });

  it("of the pointer is cancelled by undo, and nothing else is taken back", () => {
    const store = createWorkStore(sampleWork);
    run(store, bust(960));
    preview(store, beginGesture(store, "drag"), [bust(970)]);
    undo(store);
    expect([bustOf(store), steps(store)]).toEqual([960, [1, 0]]);
  });

  it("of keys is a step that undo takes back and redo brings on again", () => {
    const store = createWorkStore(sampleWork);
    run(store, bust(960));
    preview(store, beginGesture(store, "keys"), [bust(970)], { field: "bust", text: "97" });
    undo(store);
    expect([bustOf(store), steps(store), store.getState().gesture]).toEqual([960, [1, 1], null]);
    redo(store);
    expect([bustOf(store), steps(store)]).toEqual([970, [2, 0]]);
  });

  it("has the text that is typed, until it is over", () => {
    const store = createWorkStore(sampleWork);
    const hand = beginGesture(store, "keys");
    preview(store, hand, [bust(970)], { field: "bust", text: "97." });
    expect(store.getState().gesture?.entry).toEqual({ field: "bust", text: "97." });
    endGesture(store);
    expect([bustOf(store), steps(store), store.getState().gesture]).toEqual([970, [1, 0], null]);
  });

  it("is saved as it is made where keys make it, and once it is let go where the pointer does", () => {
    for (const [kind, saved, past] of [
      ["keys", 950, 1],
      ["drag", START, 0],
    ] as const) {
      const store = createWorkStore(sampleWork);
      preview(store, beginGesture(store, kind), [bust(950)]);
      const versions = toSave(store.getState());
      expect([measuresOf(versions.work.tapes).bustGirth, versions.past.length]).toEqual([saved, past]);
      expect(Object.keys(versions).toSorted()).toEqual(["future", "past", "work"]);
    }
  });

  describe("that is ended while the hand goes on", () => {
    const drag = (store: WorkStore, hand: Hand): void => {
      for (let value = 951; value <= 960; value += 1) preview(store, hand, [bust(value)]);
    };
    const begun = (kind: GestureKind = "drag"): readonly [WorkStore, Hand] => {
      const store = createWorkStore(sampleWork);
      run(store, bust(940));
      undo(store);
      const hand = beginGesture(store, kind);
      preview(store, hand, [bust(950)]);
      return [store, hand];
    };

    it("by redo is cancelled, and makes no steps of what is previewed further", () => {
      const [store, hand] = begun();
      redo(store);
      drag(store, hand);
      expect([bustOf(store), steps(store), store.getState().gesture]).toEqual([940, [1, 0], null]);
      commitGesture(store, hand);
      expect([bustOf(store), steps(store), isGoingOn(store, hand)]).toEqual([940, [1, 0], false]);
      undo(store);
      expect(store.getState().work).toEqual(sampleWork);
    });

    it("by undo makes no steps of what is previewed further", () => {
      for (const kind of ["drag", "keys"] as const) {
        const [store, hand] = begun(kind);
        undo(store);
        drag(store, hand);
        expect([bustOf(store), steps(store)]).toEqual([START, [0, 1]]);
      }
    });

    it("by another command, or by several, is one step and no more", () => {
      for (const another of [
        (store: WorkStore) => run(store, { kind: "setName", name: "Typed" }),
        (store: WorkStore) => runAll(store, [{ kind: "setName", name: "Typed" }]),
      ]) {
        const [store, hand] = begun();
        another(store);
        drag(store, hand);
        expect([bustOf(store), steps(store)]).toEqual([950, [2, 0]]);
      }
    });

    it("by another hand leaves that one alone", () => {
      const [store, hand] = begun();
      const other = beginGesture(store, "keys");
      preview(store, other, [bust(970)]);
      drag(store, hand);
      cancelGesture(store, hand);
      commitGesture(store, hand);
      expect([bustOf(store), isGoingOn(store, other), steps(store)]).toEqual([970, true, [1, 0]]);
    });

    it("goes on where there was nothing to bring on", () => {
      const store = createWorkStore(sampleWork);
      const hand = beginGesture(store, "drag");
      preview(store, hand, [bust(950)]);
      redo(store);
      drag(store, hand);
      commitGesture(store, hand);
      expect([bustOf(store), steps(store)]).toEqual([960, [1, 0]]);
    });
  });
});
