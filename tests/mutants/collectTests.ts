/**
 * What test files ask of the test runner, as little of it as they ask: tests are collected, to be run here as often as there
 * are mutants. Comparisons are the runner's own.
 */
import * as vitest from "vitest";

type Body = (...args: unknown[]) => unknown;

export interface CollectedTest {
  readonly name: string;
  readonly run: () => unknown;
}

interface Suite {
  readonly name: string;
  readonly before: Body[];
  readonly after: Body[];
}

let collected: CollectedTest[] = [];
let suites: Suite[] = [];

const isBody = (value: unknown): value is Body => typeof value === "function";

/** The body among what was handed over beside the name: options or a time limit may stand before or behind it. */
const bodyOf = (rest: readonly unknown[]): Body => rest.find(isBody) ?? ((): undefined => undefined);

function addTest(name: unknown, body: Body): void {
  const around = [...suites];
  collected.push({
    name: [...around.map((suite) => suite.name), String(name)].join(" > "),
    run: () => {
      const before = around.flatMap((suite) => suite.before);
      const after = around.flatMap((suite) => suite.after);
      if (before.length === 0 && after.length === 0) return body({});
      return (async () => {
        for (const one of before) await one();
        try {
          await body({});
        } finally {
          for (const one of after) await one();
        }
      })();
    },
  });
}

function addSuite(name: unknown, body: Body): void {
  suites = [...suites, { name: String(name), before: [], after: [] }];
  try {
    body();
  } finally {
    suites = suites.slice(0, -1);
  }
}

type Add = (name: unknown, body: Body) => void;

/** `each` of a table: a row that is a list gives the arguments one by one. */
const eachOf =
  (add: Add) =>
  (rows: readonly unknown[], ...values: readonly unknown[]) =>
  (name: unknown, ...rest: readonly unknown[]): void => {
    if ("raw" in rows || values.length > 0) throw new Error("tables in templates are not read here");
    const body = bodyOf(rest);
    for (const [at, row] of rows.entries())
      add(`${String(name)} ${at}`, () => (Array.isArray(row) ? body(...row) : body(row)));
  };

const skipped = (): void => undefined;

const it = Object.assign((name: unknown, ...rest: readonly unknown[]): void => addTest(name, bodyOf(rest)), {
  each: eachOf(addTest),
  skip: skipped,
  runIf: (asked: unknown) => (asked ? it : skipped),
  skipIf: (asked: unknown) => (asked ? skipped : it),
});

const describe = Object.assign((name: unknown, ...rest: readonly unknown[]): void => addSuite(name, bodyOf(rest)), {
  each: eachOf(addSuite),
  skip: skipped,
});

const inSuite = (hook: "before" | "after") => (body: Body) => {
  const suite = suites.at(-1);
  if (suite === undefined) throw new Error("a hook outside a suite");
  suite[hook].push(body);
};

export const standInForVitest: unknown = {
  __esModule: true,
  ...vitest,
  it,
  test: it,
  describe,
  beforeEach: inSuite("before"),
  afterEach: inSuite("after"),
  beforeAll: inSuite("before"),
  afterAll: inSuite("after"),
};

/** The tests that loading a file declares. */
export function collect(load: () => void): CollectedTest[] {
  collected = [];
  suites = [];
  load();
  return collected;
}
