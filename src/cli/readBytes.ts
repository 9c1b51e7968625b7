/** The bytes of a file that was named, or why there are none. */
import { readFileSync, statSync } from "node:fs";
import { fail, ok, type Result } from "../core/result";
import * as say from "../words/doors/doorFiles";

/** @param what a file of this kind is never larger than `most` bytes */
export function readBytes(file: string, most: number, what: string): Result<Uint8Array, string> {
  try {
    const found = statSync(file);
    if (found.isDirectory()) return fail(say.itIsAFolder);
    if (!found.isFile() && !found.isFIFO()) return fail(say.itIsNotAFile);
    if (found.size > most) return fail(say.itIsFarTooLarge(what));
    return ok(readFileSync(file));
  } catch (error) {
    const code = error instanceof Error && "code" in error ? error.code : undefined;
    if (code === "ENOENT" || code === "ENOTDIR") return fail(say.thereIsNoSuchFile);
    if (code === "EACCES" || code === "EPERM") return fail(say.itMayNotBeRead);
    return fail(say.itCannotBeRead);
  }
}
