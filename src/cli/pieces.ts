/** Prints what is found in a file of outlines: the same reading as the page, with no page. */
import { answerPieces } from "./answerPieces";
import { speak } from "./speak";

speak(answerPieces(process.argv.slice(2)));
