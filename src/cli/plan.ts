/** Prints the checklist of a saved work: the same plan as the page, with no page. */
import { answer } from "./answer";

const REFUSED = 2;

// A reader that has seen enough (head, a closed pager) closes the pipe: that is no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") throw error;
    process.exit();
  });
}

const result = answer(process.argv.slice(2));
if (result.ok) {
  process.stdout.write(result.value);
} else {
  process.exitCode = REFUSED;
  process.stderr.write(`${result.failure}\n`);
}
