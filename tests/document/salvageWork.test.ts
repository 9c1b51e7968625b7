/** What is saved of a damaged work: all that is not damaged. What that is follows from where the damage was done. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blankWork } from "../../src/document/blank";
import { salvageWork } from "../../src/document/salvageWork";
import { CURRENT_VERSION } from "../../src/document/upgrades";
import { parseWork } from "../../src/document/workFile";
import { LIMITS } from "../../src/core/decisions/limits";
import { anyWork } from "../support/arbitraryWork";
import { sampleWork } from "../support/sampleWork";
import { runsOf } from "../support/share";

type Path = readonly (string | number)[];

const isObject = (value: unknown): value is object => typeof value === "object" && value !== null;

/** Every place of a work, the whole itself left out. */
function placesIn(value: unknown, path: Path = []): readonly Path[] {
  if (!isObject(value)) return [path];
  const keys = Array.isArray(value) ? value.map((_, at) => at) : Object.keys(value);
  const within = keys.flatMap((key) => placesIn(Reflect.get(value, key), [...path, key]));
  return path.length === 0 ? within : [path, ...within];
}

const at = (value: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (of, key) => (isObject(of) && Object.hasOwn(of, key) ? (Reflect.get(of, key) as unknown) : undefined),
    value,
  );

const cycle: Record<string, unknown> = { more: [] };
cycle["again"] = cycle;
cycle["readings"] = cycle;

/** Values as they can lie in a store; "gone" is none. */
const DAMAGE: readonly unknown[] = [
  "gone",
  null,
  undefined,
  true,
  -1e9,
  Number.NaN,
  Infinity,
  [],
  {},
  [null],
  { more: 1 },
  "x".repeat(100_000),
  10n,
  new Date(0),
  new Map([["bust", 1]]),
  cycle,
];

function damaged(work: unknown, path: Path, value: unknown): void {
  const parent = at(work, path.slice(0, -1));
  const key = path.at(-1);
  if (!isObject(parent) || parent === GONE || key === undefined) return;
  if (value !== "gone") Reflect.set(parent, key, value);
  else if (Array.isArray(parent)) Reflect.set(parent, key, GONE);
  else Reflect.deleteProperty(parent, key);
}

/** Items are taken out last, so that none that is damaged too is moved. */
const GONE = {};
function takeOutGone(value: unknown, depth = 0): void {
  if (!isObject(value) || depth > 8) return;
  if (Array.isArray(value))
    for (let last = value.length; last >= 0; last -= 1) if (value[last] === GONE) value.splice(last, 1);
  for (const part of Object.values(value)) takeOutGone(part, depth + 1);
}

/** Items of a list stand or fall by themselves, and a reading is one; all else is as small as it can be. */
function unitOf(path: Path): Path {
  const isReading = path[0] === "tapes" && path[2] === "readings" && path.length >= 4;
  if (isReading) return path.slice(0, 4);
  // A line of a record goes by itself, and so does one more part of a trial that is refused.
  if (path[0] === "trials") return path.slice(0, 2);
  // A day tells nothing of a base without a name.
  if (path[0] === "begunFrom") return path.slice(0, 1);
  const list = path.findIndex((key) => typeof key === "number");
  return list < 0 ? path : path.slice(0, list + 1);
}

const LISTS: readonly Path[] = [
  ["tapes"],
  ["alterations"],
  ["seen"],
  ["trials"],
  ["standingLeft"],
  ["pattern", "chart", "sizes"],
  ["pattern", "chart", "cups"],
];
/** With its fields in one order; a number as it is, though it be none. */
const sorted = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(sorted);
  if (!isObject(value)) return String(value);
  return Object.entries(value)
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, part]) => [key, sorted(part)]);
};
const isWithin = (path: Path, other: Path): boolean => other.every((key, index) => path[index] === key);
const listOf = (path: Path): Path | undefined => LISTS.find((list) => isWithin(path, list));

