import { POINTED_DART } from "./pointedDartPart";
import { useState } from "react";
import { PartPlace } from "../parts/PartPlace";
import type { PointedDartProps } from "./PointedDartQuestions";
import * as say from "../../words/dartsStep";

/** The guided thing: what is seen of a sewn bust dart, and whole answers to it. */
export function PointedDart({ dart, work, alone }: PointedDartProps) {
  const [open, setOpen] = useState(false);
  return (
    <details className="pointed" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say.comesOutWrong}</summary>
      {open && (
        <PartPlace part={POINTED_DART} name={say.whatToDo} placeholder={<p className="field-hint">{say.oneMoment}</p>}>
          {(Questions) => <Questions dart={dart} work={work} alone={alone} />}
        </PartPlace>
      )}
    </details>
  );
}
