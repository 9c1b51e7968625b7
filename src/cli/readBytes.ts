/** The bytes of a file that was named, or why there are none. */
import { readFileSync, statSync } from "node:fs";
import { fail, ok, type Result } from "../core/result";

/** @param what a file of this kind is never larger than `most` bytes */
export function readBytes(file: string, most: number, what: string): Result<Uint8Array, string> {
  try {
    const found = statSync(file);
    if (found.isDirectory()) return fail("it is a folder");
    if (!found.isFile() && !found.isFIFO()) return fail("it is not a file");
    if (found.size > most) return fail(`it is far too large for a ${what}`);
    return ok(readFileSync(file));
  } catch (error) {
    const code = error instanceof Error && "code" in error ? error.code : undefined;
    if (code === "ENOENT" || code === "ENOTDIR") return fail("there is no such file");
    if (code === "EACCES" || code === "EPERM") return fail("it may not be read");
    return fail("it cannot be read");
  }
}
