import {
  useId,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
  useSyncExternalStore,
  type ChangeEvent,
  type RefObject,
} from "react";
import { momentsFrom } from "../../words/terms/moments";
import { OFFLINE_WORDS, VERSION_WORDS } from "../../words/offline";
import { WORKS_WORDS } from "../../words/works";
import { PartPlace } from "../parts/PartPlace";
import { usePageState } from "../session/pageState";
import { namesakes, sameSaid, whenSaid } from "./alike";
import { BASES } from "./basesPart";
import { DEMOS } from "./demosPart";
import type { Looks } from "./looks";
import { useWorks } from "./useWorks";
import { WorkRow } from "./WorkRow";
import { WorksBin } from "./WorksBin";
import * as say from "../../words/worksList";

/** From so many works on they are looked for by name. */
const MANY = 9;

export interface WorksListProps {
  /** Milliseconds since 1970. */
  readonly now: number;
  readonly looks: Looks;
  readonly onDone: () => void;
}

export function WorksList({ now, looks, onDone }: WorksListProps) {
  const works = useWorks();
  const heading = useRef<HTMLHeadingElement>(null);
  const [isChoosing, setChoosing] = useState(false);
  useFocusCaught(heading, `${works.entries.length} ${works.binned.length}`);

  const then = (action: () => void) => (): void => {
    action();
    onDone();
  };

  return (
    <>
      <div className="works-head">
        <h2 ref={heading} tabIndex={-1}>
          {WORKS_WORDS.kept}
        </h2>
        <button type="button" className="button quiet small" onClick={onDone}>
          {WORKS_WORDS.close}
        </button>
      </div>
      <div className="works-actions">
        <button type="button" className="button small" onClick={then(works.startBlank)}>
          {WORKS_WORDS.blank}
        </button>
        <button
          type="button"
          className="button small"
          aria-expanded={isChoosing}
          onClick={() => setChoosing(!isChoosing)}
        >
          {WORKS_WORDS.fromBase}
        </button>
        <OpenFile onDone={onDone} />
      </div>
      {isChoosing && (
        <PartPlace part={BASES} name={say.listOfBases}>
          {(Bases) => <Bases onDone={onDone} />}
        </PartPlace>
      )}
      <div className="works-actions">
        <button type="button" className="button small" onClick={then(works.download)}>
          {WORKS_WORDS.download}
        </button>
        <button type="button" className="button small" onClick={then(works.downloadAll)}>
          {WORKS_WORDS.downloadAll}
        </button>
      </div>
      {works.isLasting !== null && (
        <p className="aside">{works.isLasting ? WORKS_WORDS.promised : WORKS_WORDS.mayClear}</p>
      )}
      <OnThisDevice />
      <KeptWorks now={now} looks={looks} onDone={onDone} />
      {works.binned.length > 0 && <WorksBin now={now} />}
      <div className="works-actions works-demos">
        <PartPlace part={DEMOS} name={say.demonstrations}>
          {(demos) =>
            demos.map((demo) => (
              <button
                key={demo.name}
                type="button"
                className="button small"
                onClick={then(() => works.startDemo(demo))}
              >
                {say.demo(demo.name)}
              </button>
            ))
          }
        </PartPlace>
      </div>
      <p className="aside">{WORKS_WORDS.files}</p>
    </>
  );
}

/** What the page is on this device: whether it needs a network, a newer version of it, and how to have it among the programs. */
function OnThisDevice() {
  const { offline, takeNewVersion, install } = usePageState();
  return (
    <>
      {offline !== "no" && <p className="aside">{OFFLINE_WORDS.works}</p>}
      {takeNewVersion !== null && (
        <div className="works-device">
          <button type="button" className="button small" onClick={takeNewVersion}>
            {VERSION_WORDS.takeFromMenu}
          </button>
        </div>
      )}
      {install !== null && (
        <div className="works-device">
          <button type="button" className="button small" onClick={install}>
            {OFFLINE_WORDS.install}
          </button>
          <p className="aside">{OFFLINE_WORDS.installed}</p>
        </div>
      )}
    </>
  );
}

function KeptWorks({ now, looks, onDone }: WorksListProps) {
  const { entries, openId, open, copy, bin } = useWorks();
  const [sought, setSought] = useState("");
  const field = useId();
  useSyncExternalStore(looks.subscribe, looks.found);
  const when = useMemo(() => whenSaid(entries, momentsFrom(now)), [entries, now]);
  const alike = useMemo(() => namesakes(entries), [entries]);
  const same = sameSaid(entries, when, (entry) => (alike.has(entry.id) ? looks.of(entry)?.text : undefined));
  const needle = sought.trim().toLowerCase();
  const found = entries.filter(({ name, wearer }) => `${name} ${wearer ?? ""}`.toLowerCase().includes(needle));

  return (
    <>
      {entries.length >= MANY && (
        <div className="works-find">
          <label htmlFor={field}>{WORKS_WORDS.find}</label>
          <input
            id={field}
            className="field-input"
            type="search"
            autoComplete="off"
            value={sought}
            onChange={({ target }) => setSought(target.value)}
          />
        </div>
      )}
      <p className={found.length === 0 ? "aside" : "visually-hidden"} role="status">
        {found.length === 0 ? WORKS_WORDS.found.none : ""}
      </p>
      <ul className="works-kept">
        {found.map((entry) => (
          <WorkRow
            key={entry.id}
            entry={entry}
            when={when.get(entry.id) ?? ""}
            same={same.get(entry.id)}
            namesakes={alike.get(entry.id)}
            isOpen={entry.id === openId}
            looks={looks}
            onOpen={() => {
              open(entry.id);
              onDone();
            }}
            onCopy={() => copy(entry.id)}
            onBin={() => bin(entry.id)}
          />
        ))}
      </ul>
    </>
  );
}

function OpenFile({ onDone }: { readonly onDone: () => void }) {
  const { openFile } = useWorks();
  const file = useRef<HTMLInputElement>(null);

  const choose = (event: ChangeEvent<HTMLInputElement>): void => {
    const chosen = event.target.files?.[0];
    // So that the same file can be chosen again.
    event.target.value = "";
    if (chosen !== undefined) void openFile(chosen);
    onDone();
  };

  return (
    <>
      <button type="button" className="button small" onClick={() => file.current?.click()}>
        {WORKS_WORDS.openFile}
      </button>
      <input
        ref={file}
        type="file"
        accept=".json,application/json"
        hidden
        aria-label={say.workFile}
        onChange={choose}
      />
    </>
  );
}

/** What had the focus may go with its row: whoever works by keys is then not left nowhere. @param rows changes when rows do */
function useFocusCaught(place: RefObject<HTMLElement | null>, rows: string): void {
  const last = useRef(rows);
  useLayoutEffect(() => {
    if (last.current === rows) return;
    last.current = rows;
    if (document.activeElement === document.body) place.current?.focus({ preventScroll: true });
  }, [place, rows]);
}