const withDamage = anyWork.chain((work) => {
  const places = placesIn(work);
  return fc.record({
    work: fc.constant(work),
    hits: fc.array(fc.tuple(fc.constantFrom(...places), fc.constantFrom(...DAMAGE)), { minLength: 1, maxLength: 4 }),
  });
});

describe("salvageWork", () => {
  it("keeps all that is not damaged, and gives a work that can be saved, whatever was done to it", () => {
    fc.assert(
      fc.property(withDamage, ({ work, hits }) => {
        const data: unknown = structuredClone(work);
        for (const [path, value] of hits) damaged(data, path, value);
        takeOutGone(data);
        const saved = salvageWork(data, CURRENT_VERSION);
        if (saved === null) throw new Error("nothing was saved");
        expect(parseWork(saved.work)).toEqual({ ok: true, value: saved.work });
        const units = hits.map(([path]) => unitOf(path));
        const isHit = (path: Path): boolean =>
          units.some(
            (unit) => isWithin(path, unit) || isWithin(unit, path) || hits.some(([hit]) => isWithin(path, hit)),
          );
        const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
        const lost = placesIn(work).filter((path) => {
          const [list, whole] = [listOf(path), at(work, path)];
          if (isHit(path) || (list === undefined ? isObject(whole) : path.length !== list.length + 1)) return false;
          // In a list, those before it may be gone.
          const left = list === undefined ? [at(saved.work, path)] : at(saved.work, list);
          return !Array.isArray(left) || !left.some((one) => same(sorted(one), sorted(whole)));
        });
        expect(lost).toEqual([]);
      }),
      { numRuns: runsOf(600) },
    );
  }, 240_000);

  it("loses nothing of a sound work, of this version or an older one", () => {
    fc.assert(
      fc.property(anyWork, (work) => {
        expect(salvageWork(work, CURRENT_VERSION)).toEqual({ work, lost: [] });
      }),
    );
    const { tapes, ...others } = sampleWork;
    const measures = Object.fromEntries(
      Object.entries(tapes[0]?.readings ?? {}).map(([name, values]) => [name, values[0]]),
    );
    expect(salvageWork({ ...others, measures }, 2)).toEqual({ work: sampleWork, lost: [] });
  });

  const damage = (part: object): unknown => ({ ...structuredClone(sampleWork), ...part });
  const { pattern } = sampleWork;
  const { chart } = pattern;
  const seen = { piece: "front", dart: "waistDart", half: "left", pastBustPoint: 1, tooFarToSide: 2, pointed: "flat" };

  it.each<[string, unknown, readonly string[], (work: typeof sampleWork) => unknown, unknown]>([
    [
      "one figure of a size",
      damage({
        pattern: {
          ...pattern,
          chart: { ...chart, sizes: chart.sizes.with(1, { ...chart.sizes[1], waist: "?" } as never) },
        },
      }),
      ["pattern.chart.sizes.1"],
      (work) => work.pattern.chart.sizes,
      chart.sizes.toSpliced(1, 1),
    ],
    [
      "sizes before and after a sound one",
      damage({
        pattern: { ...pattern, chart: { ...chart, sizes: [1, chart.sizes[0], null, { label: "x" }, chart.sizes[1]] } },
      }),
      ["pattern.chart.sizes.0", "pattern.chart.sizes.2", "pattern.chart.sizes.3"],
      (work) => work.pattern.chart.sizes,
      chart.sizes.slice(0, 2),
    ],
    [
      "a style that there is none of",
      damage({ pattern: { ...pattern, style: "wrap" } }),
      ["pattern.style"],
      (work) => work.pattern,
      { ...pattern, style: "sideDart" },
    ],
    ["a field too many", damage({ more: 1, age: 30 }), ["more"], (work) => work.age, 30],
    ["an age that is none", damage({ age: -1 }), ["age"], (work) => "age" in work, false],
    [
      "a name too long",
      damage({ name: "x".repeat(LIMITS.text + 9) }),
      ["name"],
      (work) => work.name,
      "x".repeat(LIMITS.text),
    ],
    ["no name", damage({ name: 7 }), ["name"], (work) => work.name, blankWork().name],
    [
      "one reading",
      damage({ tapes: [{ readings: { waistGirth: [740, Number.NaN, 742], hipGirth: [null] } }] }),
      ["tapes.0.readings.waistGirth.1", "tapes.0.readings.hipGirth"],
      (work) => work.tapes,
      [{ readings: { waistGirth: [740, 742] } }],
    ],
    [
      "a list too long",
      damage({ tapes: Array.from({ length: 30 }, (_, day) => ({ readings: { height: [1600 + day] } })) }),
      ["tapes"],
      (work) => work.tapes.map(({ readings }) => readings.height?.[0]),
      Array.from({ length: LIMITS.tapes }, (_, day) => 1600 + day),
    ],
    [
      "a dart seen twice",
      damage({ seen: [seen, { ...seen, pointed: "right" }, { ...seen, half: "right" }] }),
      ["seen.1"],
      (work) => work.seen,
      [seen, { ...seen, half: "right" }],
    ],
    [
      "an alteration of no kind",
      damage({ alterations: [{ kind: "pleat", id: "p" }, sampleWork.alterations[0]] }),
      ["alterations.0"],
      (work) => work.alterations,
      sampleWork.alterations,
    ],
    [
      "names of the engine's own",
      damage({ unread: JSON.parse('{"__proto__":"a","constructor":"b","toString":3}') as unknown }),
      ["unread.__proto__", "unread.toString"],
      (work) => Object.entries(work.unread),
      [["constructor", "b"]],
    ],
    [
      "too many entries",
      damage({ unread: Object.fromEntries(Array.from({ length: LIMITS.unread + 1 }, (_, n) => [`f${n}`, "?"])) }),
      [`unread.f${LIMITS.unread}`],
      (work) => Object.keys(work.unread).length,
      LIMITS.unread,
    ],
    ["no picks", damage({ picks: 3 }), ["picks"], (work) => work.picks, {}],
  ])("mends %s, and names it", (_, data, lost, part, value) => {
    const saved = salvageWork(data, CURRENT_VERSION);
    expect(saved?.lost).toEqual(lost);
    expect(saved !== null && part(saved.work)).toEqual(value);
  });

  it("saves an old work whose measures are damaged", () => {
    const { tapes: _tapes, ...others } = sampleWork;
    const saved = salvageWork({ ...others, measures: "none" }, 2);
    expect(saved?.work).toEqual({ ...sampleWork, tapes: [{ readings: {} }] });
    expect(saved?.lost.toSorted()).toEqual(["measures", "tapes"]);
  });

  it.each<[string, unknown, number]>([
    ["null", null, CURRENT_VERSION],
    ["a text", "work", CURRENT_VERSION],
    ["a list", [sampleWork], CURRENT_VERSION],
    ["nothing", {}, CURRENT_VERSION],
    ["nothing that it knows", { a: 1 }, CURRENT_VERSION],
    ["nothing that it can read", { name: 7, tapes: "none" }, CURRENT_VERSION],
    ["a newer version", sampleWork, CURRENT_VERSION + 1],
    ["no version", sampleWork, Number.NaN],
    ["half a version", sampleWork, 1.5],
  ])("saves nothing of %s", (_, data, version) => {
    expect(salvageWork(data, version)).toBeNull();
  });

  it("keeps what is sound, however much there is", () => {
    const rows = Array.from({ length: 100_000 }, (_, n) => ({ label: n }));
    const many = Object.fromEntries(rows.map((row) => [`k${row.label}`, row]));
    const data = damage({
      alterations: rows,
      picks: many,
      unread: many,
      pattern: { ...pattern, chart: { ...chart, sizes: rows }, ...many },
    });
    const saved = salvageWork({ ...Object(data), ...many }, CURRENT_VERSION);
    expect(saved?.work.tapes).toEqual(sampleWork.tapes);
  });
});
