import { expect, it } from "vitest";
import { stepTaken, type StepTaken } from "../../src/store/stepTaken";
import { beginGesture, commitGesture, createWorkStore, preview, redo, run, undo } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";

const named = (name: string) => ({ kind: "setName", name }) as const;

function heard() {
  const store = createWorkStore(sampleWork);
  const steps: (readonly [StepTaken["way"], string, string])[] = [];
  store.subscribe((now, was) => {
    const step = stepTaken(was, now);
    if (step !== null) steps.push([step.way, step.without.name, step.with.name]);
  });
  return { store, steps };
}

it("tells a step, its undo and its redo, each with the work without it and with it", () => {
  const { store, steps } = heard();
  run(store, named("one"));
  undo(store);
  redo(store);
  run(store, named("two"));
  const was = sampleWork.name;
  expect(steps).toEqual([
    ["done", was, "one"],
    ["undone", was, "one"],
    ["redone", was, "one"],
    ["done", "one", "two"],
  ]);
});

it("tells a run of previews as one step, from where it began", () => {
  const { store, steps } = heard();
  const hand = beginGesture(store, "keys");
  for (const name of ["a", "b", "c"]) preview(store, hand, [named(name)]);
  expect(steps).toEqual([]);
  commitGesture(store, hand);
  expect(steps).toEqual([["done", sampleWork.name, "c"]]);
});

it("tells another step after an undo as done, not as done again", () => {
  const { store, steps } = heard();
  run(store, named("one"));
  undo(store);
  run(store, named("other"));
  expect(steps.at(-1)).toEqual(["done", sampleWork.name, "other"]);
});

it("tells nothing of another work that is opened, whatever it has behind it", () => {
  const { store, steps } = heard();
  const other = { ...sampleWork, name: "of another day" };
  store.setState({ work: { ...other, name: "opened" }, past: [other], future: [] });
  expect(steps).toEqual([]);
});

it("keeps no work in the history that something was planned of, nor hands one on to be planned", () => {
  const store = createWorkStore(sampleWork);
  const planned = new Set<object>([sampleWork]);
  const kept = new Set<object>();
  store.subscribe((now, was) => {
    planned.add(now.work);
    const step = stepTaken(was, now);
    if (step !== null) for (const work of [step.without, step.with]) planned.add(work);
    for (const work of [...now.past, ...now.future]) kept.add(work);
  });
  run(store, named("one"));
  const hand = beginGesture(store, "drag");
  preview(store, hand, [named("two")]);
  commitGesture(store, hand);
  undo(store);
  undo(store);
  redo(store);
  expect(kept.size).toBe(5);
  expect([...kept].filter((work) => planned.has(work))).toEqual([]);
});
