import type { DressPlan } from "../../core/dress/dressPlan";
import { notionsOutcome, PRINT_DRESS, sewingOutcome } from "../../words/dressStep";
import { DressFoldView } from "./DressFolds";

/** What else it takes, and the order in which it is sewn; both are printed whole. */
export function SewingFolds({ dress: { notions, sewing } }: { readonly dress: DressPlan }) {
  return (
    <>
      {notions.length > 0 && (
        <DressFoldView fold="notions" outcome={notionsOutcome(notions.length)}>
          <ul className="dress-notes" />
        </DressFoldView>
      )}
      {sewing.length > 0 && (
        <DressFoldView fold="sewing" outcome={sewingOutcome(sewing.length)}>
          <PrintDress />
        </DressFoldView>
      )}
    </>
  );
}

/** To Paper, with the sheets of the dress chosen there. */
function PrintDress() {
  return (
    <a className="button" href="#paper">
      {PRINT_DRESS}
    </a>
  );
}
