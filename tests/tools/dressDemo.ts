/**
 * Makes the demonstration of three dresses on one base: `npm run dress-demo`. They are invented, and made by the same commands as
 * the page gives.
 */
import { fileURLToPath } from "node:url";
import { writeFileSync } from "node:fs";
import type { Work } from "../../src/core/decisions/work";
import { applyCommand, type Command } from "../../src/core/plan/commands";
import { invariant } from "../../src/core/result";
import { workFromBase } from "../../src/core/standing/fromBase";
import { writeWorkFile } from "../../src/document/workFile";
import { story } from "./storyDemo";

/** What was measured for the dresses. */
const MEASURES = {
  waistToHip: 205,
  waistToFloorFront: 1034,
  waistToFloorSide: 1040,
  waistToFloorBack: 1030,
  shoulderGirth: 1040,
};

function dress(name: string, commands: readonly Command[]): Work {
  const work = story();
  const base = invariant(work.trials?.[0], "base");
  const all: readonly Command[] = [{ kind: "setDress", part: "measures", value: MEASURES }, ...commands];
  return all.reduce(applyCommand, workFromBase(work, base, name));
}

/** Cups with a sweetheart edge and thin straps, two tiers and an A-line lining, in a sheer cloth. */
export const cupsWithTiers = (): Work =>
  dress("Siskin cups with two tiers (invented)", [
    { kind: "setStyle", style: "midriff" },
    { kind: "setStrap", strap: "thin" },
    // The cups have no dart at the side.
    { kind: "removeAlteration", id: "dartEnd-front-sideDart" },
    { kind: "setPick", picks: { cup: "C" } },
    { kind: "setDress", part: "neckline", value: { shape: "sweetheart" } },
    { kind: "setDress", part: "straps", value: { kind: "plain", braStrap: 10 } },
    {
      kind: "setDress",
      part: "skirt",
      value: { kind: "tiers", length: 720, ratio: 1.6, tiers: [{}, {}], growing: true },
    },
    { kind: "setDress", part: "lining", value: { bodice: true, skirt: true } },
    { kind: "setDress", part: "opacity", value: "sheer" },
    {
      kind: "setDress",
      part: "cloths",
      value: { main: { width: 1400, oneWay: true, shrinkage: 4 }, lining: { width: 1400 } },
    },
  ]);

/** Princess seams that run on into six panels. */
export const princessWithPanels = (): Work =>
  dress("Siskin princess with six panels (invented)", [
    { kind: "setStyle", style: "princessArmhole" },
    { kind: "removeAlteration", id: "dartEnd-front-sideDart" },
    { kind: "setDress", part: "skirt", value: { kind: "aLine", panels: 6, length: 640, pockets: true } },
    { kind: "setDress", part: "edges", value: { neck: "facing", armhole: "facing" } },
    { kind: "setDress", part: "cloths", value: { main: { width: 1500, fold: true } } },
  ]);

/** The bodice of the base with a straight skirt, lined. */
export const baseWithPencil = (): Work =>
  dress("Siskin base with a straight skirt (invented)", [
    { kind: "setDress", part: "neckline", value: { shape: "scoop", deeper: 25, wider: 15 } },
    { kind: "setDress", part: "skirt", value: { kind: "straight", length: 600, vent: 200 } },
    { kind: "setDress", part: "lining", value: { bodice: true, skirt: true } },
    { kind: "setDress", part: "zip", value: "lapped" },
    { kind: "setDress", part: "cloths", value: { main: { width: 1500, shrinkage: 2 } } },
  ]);

const inDemoData = (name: string): string => fileURLToPath(new URL(`../../demo-data/${name}`, import.meta.url));

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(inDemoData("siskin-tiers.json"), writeWorkFile(cupsWithTiers()));
  writeFileSync(inDemoData("siskin-panels.json"), writeWorkFile(princessWithPanels()));
  writeFileSync(inDemoData("siskin-straight.json"), writeWorkFile(baseWithPencil()));
}
