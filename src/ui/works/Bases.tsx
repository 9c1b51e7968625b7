import { basesOf } from "../../core/standing/keptGarments";
import { workFromBase } from "../../core/standing/fromBase";
import { BASE_WORDS, baseWords, nextName } from "../../words/standing";
import { useWorks } from "./useWorks";
import { useFoundWorks } from "./useFoundWorks";

/** The bases of all kept works, each a dress begun by one tap. */
export function Bases({ onDone }: { readonly onDone: () => void }) {
  const { entries, begin } = useWorks();
  const found = useFoundWorks(entries);
  const bases = (found ?? []).flatMap(({ id, work }) => basesOf(work).map((trial) => ({ id, work, trial })));
  const names = entries.map(({ name }) => name);
  return (
    <section className="bases" aria-label={BASE_WORDS.title}>
      <p className="aside" role="status">
        {found === null ? BASE_WORDS.looking : bases.length === 0 ? BASE_WORDS.none : BASE_WORDS.note}
      </p>
      {bases.length > 0 && (
        <ul className="bases-list">
          {bases.map(({ id, work, trial }) => (
            <li key={`${id} ${trial.id}`}>
              <button
                type="button"
                className="button small"
                onClick={() => {
                  begin(workFromBase(work, trial, nextName(work.name, names)));
                  onDone();
                }}
              >
                {baseWords(work.name, trial.day, work.wearer)}
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
