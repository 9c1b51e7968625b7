/** All scenes of the gallery, in the order they are leafed through. */
import { DART_KINDS, dartScenes, fitScenes } from "./alterationScenes";
import { dressScenes } from "./dressScenes";
import type { Scene } from "./scene";
import { bustScenes, halfScenes, styleScenes } from "./styleScenes";

/** What makes scenes, by the groups that it makes: where one group alone is asked for, the others need not be drawn up. */
const MAKERS: readonly { readonly groups: readonly string[]; readonly scenes: () => readonly Scene[] }[] = [
  { groups: ["styles"], scenes: styleScenes },
  { groups: ["bust"], scenes: bustScenes },
  { groups: ["halves"], scenes: halfScenes },
  { groups: ["fit"], scenes: fitScenes },
  { groups: DART_KINDS, scenes: dartScenes },
  { groups: ["neckline", "skirt", "lining", "edges", "strap"], scenes: dressScenes },
];

export const allScenes = (): readonly Scene[] => MAKERS.flatMap(({ scenes }) => scenes());

/** Those whose name or title has a word; where that is part of a path, the name alone is looked at, and its own group. */
export function scenesWith(word: string): readonly Scene[] {
  const asked = word.toLowerCase();
  if (!asked.includes("/"))
    return allScenes().filter(({ key, title }) => `${key} ${title}`.toLowerCase().includes(asked));
  const [group = ""] = asked.split("/");
  const own = MAKERS.filter(({ groups }) => groups.some((one) => one.toLowerCase() === group));
  return (own.length > 0 ? own : MAKERS)
    .flatMap(({ scenes }) => scenes())
    .filter(({ key }) => key.toLowerCase().includes(asked));
}
