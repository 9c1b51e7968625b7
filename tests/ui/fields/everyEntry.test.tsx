/**
 * What is on the screen is in the document, at every key: every field of every step, found by looking for it, so that a new
 * field is held to it too. What several pages have alike is looked at on the first, and a share of it on the others;
 * `npm run whole -- everyEntry` looks at all of it on each.
 */
import { act, fireEvent, screen, within } from "@testing-library/react";
import { describe, expect, it, vi } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { decidedIn } from "../../../src/core/plan/trialCommands";
import { invariant } from "../../../src/core/result";
import { redo, undo } from "../../../src/store/workStore";
import { Head } from "../../../src/ui/app/Head";
import { useHashStep } from "../../../src/ui/app/useHashStep";
import { BlendStep } from "../../../src/ui/blend/BlendStep";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { DressStep } from "../../../src/ui/dress/DressStep";
import { EnvelopeStep } from "../../../src/ui/envelope/EnvelopeStep";
import { FitStep } from "../../../src/ui/fit/FitStep";
import { createPaperRoom } from "../../../src/ui/paper/paperRoom";
import { PaperStep } from "../../../src/ui/paper/PaperStep";
import { PaperRoomProvider } from "../../../src/ui/paper/usePaperRoom";
import { usePageState, type Step } from "../../../src/ui/session/pageState";
import type { WorkStore } from "../../../src/ui/session/useWork";
import { TapeStep } from "../../../src/ui/tape/TapeStep";
import { TissueStep } from "../../../src/ui/tissue/TissueStep";
import { TrialStep } from "../../../src/ui/trial/TrialStep";
import { thornfield } from "../ownPattern/ownFile";
import { fakeWorkers } from "../paper/fakeWorkers";
import { shareOf } from "../../support/share";
import { ref, testWork, withAlterations } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

const PANELS = {
  tape: TapeStep,
  envelope: EnvelopeStep,
  tissue: TissueStep,
  blend: BlendStep,
  darts: DartsPanel,
  fit: FitStep,
  trial: TrialStep,
  dress: DressStep,
  paper: PaperStep,
};

const Nothing = (): null => null;

/** One step, and nothing where the others are; without the table. What is not looked at takes its time to draw too. */
function Steps({ only }: { readonly only: Step }) {
  useHashStep();
  const Panel = usePageState((page) => page.step) === only ? PANELS[only] : Nothing;
  return (
    <>
      <Head />
      <main>
        <Panel />
      </main>
    </>
  );
}

interface Scene {
  readonly step: Step;
  readonly work: Work;
  /** Opens what folds out, or of it what one field stands in. */
  readonly open?: (field?: string) => Promise<void> | void;
  /** Fields there must be at least, lest nothing be looked at. */
  readonly least: number;
}

const waistDart = ref("front", "waistDart");
const sideDart = ref("front", "sideDart");
const [newest] = testWork.tapes;

const openPointed = async (): Promise<void> => {
  const details = invariant(screen.getByText("Sewn, it comes out wrong").closest("details"), "details");
  details.open = true;
  fireEvent(details, new Event("toggle"));
  await screen.findByRole("textbox", { name: /^Its end lies past the bust point/ });
};

