/** Writes the paper of a saved work to a file: what the page's Paper step makes, with no page. */
import { answerPaper } from "./answerPaper";
import { speak } from "./speak";
import { today } from "./today";

speak(answerPaper(process.argv.slice(2), today()));
