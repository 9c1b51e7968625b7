import { openDoubts } from "../core/bodies/tapeDoubts";
import type { Work } from "../core/decisions/work";
import { TAPE_DOUBTS_HEAD, tapeDoubtLines, tapeDoubtsWhy } from "../words/tapeDoubts";
import { Words } from "./Words";

/** Doubts about the tape that are not answered yet: all that follows on the sheet stands on these readings. */
export function TapeDoubts({ work }: { readonly work: Work }) {
  const doubts = openDoubts(work);
  const lines = tapeDoubtLines(doubts, work.unit);
  if (lines.length === 0) return null;
  return (
    <section className="pc-doubts pc-tape">
      <h4>{TAPE_DOUBTS_HEAD}</h4>
      <ul>
        {lines.map((line) => (
          <li key={line}>
            <Words>{line}</Words>
          </li>
        ))}
      </ul>
      <p>{tapeDoubtsWhy(doubts, work.pattern)}</p>
    </section>
  );
}
