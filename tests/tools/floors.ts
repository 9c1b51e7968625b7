/** Draws the floors of the core afresh, for DEVELOPERS.md. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { importGraph } from "../architecture/importGraph";
import { root, sourceFiles } from "../architecture/source";
import { FLOORS } from "../lint/floors.mjs";
import { floorsPicture } from "../support/floorsPicture";

const core = sourceFiles().filter((file) => file.startsWith("src/core/"));
writeFileSync(join(root, "public/floors.svg"), floorsPicture(FLOORS, importGraph(core)));
