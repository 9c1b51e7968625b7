/** How every command ends: what it has to say on standard output, or one line on standard error and exit code 2. */
import type { Result } from "../core/result";

const REFUSED = 2;

export function speak(result: Result<string | Uint8Array, string>): void {
  // A reader that has seen enough (head, a closed pager) closes the pipe: that is no fault.
  for (const stream of [process.stdout, process.stderr]) {
    stream.on("error", (error: NodeJS.ErrnoException) => {
      if (error.code !== "EPIPE") throw error;
      process.exit();
    });
  }
  if (result.ok) {
    process.stdout.write(result.value);
  } else {
    process.exitCode = REFUSED;
    process.stderr.write(`${result.failure}\n`);
  }
}
