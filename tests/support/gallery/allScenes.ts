/** All scenes of the gallery, in the order they are leafed through. */
import { alterationScenes } from "./alterationScenes";
import { dressScenes } from "./dressScenes";
import type { Scene } from "./scene";
import { bustScenes, halfScenes, styleScenes } from "./styleScenes";

export const allScenes = (): readonly Scene[] => [
  ...styleScenes(),
  ...bustScenes(),
  ...halfScenes(),
  ...alterationScenes(),
  ...dressScenes(),
];
