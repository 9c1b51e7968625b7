/** Prints the checklist of a saved work, the same plan as the page, or does one turn of its trial: with no page. */
import { answer } from "./answer";
import { speak } from "./speak";

speak(answer(process.argv.slice(2)));
