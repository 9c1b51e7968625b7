/** Nothing half written is left where there is no room for it. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it, vi } from "vitest";
import { writeOut } from "../../src/cli/writeOut";

let isFull = false;

vi.mock("node:fs", async (importOriginal) => {
  const fs = await importOriginal<typeof import("node:fs")>();
  const write: typeof fs.writeFileSync = (file, data, options) => {
    if (!isFull) return fs.writeFileSync(file, data, options);
    fs.writeFileSync(file, "half of it", options);
    throw Object.assign(new Error("no room"), { code: "ENOSPC" });
  };
  return { ...fs, writeFileSync: write };
});

const folder = mkdtempSync(join(tmpdir(), "bodicewright-out-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it("says so, keeps what was there and leaves nothing beside it", () => {
  const out = join(folder, "sheet.pdf");
  writeFileSync(out, "as it was");
  isFull = true;
  const written = writeOut(out, "as it is to be");
  isFull = false;
  expect(written).toEqual({ ok: false, failure: "there is no room left for it" });
  expect(readdirSync(folder)).toEqual(["sheet.pdf"]);
  expect(readFileSync(out, "utf8")).toBe("as it was");
  expect(writeOut(out, "as it is to be").ok).toBe(true);
  expect(readFileSync(out, "utf8")).toBe("as it is to be");
});
