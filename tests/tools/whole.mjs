// Runs the tests that look at a share of a large sample on all of it: every one, or those whose path has one of the words.
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));
const words = process.argv.slice(2);

const files = readdirSync(join(root, "tests"), { recursive: true, encoding: "utf8" })
  .map((file) => `tests/${file.replaceAll("\\", "/")}`)
  .filter((file) => /\.test\.tsx?$/u.test(file) && /\/support\/share"/u.test(readFileSync(join(root, file), "utf8")))
  .filter((file) => words.length === 0 || words.some((word) => file.includes(word)));

if (files.length === 0) {
  console.error("No test of that name looks at a share.");
  process.exitCode = 1;
} else {
  const vitest = join(root, "node_modules", "vitest", "vitest.mjs");
  const { status } = spawnSync(process.execPath, [vitest, "run", ...files], {
    cwd: root,
    stdio: "inherit",
    env: { ...process.env, WHOLE: "1" },
  });
  process.exitCode = status ?? 1;
}
