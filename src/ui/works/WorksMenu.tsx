import "./works.css";
import { useEffect, useId, useRef, useState } from "react";
import { PartPlace } from "../parts/PartPlace";
import { idle } from "../parts/fetchAhead";
import { FRONT_DRAWING } from "./frontDrawingPart";
import { createLooks } from "./looks";
import { useWorks } from "./useWorks";
import { WORKS_LIST } from "./worksListPart";
import * as say from "../../words/worksMenu";

const drawer = async () => {
  await FRONT_DRAWING.load();
  const part = FRONT_DRAWING.get();
  return part.kind === "here" ? part.value : null;
};

/** All the works kept in this browser, and what can be done with whole works. */
export function WorksMenu() {
  /** Since when it is open; null: it is not. */
  const [open, setOpen] = useState<number | null>(null);
  const { peek } = useWorks();
  // What was looked up once is known while this work is open, however often the menu is.
  const [looks] = useState(() => createLooks({ peek, drawer, idle }));
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const isOpen = open !== null;

  const close = (): void => {
    setOpen(null);
    button.current?.focus();
  };

  useEffect(() => {
    if (!isOpen) return undefined;
    const onPointerDown = ({ target }: PointerEvent): void => {
      if (target instanceof Node && box.current?.contains(target) === false) setOpen(null);
    };
    // Wherever the focus is: a press on what takes none leaves it nowhere.
    const onKeyDown = ({ key }: KeyboardEvent): void => {
      if (key !== "Escape") return;
      setOpen(null);
      button.current?.focus();
    };
    document.addEventListener("pointerdown", onPointerDown);
    document.addEventListener("keydown", onKeyDown);
    return () => {
      document.removeEventListener("pointerdown", onPointerDown);
      document.removeEventListener("keydown", onKeyDown);
    };
  }, [isOpen]);

  return (
    <div
      ref={box}
      className="works"
      onBlur={({ relatedTarget, currentTarget }) => {
        if (relatedTarget instanceof Node && !currentTarget.contains(relatedTarget)) setOpen(null);
      }}
    >
      <button
        ref={button}
        type="button"
        className="button small"
        aria-expanded={isOpen}
        aria-controls={isOpen ? id : undefined}
        onClick={() => setOpen(isOpen ? null : Date.now())}
      >
        {say.works}
      </button>
      {isOpen && (
        <section id={id} className="works-list" aria-label={say.yourWorks} tabIndex={-1}>
          <PartPlace part={WORKS_LIST} name={say.listOfWorks}>
            {(WorksList) => <WorksList now={open} looks={looks} onDone={close} />}
          </PartPlace>
        </section>
      )}
    </div>
  );
}
