/** The invented demo works, parsed like any other file. The first is what a first visit opens. */
import harbour from "../../demo-data/harbour.json" with { type: "json" };
import linnet from "../../demo-data/linnet.json" with { type: "json" };
import siskinPanels from "../../demo-data/siskin-panels.json" with { type: "json" };
import siskinSecond from "../../demo-data/siskin-second.json" with { type: "json" };
import siskinStraight from "../../demo-data/siskin-straight.json" with { type: "json" };
import siskinTiers from "../../demo-data/siskin-tiers.json" with { type: "json" };
import siskin from "../../demo-data/siskin.json" with { type: "json" };
import sorrelPrincess from "../../demo-data/sorrel-princess.json" with { type: "json" };
import tansyMidriff from "../../demo-data/tansy-midriff.json" with { type: "json" };
import wrenWaist from "../../demo-data/wren-waist.json" with { type: "json" };
import type { Work } from "../core/decisions/work";
import { demoWork, firstDemo } from "./firstDemo";

export const demoWorks = (): readonly Work[] => [
  firstDemo(),
  ...[wrenWaist, harbour, tansyMidriff, sorrelPrincess, linnet].map(demoWork),
];

/** What became of a plan: its trials, what was seen and taken, and the next dress. They stand beside the demo works, plans alone. */
export const demoStories = (): readonly Work[] => [siskin, siskinSecond].map(demoWork);

/** Three dresses on the base that the trials came to. */
export const demoDresses = (): readonly Work[] => [siskinTiers, siskinPanels, siskinStraight].map(demoWork);