const SCENES: Readonly<Record<string, Scene>> = {
  Tape: {
    step: "tape",
    work: {
      ...testWork,
      invented: false,
      tapes: [{ taken: "2026-03-01", readings: { ...newest?.readings, waistGirth: [752, 756] } }],
    },
    open: async () => void (await screen.findByLabelText("Your age, if you like")),
    least: 18,
  },
  Envelope: {
    step: "envelope",
    work: {
      ...testWork,
      pattern: {
        ...testWork.pattern,
        closure: { place: "centreBack", belowWaist: 180, buttons: 7 },
        chart: {
          ...testWork.pattern.chart,
          sizes: testWork.pattern.chart.sizes.slice(2, 4).map((row) => ({ ...row, finishedBust: row.bust + 80 })),
        },
      },
    },
    open: () => {
      const paste = screen.queryByRole("button", { name: "Paste a chart" });
      if (paste !== null) fireEvent.click(paste);
    },
    // Names, three girths and three finished measures of two sizes, the new one, cups, ease and the closure.
    least: 2 * 7 + 4 + 2 * 3 + 1 + 3 + 2 + 2,
  },
  Tissue: {
    step: "tissue",
    work: {
      ...testWork,
      pattern: {
        ...testWork.pattern,
        length: "waist",
        chart: { ...testWork.pattern.chart, sizes: testWork.pattern.chart.sizes.slice(3, 6) },
        tissue: { size: "14", pieces: { front: { sideLength: 195 } } },
      },
    },
    open: async () => {
      const door = invariant(screen.getByText("By tape on the tissue").closest("details"), "details");
      act(() => {
        door.open = true;
        fireEvent(door, new Event("toggle"));
      });
      await screen.findByRole("textbox", { name: "Front: Side seam" });
    },
    least: 20,
  },
  "Tissue, pieces from a file": {
    step: "tissue",
    work: {
      ...testWork,
      pattern: {
        ...testWork.pattern,
        length: "waist",
        own: {
          file: "thornfield.svg",
          drawing: thornfield(),
          cup: "B",
          known: { from: { x: 40, y: 510 }, to: { x: 140, y: 510 }, length: 100 },
          pieces: [],
        },
      },
    },
    open: async () => {
      for (const name of ["How large it is", "Lines and sizes", "Pieces"]) {
        const part = await screen.findByRole("group", { name });
        if (!part.hasAttribute("open")) fireEvent.click(within(part).getByText(name));
      }
      const closer = screen.queryByRole("button", { name: /^Corners and darts: \d\. Front/ });
      if (closer !== null) fireEvent.click(closer);
      const cutting = screen.getByRole<HTMLInputElement>("radio", { name: "the cutting line" });
      if (!cutting.checked) fireEvent.click(cutting);
    },
    // A length that is known, the gap that is closed; the allowance, and that of each seam.
    least: 2 + 1 + 6,
  },
  Blend: { step: "blend", work: testWork, least: 1 + 2 + 3 },
  "Darts, the waist dart": {
    step: "darts",
    work: withAlterations({
      kind: "dartMouth",
      id: "dartMouth-front-waistDart",
      dart: waistDart,
      inner: -4,
      outer: 0,
      giveBack: {},
    }),
    open: async () => {
      act(() => viewNow().setState({ selectedDart: waistDart }));
      await openPointed();
    },
    // Five amounts, its legs, what is seen of it, shares as slides and as numbers.
    least: 5 + 1 + 2 + 4,
  },
  "Darts, the side dart": {
    step: "darts",
    work: withAlterations({
      kind: "dartPivot",
      id: "dartPivot-front-sideDart",
      dart: sideDart,
      to: "shoulder",
      share: 0.5,
    }),
    open: async () => {
      act(() => viewNow().setState({ selectedDart: sideDart }));
      await openPointed();
    },
    least: 5 + 1 + 2 + 1,
  },
  Fit: {
    step: "fit",
    work: testWork,
    open: (field) => {
      for (const face of document.querySelectorAll<HTMLElement>(".fit-face[aria-expanded=false]")) {
        const name = face.querySelector(".fit-name")?.textContent ?? "";
        if (field === undefined || field.startsWith(`${name} `)) fireEvent.click(face);
      }
    },
    least: 15,
  },
  Trial: {
    step: "trial",
    work: {
      ...testWork,
      trials: [
        {
          id: "first",
          day: "2026-03-01",
          sewn: decidedIn(testWork),
          observations: [
            { id: "a", place: "neckPoint", sign: "dragLines", towards: "frontArmhole", way: "pinched", amount: 7 },
            { id: "b", place: "dartEnd", sign: "dartEnds", mark: { out: 4, down: 6 }, half: "left" },
          ],
        },
      ],
    },
    // The heading, both bust points, lengths; lines of five, of four, and the one to be written; the verdict.
    least: 5 + 4 + 6 + 4 + 4 + 3 + 1,
  },
  "Dress, tiers in two cloths": {
    step: "dress",
    work: {
      ...testWork,
      pattern: { ...testWork.pattern, length: "waist", style: "midriff" },
      dress: {
        skirt: { kind: "tiers", tiers: [{}, { depth: 250, ratio: 1.4 }, {}], length: 700, ratio: 1.8 },
        lining: { bodice: true, skirt: true, shorter: 25 },
        neckline: { shape: "sweetheart", deeper: 6 },
        straps: { kind: "tied", width: 18, braStrap: 12 },
        cloths: { main: { width: 1500, length: 2500 }, lining: { shrinkage: 3 } },
      },
    },
    // The skirt's three and each tier's two; measures; the lining's six; neckline and straps; the closure; the main cloth's three.
    least: 3 + 3 * 2 + 5 + 6 + 3 + 3 + 2 + 3,
  },
  "Dress, A-line": {
    step: "dress",
    work: { ...testWork, dress: { skirt: { kind: "aLine", panels: 6, flare: 7 }, edges: { neck: "binding" } } },
    least: 4 + 5 + 2,
  },
  "Dress, straight": {
    step: "dress",
    work: { ...testWork, dress: { skirt: { kind: "straight", vent: 220, hem: 45 } } },
    least: 4 + 5 + 2,
  },
  "Dress, circle": {
    step: "dress",
    work: { ...testWork, dress: { skirt: { kind: "circle", share: 0.5, length: 640 } } },
    least: 3 + 5 + 2,
  },
  "Dress, peplum": {
    step: "dress",
    work: { ...testWork, dress: { skirt: { kind: "peplum", peplumLength: 170 } } },
    least: 3 + 5 + 2,
  },
  Paper: {
    step: "paper",
    work: testWork,
    open: () => void fireEvent.click(screen.getByRole("radio", { name: "True-scale pieces" })),
    least: 8,
  },
};

