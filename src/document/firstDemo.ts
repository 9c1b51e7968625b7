/** The demo work that a first visit opens. Apart from the others, so that a page need not load them to begin. */
import wrenHip from "../../demo-data/wren-hip.json" with { type: "json" };
import type { Work } from "../core/decisions/work";
import { CoreBug } from "../core/result";
import { readWorkFile } from "./workFile";

export function demoWork(file: unknown): Work {
  const work = readWorkFile(JSON.stringify(file));
  if (!work.ok) throw new CoreBug(`a demo work does not parse: ${JSON.stringify(work.failure)}`);
  return work.value;
}

export const firstDemo = (): Work => demoWork(wrenHip);
