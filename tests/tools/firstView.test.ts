import { describe, expect, it } from "vitest";
import { firstViewFiles } from "./firstView.mjs";

const html = `
  <link rel="icon" type="image/svg+xml" href="./favicon.svg" />
  <script type="module" crossorigin src="./assets/index-1.js"></script>
  <link rel="modulepreload" crossorigin href="./assets/first-2.js">
  <link rel="stylesheet" crossorigin href="./assets/first-3.css">`;

describe("the files of the first view", () => {
  it("are what index.html names and what that imports statically, each once, with its styles", () => {
    const manifest = {
      "index.html": { file: "assets/index-1.js", isEntry: true, imports: ["_first-2.js"], css: ["assets/first-3.css"] },
      "_first-2.js": { file: "assets/first-2.js", imports: ["_deep-4.js"] },
      "_deep-4.js": { file: "assets/deep-4.js", css: ["assets/deep-5.css"] },
      "src/ui/table/Table.tsx": { file: "assets/Table-6.js", imports: ["_first-2.js"], css: ["assets/Table-7.css"] },
    };
    expect(firstViewFiles(html, manifest).toSorted()).toEqual([
      "assets/deep-4.js",
      "assets/deep-5.css",
      "assets/first-2.js",
      "assets/first-3.css",
      "assets/index-1.js",
    ]);
  });

  it("cannot be told where the manifest is not that of the page", () => {
    const manifest = { "index.html": { file: "assets/index-1.js", imports: ["_gone.js"] } };
    expect(() => firstViewFiles(html, manifest)).toThrow("the manifest has no _gone.js");
  });
});
