import { DEMOS } from "./demosPart";
import { useEffect, useId, useRef, useState, type ChangeEvent } from "react";
import { PartPlace } from "../parts/PartPlace";
import { useWorks } from "./useWorks";

/** All the works kept in this browser, and what can be done with the one that is open. */
export function WorksMenu() {
  const [open, setOpen] = useState(false);
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);

  const close = (): void => {
    setOpen(false);
    button.current?.focus();
  };

  useEffect(() => {
    const menu = box.current;
    if (!open || menu === null) return undefined;
    const isInside = (target: EventTarget | null): boolean => target instanceof Node && menu.contains(target);
    const onPointerDown = (event: PointerEvent): void => {
      if (!isInside(event.target)) setOpen(false);
    };
    const onFocusOut = (event: FocusEvent): void => {
      if (event.relatedTarget !== null && !isInside(event.relatedTarget)) setOpen(false);
    };
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.key !== "Escape") return;
      setOpen(false);
      button.current?.focus();
    };
    document.addEventListener("pointerdown", onPointerDown);
    menu.addEventListener("focusout", onFocusOut);
    menu.addEventListener("keydown", onKeyDown);
    return () => {
      document.removeEventListener("pointerdown", onPointerDown);
      menu.removeEventListener("focusout", onFocusOut);
      menu.removeEventListener("keydown", onKeyDown);
    };
  }, [open]);

  return (
    <div ref={box} className="works">
      <button
        ref={button}
        type="button"
        className="button small"
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        onClick={() => setOpen(!open)}
      >
        Works
      </button>
      {open && (
        <section id={id} className="works-list" aria-label="Your works">
          <WorksList onDone={close} />
        </section>
      )}
    </div>
  );
}

function WorksList({ onDone }: { readonly onDone: () => void }) {
  const works = useWorks();
  const file = useRef<HTMLInputElement>(null);

  const then = (action: () => void) => (): void => {
    action();
    onDone();
  };

  const openFile = (event: ChangeEvent<HTMLInputElement>): void => {
    const chosen = event.target.files?.[0];
    // So that the same file can be chosen again.
    event.target.value = "";
    if (chosen !== undefined) void works.openFile(chosen);
    onDone();
  };

  return (
    <>
      <h2>Works kept in this browser</h2>
      <ul className="works-kept">
        {works.entries.map((entry) => (
          <li key={entry.id}>
            <button
              type="button"
              className="open-work"
              aria-current={entry.id === works.openId ? "true" : undefined}
              onClick={then(() => works.open(entry.id))}
            >
              {entry.name}
              {entry.id === works.openId && <span className="aside"> (open)</span>}
            </button>
            <button
              type="button"
              className="button quiet small"
              aria-label={`Copy ${entry.name}`}
              onClick={() => works.copy(entry.id)}
            >
              Copy
            </button>
            <button
              type="button"
              className="button quiet small"
              aria-label={`Delete ${entry.name}`}
              onClick={() => works.bin(entry.id)}
            >
              Delete
            </button>
          </li>
        ))}
      </ul>
      <div className="works-actions">
        <button type="button" className="button small" onClick={then(works.startBlank)}>
          New blank work
        </button>
        <PartPlace part={DEMOS} name="The demonstrations">
          {(demos) =>
            demos.map((demo) => (
              <button
                key={demo.name}
                type="button"
                className="button small"
                onClick={then(() => works.startDemo(demo))}
              >
                Demo: {demo.name}
              </button>
            ))
          }
        </PartPlace>
      </div>
      <div className="works-actions">
        <button type="button" className="button small" onClick={then(works.download)}>
          Download this work
        </button>
        <button type="button" className="button small" onClick={() => file.current?.click()}>
          Open a file
        </button>
        <input
          ref={file}
          type="file"
          accept=".json,application/json"
          className="visually-hidden"
          tabIndex={-1}
          aria-label="Work file"
          onChange={openFile}
        />
      </div>
      <p className="aside">
        A downloaded work is a file on your own disk: a safe copy, or a way to another device. It holds your measures,
        so share it as you would share them.
      </p>
    </>
  );
}
