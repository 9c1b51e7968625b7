/**
 * Before the tests of the page that share a process: all that the page loads later is here from the outset. A part whose
 * loading is cut off where one file ends would never come in the next.
 */
import type { Later } from "../../src/ui/parts/later";
import * as parts from "../../src/ui/app/parts";

type Part = Pick<Later<unknown>, "load">;

const isPart = (value: unknown): value is Part => typeof value === "object" && value !== null && "load" in value;

const modules = import.meta.glob<Record<string, unknown>>("../../src/**/*Part.ts", { eager: true });
const all = [parts, ...Object.values(modules)].flatMap((module) => Object.values(module));
// One in a list or a table of parts too.
const found = all.flatMap((one) =>
  typeof one === "object" && one !== null && !isPart(one) ? Object.values(one) : [one],
);
await Promise.all(found.filter(isPart).map((part) => part.load()));
