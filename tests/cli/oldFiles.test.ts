/** Files of every version so far still give a plan and paper from the command line: the same for the same work. Invented. */
import { CURRENT_VERSION } from "../../src/document/upgrades";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { answer } from "../../src/cli/answer";
import { answerPaper } from "../../src/cli/answerPaper";
import { HALVES_FILE } from "../support/doors";

const folder = mkdtempSync(join(tmpdir(), "bodicewright-old-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const READ = { bustGirth: 905, upperChestGirth: 832, waistGirth: 752 };

/** What no version has changed. */
const SAME = {
  name: "Old bodice (invented)",
  invented: true,
  unit: "cm",
  paper: "A4",
  easeWanted: {},
  alterations: [
    {
      kind: "dartEnd",
      id: "a",
      dart: { piece: "front", dart: "waistDart" },
      shorten: 10,
      across: 0,
      hold: "mouth",
      giveBack: {},
    },
  ],
  unread: {},
};

const PATTERN = {
  name: "Old pattern (invented)",
  chart: {
    sizes: [840, 880, 920, 960].map((bust, i) => ({
      label: String(10 + 2 * i),
      bust,
      waist: bust - 180,
      hip: bust + 60,
    })),
    draftedDifference: 50,
    cups: [],
  },
  ease: { bust: 80, waist: 40, hip: 50 },
  length: "waist",
  closure: { place: "side", belowWaist: 120 },
};
const STYLED = { ...PATTERN, style: "sideDart", strap: "wide" };
const TAPES = [{ readings: Object.fromEntries(Object.entries(READ).map(([name, value]) => [name, [value]])) }];

/** A size of her own, as it was called up to version 4. */
const FRAMED = { picks: { frame: "14" } };

/** What changes no plan. */
const SEEN = [
  { piece: "front", dart: "waistDart", half: "left", pastBustPoint: -20, tooFarToSide: 5, pointed: "pointed" },
];

/** The same work as each version wrote it. */
const WORKS: readonly (readonly [version: number, work: unknown])[] = [
  [1, { ...SAME, ...FRAMED, measures: READ, pattern: PATTERN }],
  [2, { ...SAME, ...FRAMED, measures: READ, pattern: STYLED }],
  [3, { ...SAME, ...FRAMED, tapes: TAPES, pattern: STYLED }],
  [4, { ...SAME, ...FRAMED, tapes: TAPES, pattern: STYLED }],
  [5, { ...SAME, tapes: TAPES, pattern: STYLED, picks: { baseSize: "14" } }],
  [6, { ...SAME, tapes: TAPES, pattern: STYLED, picks: { baseSize: "14" }, wearer: "An invented wearer", seen: SEEN }],
  [
    7,
    {
      ...SAME,
      tapes: TAPES,
      trusted: { bustGirth: 905 },
      pattern: { ...STYLED, lengths: { height: { all: 1680 } } },
      picks: { baseSize: "14" },
      wearer: "An invented wearer",
      seen: SEEN.map((one) => ({ ...one, sewn: [] })),
    },
  ],
  [
    8,
    {
      ...SAME,
      tapes: TAPES,
      trusted: { bustGirth: 905 },
      pattern: { ...STYLED, lengths: { height: { all: 1680 } } },
      picks: { baseSize: "14" },
      wearer: "An invented wearer",
      seen: SEEN.map((one) => ({ ...one, sewn: [] })),
    },
  ],
  [
    9,
    {
      ...SAME,
      tapes: TAPES,
      trusted: { bustGirth: 905 },
      pattern: { ...STYLED, lengths: { height: { all: 1680 } } },
      picks: { baseSize: "14" },
      wearer: "An invented wearer",
      seen: SEEN.map((one) => ({ ...one, sewn: [] })),
    },
  ],
];
const NEWEST = WORKS.length;

const fileOf = (version: number, work: unknown): string => {
  const file = join(folder, `version-${version}.json`);
  writeFileSync(file, JSON.stringify({ bodicewright: "work", version, work }));
  return file;
};

function printed(...args: readonly string[]): string {
  const said = answer(args);
  if (!said.ok) throw new Error(said.failure);
  return said.value;
}

function drawn(file: string, as: "svg" | "dxf"): string {
  const out = join(folder, `paper.${as}`);
  const said = answerPaper([file, "--as", as, "--out", out, "--day", "2026-11-25"], "2026-11-25");
  if (!said.ok) throw new Error(said.failure);
  return readFileSync(out, "utf8");
}

it("is told of every version there is", () => {
  expect(NEWEST).toBe(CURRENT_VERSION);
});

describe.each(WORKS)("a file of version %d", (version, work) => {
  const file = fileOf(version, work);
  const newest = fileOf(NEWEST, WORKS[NEWEST - 1]?.[1]);

  it("gives a checklist and the plan as JSON", () => {
    expect(printed(file)).toContain("Shorten the waist dart");
    expect(printed(file)).toContain("Trace the 14 line");
    expect(printed(file, "--json")).toBe(printed(newest, "--json"));
  });

  it("has no trial, and says so", () => {
    expect(JSON.parse(printed(file, "--json"))).toMatchObject({ trial: null, halves: { same: true } });
  });

  it("gives paper", () => {
    expect(drawn(file, "svg")).toContain('<g id="front-stitch"');
    expect(drawn(file, "dxf")).toBe(drawn(newest, "dxf"));
  });
});

describe("a file of version 4 with all that came with it", () => {
  it("is still of version 4 here", () => {
    expect(JSON.parse(readFileSync(HALVES_FILE, "utf8"))).toMatchObject({ version: 4, work: { invented: true } });
  });

  it("gives a checklist and paper of either half", () => {
    expect(printed(HALVES_FILE)).toMatch(/the right half only/);
    expect(drawn(HALVES_FILE, "dxf")).toContain("Piece Name: Front, right");
  });
});
