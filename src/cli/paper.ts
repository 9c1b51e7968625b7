/** Writes the paper of a saved work to a file: what the page's Paper step makes, with no page. */
import { answerPaper } from "./answerPaper";
import { speak } from "./speak";

const two = (part: number): string => String(part).padStart(2, "0");

/** Today by the clock of this machine, yyyy-mm-dd. */
function today(): string {
  const now = new Date();
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

speak(answerPaper(process.argv.slice(2), today()));