type Field = HTMLInputElement | HTMLTextAreaElement;

/** What is only looked at: a list that is searched, a disc that is folded on the screen to see what comes of it. */
const VIEWS = ".fit-search *, .folded *";

const drawnFields = (): NodeListOf<Field> =>
  document.querySelectorAll<Field>("input:not([type=radio]):not([type=checkbox]):not([type=file]), textarea");
const fieldsNow = (): readonly Field[] => [...drawnFields()].filter((field) => !field.matches(VIEWS));

/** Rows of Fit stand elsewhere once they are in use, and several ask for the same thing. */
const nameOf = (field: Field): string =>
  [
    field.closest(".fit")?.querySelector(".fit-name")?.textContent ?? "",
    field.getAttribute("aria-label") ?? field.labels?.[0]?.textContent ?? "",
  ]
    .join(" ")
    .trim();

/** What two keys leave in it, one after the other; nothing that the fields of this page hold already. */
function keysFor(field: Field): readonly [string, string] {
  if (field.type === "date") return ["0002-03-04", "2026-03-04"];
  if (field instanceof HTMLInputElement && field.type === "range") {
    const [most = 0, step = 1, now = 0] = [field.max, field.step, field.value].map(Number);
    const [one, two] = now + 4 * step < most ? [3, 4] : [-4, -3];
    const onMark = (steps: number): string => String(Number(((Math.round(now / step) + steps) * step).toFixed(2)));
    return [onMark(one), onMark(two)];
  }
  return ["1", "13"];
}

const type = (field: Field, text: string): boolean => fireEvent.change(field, { target: { value: text } });
const leaveTo = (hash: string): void =>
  act(() => {
    window.location.hash = hash;
    window.dispatchEvent(new Event("hashchange"));
  });

/** In the head of the page, so that no step takes it along. */
const IN_HEAD = "Name of this work";

/** On which page each field was met first, of those that several have alike: the head's, and most of a dress's. */
const met = new Map<string, Scene>();

function isMetElsewhere(name: string, scene: Scene): boolean {
  if (name !== IN_HEAD && scene.step !== "dress") return false;
  const first = met.get(name) ?? scene;
  met.set(name, first);
  return first !== scene;
}

function lookedAt(fields: readonly string[], scene: Scene): readonly string[] {
  const again = fields.filter((name) => isMetElsewhere(name, scene));
  const share = shareOf(again, 4, Object.values(SCENES).indexOf(scene));
  return fields.filter((name) => !again.includes(name) || share.includes(name));
}

async function put(scene: Scene) {
  const workers = fakeWorkers();
  const room = createPaperRoom(workers.open, () => undefined);
  const rendered = await renderWork(
    <PaperRoomProvider value={() => room}>
      <Steps only={scene.step} />
    </PaperRoomProvider>,
    scene.work,
  );
  leaveTo(`#${scene.step}`);
  await scene.open?.();
  const { store } = rendered;
  const first = store.getState().work;
  /** Everything as it was. */
  const afresh = (): void => act(() => store.setState({ work: first, past: [], future: [], gesture: null }));
  const fields = fieldsNow().map(nameOf);
  expect(new Set(fields).size).toBe(fields.length);
  expect(fields).not.toContain("");
  expect(fields.length).toBeGreaterThanOrEqual(scene.least);
  return { ...rendered, first, afresh, fields: lookedAt(fields, scene) };
}

/** Where each field stood last: it is looked for there first, since the names of all are many to read. */
const stood = new Map<string, number>();

function fieldOf(name: string): Field {
  const drawn = drawnFields();
  const last = drawn[stood.get(name) ?? -1];
  if (last !== undefined && nameOf(last) === name && !last.matches(VIEWS)) return last;
  const field = invariant(
    fieldsNow().find((one) => nameOf(one) === name),
    name,
  );
  stood.set(name, [...drawn].indexOf(field));
  return field;
}

