/** Keeps the outlines of the gallery's scenes anew, for the tests in tests/golden: `npm run outlines`. */
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { fileOfGroup, keptScenes, OUTLINES, outlineNow } from "../support/gallery/keptOutlines";
import { outlinesText } from "../support/gallery/outlineText";

rmSync(OUTLINES, { recursive: true, force: true });
mkdirSync(OUTLINES, { recursive: true });
let size = 0;
let count = 0;
for (const [group, scenes] of keptScenes()) {
  const text = outlinesText(scenes.map(outlineNow));
  writeFileSync(fileOfGroup(group), text);
  size += text.length;
  count += scenes.length;
  console.log(`${group}: ${scenes.length} scenes, ${Math.round(text.length / 1000)} kB`);
}
console.log(`${count} scenes, ${Math.round(size / 1000)} kB`);
