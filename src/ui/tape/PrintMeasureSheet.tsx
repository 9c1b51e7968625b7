import { usePageState } from "../session/pageState";
import * as say from "../../words/tapeStep";

/** To Paper, with the measure sheet chosen there. */
export function PrintMeasureSheet() {
  const showSheet = usePageState((page) => page.showSheet);
  return (
    <a className="button" href="#paper" onClick={() => showSheet("measures")}>
      {say.printAMeasureSheet}
    </a>
  );
}
