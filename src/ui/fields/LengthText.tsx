import type { Mm } from "../../core/units";
import { formatLength } from "../../words/terms/length";
import { useWork } from "../session/useWork";
import { Fractions } from "./Fractions";

/** A length in the wearer's unit, its fraction drawn as one. */
export function LengthText({ mm }: { readonly mm: Mm }) {
  const unit = useWork((work) => work.unit);
  return (
    <span className="length">
      <Fractions text={formatLength(mm, unit)} />
    </span>
  );
}
