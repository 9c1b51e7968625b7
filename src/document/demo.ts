/** The invented demo works, parsed like any other file. The first is what a first visit opens. */
import harbour from "../../demo-data/harbour.json";
import sorrelPrincess from "../../demo-data/sorrel-princess.json";
import tansyMidriff from "../../demo-data/tansy-midriff.json";
import wrenHip from "../../demo-data/wren-hip.json";
import wrenWaist from "../../demo-data/wren-waist.json";
import type { Work } from "../core/decisions/work";
import { CoreBug } from "../core/result";
import { readWorkFile } from "./workFile";

export const demoWorks = (): readonly Work[] =>
  [wrenHip, wrenWaist, harbour, tansyMidriff, sorrelPrincess].map((file) => {
    const work = readWorkFile(JSON.stringify(file));
    if (!work.ok) throw new CoreBug(`a demo work does not parse: ${JSON.stringify(work.failure)}`);
    return work.value;
  });