/** What stands in it; a slider lies on its marks but for what counting in twentieths leaves. */
const shownIn = (field: Field): string =>
  field.type === "range" ? String(Number(Number(field.value).toFixed(2))) : field.value;

/** The same hands for all of them: `npm test` looks at one in three of a page, others on each. */
const someOf = (fields: readonly string[], scene: Scene): readonly string[] =>
  shareOf(fields, 3, Object.values(SCENES).indexOf(scene));

const withoutUnread = (work: Work): Work => ({ ...work, unread: {} });
const isGoing = (store: WorkStore): boolean => store.getState().gesture !== null;

vi.setConfig({ testTimeout: 300_000 });

describe.each(Object.entries(SCENES))("every field of %s", (_, scene) => {
  it("is as it was typed where its step goes in the middle of it, and is one step of undo", async () => {
    const { fields, afresh, store, first } = await put(scene);
    const other = scene.step === "tape" ? "#envelope" : "#tape";
    for (const name of someOf(fields, scene)) {
      afresh();
      // oxlint-disable-next-line no-await-in-loop -- one field after another
      await scene.open?.(name);
      const [one, two] = keysFor(fieldOf(name));
      const before = shownIn(fieldOf(name));
      type(fieldOf(name), one);
      expect([name, shownIn(fieldOf(name))]).toEqual([name, one]);
      type(fieldOf(name), two);
      expect([name, shownIn(fieldOf(name))]).toEqual([name, two]);
      // Saved this very moment it would be whole.
      const typed = store.getState().work;
      expect([name, typed === first]).toEqual([name, false]);
      leaveTo(other);
      expect([name, store.getState().work]).toEqual([name, typed]);
      expect([name, isGoing(store)]).toEqual([name, name === IN_HEAD]);
      expect([name, store.getState().past.length]).toEqual([
        name,
        name === IN_HEAD || JSON.stringify(withoutUnread(typed)) === JSON.stringify(withoutUnread(first)) ? 0 : 1,
      ]);
      leaveTo(`#${scene.step}`);
      // oxlint-disable-next-line no-await-in-loop -- one field after another
      await scene.open?.(name);
      expect([name, shownIn(fieldOf(name))]).toEqual([name, two]);
      act(() => undo(store));
      expect([name, withoutUnread(store.getState().work)]).toEqual([name, withoutUnread(first)]);
      // What could not be read is no step, and stays.
      const isTaken = Object.keys(typed.unread).length === 0;
      expect([name, shownIn(fieldOf(name))]).toEqual([name, isTaken ? before : two]);
      act(() => redo(store));
      expect([name, shownIn(fieldOf(name))]).toEqual([name, two]);
    }
  });

  it("is put back by Escape exactly as it was, and says nothing against what is only begun", async () => {
    const { fields, afresh, store, first } = await put(scene);
    for (const name of fields) {
      const field = fieldOf(name);
      // A page that is pasted is no entry of one line: it has a button that leaves it.
      if (field instanceof HTMLTextAreaElement) continue;
      afresh();
      const before = shownIn(field);
      const alerts = document.querySelectorAll("[role=alert]").length;
      const status = [...document.querySelectorAll("main [role=status]")].map((one) => one.textContent);
      for (const text of keysFor(field)) {
        type(field, text);
        expect([name, field.getAttribute("aria-invalid") ?? "false"]).toEqual([name, "false"]);
        expect([name, document.querySelectorAll("[role=alert]").length]).toEqual([name, alerts]);
        expect([...document.querySelectorAll("main [role=status]")].map((one) => one.textContent)).toEqual(status);
      }
      fireEvent.keyDown(field, { key: "Escape" });
      expect([name, store.getState().work === first, isGoing(store)]).toEqual([name, true, false]);
      expect([name, shownIn(field), store.getState().past.length]).toEqual([name, before, 0]);
    }
  });

  it("is done with where another is typed in", async () => {
    const { fields, afresh, store } = await put(scene);
    for (const name of someOf(fields, scene)) {
      if (name === IN_HEAD) continue;
      afresh();
      const [, two] = keysFor(fieldOf(name));
      type(fieldOf(name), two);
      const typed = withoutUnread(store.getState().work);
      type(fieldOf(IN_HEAD), "Another");
      expect([name, withoutUnread(store.getState().work)]).toEqual([name, { ...typed, name: "Another" }]);
      expect([name, shownIn(fieldOf(name))]).toEqual([name, two]);
    }
  });
});
