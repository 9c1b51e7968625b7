/**
 * Outlines of the gallery's scenes, held against what was kept of them. They say nothing of what is right, only that something
 * changed: a change that is meant is looked at (`npm run gallery`) and kept (`npm run outlines`).
 */
import { readdirSync, readFileSync } from "node:fs";
import { basename } from "node:path";
import { describe, expect, it } from "vitest";
import { fileOfGroup, keptScenes, OUTLINES, outlineNow } from "../support/gallery/keptOutlines";
import { differences, readOutlines, told } from "../support/gallery/outlineText";

/** mm. What is kept is rounded to a hundredth. */
const MOST_MOVED = 0.02;

const scenes = keptScenes();

describe("the outlines that are kept", () => {
  it.each([...scenes])("of %s lie where they lay", (group, own) => {
    const kept = readOutlines(readFileSync(fileOfGroup(group), "utf8"));
    const found = own.flatMap((scene) => differences(kept.get(scene.key), outlineNow(scene), MOST_MOVED));
    expect(told(found, own.length)).toBe("");
    expect([...kept.keys()].filter((key) => !own.some((scene) => scene.key === key))).toEqual([]);
  });

  it("are those of the gallery's groups, no more and no fewer", () => {
    expect(readdirSync(OUTLINES).toSorted()).toEqual(
      [...scenes.keys()].map((group) => basename(fileOfGroup(group))).toSorted(),
    );
  });
});
