/** Builds the page, where the run that this is part of has not built it already. */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { built, root, site } from "../e2e/site";

export default function build(): void {
  if (built !== undefined) return;
  const vite = join(root, "node_modules", "vite", "bin", "vite.js");
  const { status } = spawnSync(
    process.execPath,
    [vite, "build", "--outDir", site, "--emptyOutDir", "--logLevel", "warn"],
    {
      cwd: root,
      stdio: "inherit",
    },
  );
  if (status !== 0) throw new Error("the page could not be built");
}
