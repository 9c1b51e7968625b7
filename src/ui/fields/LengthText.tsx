import type { Mm } from "../../core/units";
import { formatLength } from "../../words/length";
import { useWork } from "../app/useWork";

/** A length in the wearer's unit, its fraction drawn as one. */
export function LengthText({ mm }: { readonly mm: Mm }) {
  const unit = useWork((work) => work.unit);
  return <span className="length">{formatLength(mm, unit)}</span>;
}
