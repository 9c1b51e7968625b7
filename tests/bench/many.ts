/** How long a plan takes with as many alterations as a work can hold, and how long a file of that size takes to open. */
import type { Alteration } from "../../src/core/decisions/alteration";
import { FIT_NAMES } from "../../src/core/decisions/fitNames";
import { LIMITS } from "../../src/core/decisions/limits";
import type { Work } from "../../src/core/decisions/work";
import { invariant } from "../../src/core/result";
import { demoWorks } from "../../src/document/demo";
import { readWorkFile, writeWorkFile } from "../../src/document/workFile";
import { median, print, quantile, quickest, time } from "./table";
import { wholePlan } from "./wholePlan";

const demo = invariant(demoWorks()[0], "demo work");
const RUNS = 20;

const WAIST_DART = { piece: "front", dart: "waistDart" } as const;
const SIDE_DART = { piece: "front", dart: "sideDart" } as const;

/** Every fit there is, over and over, now more and now less, every third on the left half alone. */
const anyFit = (at: number): Alteration => ({
  kind: "fit",
  id: `a${at}`,
  fit: FIT_NAMES[at % FIT_NAMES.length] ?? "swayBack",
  amount: at % 2 === 0 ? 1 : -1,
  ...(at % 3 === 0 ? { half: "left" as const } : {}),
});

/** Two darts drawn anew by turns: their ends, their mouths, their places. */
function anyRedraw(at: number): Alteration {
  const to = at % 8 < 4 ? 1 : -1;
  const on = { id: `a${at}`, dart: at % 2 === 0 ? WAIST_DART : SIDE_DART, giveBack: {} };
  switch (at % 3) {
    case 0:
      return { kind: "dartEnd", ...on, shorten: to, across: to, hold: "fullness" };
    case 1:
      return { kind: "dartMouth", ...on, inner: to / 2, outer: to / 2 };
    default:
      return { kind: "dartPlace", ...on, by: to, how: "redraw" };
  }
}

const KINDS: Readonly<Record<string, (at: number) => Alteration>> = {
  "every fit": anyFit,
  "two darts redrawn": anyRedraw,
  "fits and redraws": (at) => (at % 2 === 0 ? anyFit(at / 2) : { ...anyRedraw(at), id: `b${at}` }),
};

function planned(work: Work): number {
  return wholePlan(work).ledger.filter(({ outcome }) => outcome.ok).length;
}

const row = (what: string, action: () => unknown): readonly (string | number)[] => {
  const times = time(action, RUNS);
  return [what, median(times), quantile(times, 0.95), quickest(times)];
};

export function benchMany(): void {
  for (const [kind, of] of Object.entries(KINDS)) {
    const alterations = Array.from({ length: LIMITS.alterations }, (_, at) => of(at));
    const work: Work = { ...demo, alterations };
    const made = planned(work);
    const text = writeWorkFile(work);
    const changed = (at: number): Work => ({
      ...work,
      alterations: alterations.map((one, index) => (index === at ? { ...one } : one)),
    });
    print(
      `${LIMITS.alterations} alterations, ${kind} (${made} lines made, file ${Math.round(text.length / 1000)} kB), ms (aim: a plan under 200)`,
      ["what", "median", "95 %", "quickest"],
      [
        row("nothing remembered", () =>
          planned({ ...work, pattern: { ...work.pattern }, alterations: alterations.map((one) => ({ ...one })) }),
        ),
        row("all made again", () => planned({ ...work, alterations: alterations.map((one) => ({ ...one })) })),
        row("the last one changed, as in a drag", () => planned(changed(alterations.length - 1))),
        row("the first one changed", () => planned(changed(0))),
        row("the file read and held against the schema", () => readWorkFile(text)),
        row("the file opened: read, held against the schema, planned for the first time", () => {
          const read = readWorkFile(text);
          return read.ok ? planned(read.value) : null;
        }),
      ],
    );
  }
}
