/** Writes a file whole or not at all: under another name in the same folder first, then in place of what was there. */
import { randomUUID } from "node:crypto";
import { realpathSync, renameSync, rmSync, statSync, writeFileSync, type Stats } from "node:fs";
import { dirname, join } from "node:path";
import { fail, ok, type Result } from "../core/result";
import * as say from "../words/doors/doorFiles";

/**
 * Whether a file could be written there; asked before anything is made, so that a mistyped path is told at once.
 *
 * @param source the file that is read, which is not to be written over
 */
export function checkOut(out: string, source: string): Result<null, string> {
  try {
    const found = statOf(out);
    if (found?.isDirectory() === true) return fail(say.itIsAFolder);
    // That the source cannot be read is told by whoever reads it.
    const isThere = found !== undefined && statOf(source) !== undefined;
    if (isThere && realpathSync(out) === realpathSync(source)) return fail(say.itIsTheWorkFile);
    const folder = statOf(dirname(out));
    if (found === undefined && folder === undefined) return fail(say.thereIsNoSuchFolder);
    if (found === undefined && folder?.isDirectory() !== true) return fail(say.notInAFolder);
    return ok(null);
  } catch (error) {
    return fail(reason(error));
  }
}

export function writeOut(out: string, bytes: string | Uint8Array): Result<null, string> {
  let beside: string | null = null;
  try {
    const found = statOf(out);
    if (found !== undefined && !found.isFile()) {
      // A pipe or a device is written to; another file in its place would take it away.
      writeFileSync(out, bytes);
      return ok(null);
    }
    // Where the name is a link, what it leads to is replaced.
    const place = found === undefined ? out : realpathSync(out);
    const name = join(dirname(place), `.bodicewright-${randomUUID()}.part`);
    beside = name;
    writeFileSync(name, bytes, { flag: "wx", mode: found?.mode ?? 0o666 });
    renameSync(name, place);
    return ok(null);
  } catch (error) {
    if (beside !== null) rmSync(beside, { force: true });
    return fail(reason(error));
  }
}

/** undefined: there is nothing of that name. */
const statOf = (path: string): Stats | undefined => statSync(path, { throwIfNoEntry: false });

function reason(error: unknown): string {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  if (code === "EACCES" || code === "EPERM" || code === "EROFS") return say.itMayNotBeWritten;
  if (code === "ENOTDIR") return say.notInAFolder;
  if (code === "ENAMETOOLONG") return say.itsNameIsTooLong;
  if (code === "ENOSPC") return say.thereIsNoRoomLeft;
  return say.itCannotBeWritten;
}
