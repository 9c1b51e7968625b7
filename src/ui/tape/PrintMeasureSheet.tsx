import { useViewState } from "../app/viewState";

/** To Paper, with the measure sheet chosen there. */
export function PrintMeasureSheet() {
  const showSheet = useViewState((view) => view.showSheet);
  return (
    <a className="button" href="#paper" onClick={() => showSheet("measures")}>
      Print a measure sheet
    </a>
  );
}
