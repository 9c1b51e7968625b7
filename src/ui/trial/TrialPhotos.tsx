import "./trialPhotos.css";
import { useEffect, useId, useMemo, useRef, useState, type ChangeEvent } from "react";
import type { Trial } from "../../core/decisions/trial";
import type { StorageFailure } from "../../store/library";
import { inFile, openPhotographs, photographId, type Photograph, type Photographs } from "../../store/photographs";
import {
  enlargeLabel,
  notAddedSentence,
  PHOTOGRAPH_WORDS,
  photographName,
  removeLabel,
  unreadableSentence,
} from "../../words/photographs";
import { useWorkStore } from "../session/useWork";
import { useWorks } from "../works/useWorks";
import { scalePhotograph, type ScaledPhotograph } from "./scalePhotograph";
import * as say from "../../words/trialStep";

export interface TrialPhotosProps {
  readonly trial: Trial;
  /** Where they lie; absent: this browser's own store. */
  readonly photographs?: Photographs;
  /** What makes a file as small as it is kept; null: it is no picture. */
  readonly scale?: (file: Blob) => Promise<ScaledPhotograph | null>;
}

/** Photographs of one trial, beside it: added, seen, enlarged, removed. Whatever goes wrong with them, the trial stands. */
export function TrialPhotos({ trial, photographs, scale = scalePhotograph }: TrialPhotosProps) {
  const { openId, downloadWith, tell } = useWorks();
  const work = useWorkStore();
  const [kept] = useState(() => photographs ?? openPhotographs());
  const [list, setList] = useState<readonly Photograph[] | null>(null);
  const [large, setLarge] = useState<string | null>(null);
  const [removed, setRemoved] = useState<Photograph | null>(null);
  const [said, setSaid] = useState("");
  const last = useRef(0);
  const picker = useRef<HTMLInputElement>(null);
  const status = useRef<HTMLParagraphElement>(null);
  const id = useId();

  const isGone = useRef(false);
  useEffect(() => {
    isGone.current = false;
    return () => {
      isGone.current = true;
    };
  }, []);
  useEffect(() => () => (photographs === undefined ? kept.close() : undefined), [kept, photographs]);
  useEffect(() => {
    let isOver = false;
    void kept.of(openId, trial.id).then((found) => {
      if (isOver) return;
      const there = found.ok ? found.value.photographs : [];
      // One may have been added meanwhile.
      setList((now) => [...there, ...(now ?? []).filter(({ id: own }) => there.every((one) => one.id !== own))]);
      if (!found.ok) setSaid(failureWords(found.failure));
      else if (found.value.unreadable > 0) setSaid(unreadableSentence(found.value.unreadable));
    });
    return () => {
      isOver = true;
    };
  }, [kept, openId, trial.id]);

  /** Beside the photographs, or, where she has gone on, among the messages of the page. */
  const sayIt = (text: string): void => (isGone.current ? tell(text) : setSaid(text));

  const addOne = async (file: File): Promise<"added" | "noPicture" | StorageFailure> => {
    const scaled = await scale(file);
    if (scaled === null) return "noPicture";
    // Two of one moment are told apart.
    last.current = Math.max(Date.now(), last.current + 1);
    const added = last.current;
    const photograph: Photograph = { id: photographId(trial.id, added), trial: trial.id, added, ...scaled };
    const done = await kept.add(openId, photograph);
    if (!done.ok) return done.failure;
    setList((now) => [...(now ?? []), photograph]);
    return "added";
  };
  const add = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const files = [...(event.target.files ?? [])];
    // So that the same file can be chosen again.
    event.target.value = "";
    setRemoved(null);
    setSaid("");
    const refused: string[] = [];
    for (const file of files) {
      const done = await addOne(file);
      if (done === "noPicture") refused.push(file.name);
      else if (done !== "added") return sayIt(failureWords(done));
    }
    if (refused.length > 0) sayIt(notAddedSentence(refused));
  };
  const remove = async (photograph: Photograph): Promise<void> => {
    const done = await kept.remove(photograph.id);
    if (!done.ok) return setSaid(failureWords(done.failure));
    setList((now) => (now ?? []).filter((one) => one.id !== photograph.id));
    setRemoved(photograph);
    setSaid(PHOTOGRAPH_WORDS.removed);
    // The button that was pressed is gone.
    status.current?.focus({ preventScroll: true });
  };
  const bringBack = async (photograph: Photograph): Promise<void> => {
    const done = await kept.add(openId, photograph);
    if (!done.ok) return setSaid(failureWords(done.failure));
    setList((now) => [...(now ?? []), photograph].toSorted((a, b) => a.added - b.added));
    setRemoved(null);
    setSaid("");
    status.current?.focus({ preventScroll: true });
  };

  /** The file has the whole work, so the photographs of all its trials. */
  const save = async (): Promise<void> => {
    const all: Photograph[] = [];
    let unreadable = 0;
    for (const one of work.getState().work.trials ?? []) {
      const found = await kept.of(openId, one.id);
      if (!found.ok) return sayIt(failureWords(found.failure));
      all.push(...found.value.photographs);
      unreadable += found.value.unreadable;
    }
    // Another work may be open by now: hers are in no file of that one.
    if (isGone.current) return tell(PHOTOGRAPH_WORDS.notSaved);
    if (unreadable > 0) setSaid(unreadableSentence(unreadable));
    downloadWith(all.map(inFile));
  };

  return (
    <section className="trial-photos" aria-labelledby={id}>
      <h3 id={id}>{PHOTOGRAPH_WORDS.title}</h3>
      <p className="aside">{PHOTOGRAPH_WORDS.note}</p>
      <p ref={status} role="status" tabIndex={-1}>
        {list === null ? PHOTOGRAPH_WORDS.looking : said}
      </p>
      {removed !== null && (
        <div className="works-actions">
          <button type="button" className="button small" onClick={() => void bringBack(removed)}>
            {PHOTOGRAPH_WORDS.undo}
          </button>
        </div>
      )}
      {list !== null && list.length > 0 && (
        <ul className="trial-photos-row">
          {list.map((photograph, at) => (
            <Photo
              key={photograph.id}
              photograph={photograph}
              name={photographName(trial.day, at, list.length)}
              isLarge={large === photograph.id}
              onFace={() => setLarge(large === photograph.id ? null : photograph.id)}
              onRemove={() => void remove(photograph)}
            />
          ))}
        </ul>
      )}
      <div className="works-actions">
        <button type="button" className="button small" onClick={() => picker.current?.click()}>
          {PHOTOGRAPH_WORDS.add}
        </button>
        <input
          ref={picker}
          type="file"
          accept="image/*"
          multiple
          hidden
          aria-label={PHOTOGRAPH_WORDS.choose}
          onChange={(event) => void add(event)}
        />
        {list !== null && list.length > 0 && (
          <button type="button" className="button quiet small" onClick={() => void save()}>
            {PHOTOGRAPH_WORDS.save}
          </button>
        )}
      </div>
    </section>
  );
}

const failureWords = ({ code }: StorageFailure): string =>
  code === "storage/full" ? PHOTOGRAPH_WORDS.full : PHOTOGRAPH_WORDS.unavailable;

interface PhotoProps {
  readonly photograph: Photograph;
  readonly name: string;
  readonly isLarge: boolean;
  readonly onFace: () => void;
  readonly onRemove: () => void;
}

function Photo({ photograph, name, isLarge, onFace, onRemove }: PhotoProps) {
  const { bytes, type } = photograph;
  const address = useMemo(() => URL.createObjectURL(new Blob([bytes], { type })), [bytes, type]);
  useEffect(() => () => URL.revokeObjectURL(address), [address]);
  return (
    <li className="trial-photo" data-large={isLarge ? "" : undefined}>
      <button
        type="button"
        className="trial-photo-face"
        aria-expanded={isLarge}
        aria-label={enlargeLabel(name)}
        onClick={onFace}
      >
        <img src={address} alt={name} />
      </button>
      <button type="button" className="button quiet small" aria-label={removeLabel(name)} onClick={onRemove}>
        {say.remove}
      </button>
    </li>
  );
}
