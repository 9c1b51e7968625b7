/** The opening: zip or buttons, the seam below it, and what is tried on and hemmed where nothing hangs on the bodice. */
import { allowanceOf } from "../cutting/usualAllowances";
import { isBasque } from "../pattern/pieceGroups";
import { piecesOf } from "../pattern/pieceSet";
import { edgeSeams } from "./seamsSewn";
import { closedBelow, type SewnDress } from "./sewnDress";
import { inGroup, keysOf, plainSeam, step, type StepDraft } from "./stepDraft";

export function closureSteps(dress: SewnDress): readonly StepDraft[] {
  const { closes, reading, isSide, allowances, closure, parts } = dress;
  const opened = keysOf(inGroup(parts, "bodice", "skirt"));
  const allowance = allowanceOf(allowances, isSide ? "side" : "centre");
  const tapes = reading === null ? [] : [plainSeam(reading.opening, 2)];
  const below = closedBelow(dress);
  const strips = keysOf(inGroup(parts, "buttonStand"));
  return [
    ...(closes === "buttons"
      ? [
          ...(strips.length === 0 ? [] : [step("fuseStands", strips)]),
          step("buttonStands", opened, { seams: tapes, allowance }),
          step("buttonholes", opened),
          step("buttons", opened),
        ]
      : [
          { ...step("zipMarks", opened), ...(reading === null ? {} : { marks: reading.levelMarks }) },
          step("tackZip", opened, { way: closes, seams: tapes }),
          step("putInZip", opened, { way: closes, seams: tapes, allowance }),
          step("hookAndEye", opened),
        ]),
    ...(below > 0 ? [step("seamBelowOpening", opened, { way: closes, seams: [plainSeam(below)], allowance })] : []),
    ...lowerEdge(dress),
  ].filter(({ name }) => name !== "buttons" || (closure.buttons ?? 0) > 0);
}

/** Without a skirt: the basque's hem, or the edge at the waist. */
function lowerEdge({ skirt, hasBasque, bodice, allowances, parts }: SewnDress): readonly StepDraft[] {
  if (skirt !== null) return [];
  const seam = hasBasque ? "hem" : "waist";
  const seams = edgeSeams(bodice, seam, (name) => name !== "strap" && (!hasBasque || isBasque(name)));
  const names = new Set(
    bodice
      .flatMap(piecesOf)
      .filter(({ name }) => isBasque(name) === hasBasque)
      .map(({ name }) => name),
  );
  const keys = keysOf(inGroup(parts, "bodice").filter((part) => part.kind === "piece" && names.has(part.piece.name)));
  return [step(hasBasque ? "hemShell" : "finishWaist", keys, { seams, allowance: allowanceOf(allowances, seam) })];
}
