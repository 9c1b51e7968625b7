/** Where the outlines of the gallery's scenes are kept, and what they are now: a file for each group of scenes. */
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { allScenes } from "./allScenes";
import { outlineOf } from "./outlineText";
import { groupOfScene, type Scene } from "./scene";

type Outline = ReturnType<typeof outlineOf>;

export const OUTLINES = fileURLToPath(new URL("../../golden/outlines", import.meta.url));

export const fileOfGroup = (group: string): string => join(OUTLINES, `${group}.txt`);

/** Scenes of which an outline is kept, by group. */
export function keptScenes(): ReadonlyMap<string, readonly Scene[]> {
  const found = new Map<string, Scene[]>();
  for (const scene of allScenes()) {
    if (!scene.isKept) continue;
    const group = groupOfScene(scene);
    found.set(group, [...(found.get(group) ?? []), scene]);
  }
  return found;
}

/** Of what cannot be shown, only that it cannot: the reason is told by words, and those are held elsewhere. */
export function outlineNow(scene: Scene): Outline {
  const made = scene.make();
  return made.ok ? outlineOf(scene.key, made.value) : { key: scene.key, pieces: [{ name: "refused", lines: [] }] };
}
