/** Where the focus goes when what has it goes from the page. */
import { act, fireEvent, render, screen } from "@testing-library/react";
import { useEffect, useRef, useState } from "react";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { useHeldFocus } from "../../../src/ui/table/useHeldFocus";

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
});
afterEach(() => {
  vi.useRealTimers();
});

const LINES = ["one", "two", "three"];

/** Lines that are taken out by their own button, all at once, or with a field in the place of the button. */
function Lines({ seesToItself = false }: { readonly seesToItself?: boolean }) {
  useHeldFocus();
  const [lines, setLines] = useState(LINES);
  const [isAfter, setAfter] = useState(true);
  const last = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (seesToItself && lines.length < LINES.length) last.current?.focus();
  }, [lines, seesToItself]);
  return (
    <main id="step" tabIndex={-1}>
      <button type="button">before</button>
      {lines.length > 0 && (
        <ul>
          {lines.map((line) => (
            <li key={line}>
              <button type="button" onClick={() => setLines(lines.filter((other) => other !== line))}>
                take {line}
              </button>
            </li>
          ))}
          <li>
            <button type="button" onClick={() => setLines([])}>
              take all
            </button>
          </li>
        </ul>
      )}
      <input aria-label="field" />
      {isAfter && (
        <button ref={last} type="button" onClick={() => setAfter(seesToItself)}>
          after
        </button>
      )}
    </main>
  );
}

function Note() {
  const [isThere, setThere] = useState(true);
  return (
    <div className="messages">
      {isThere && (
        <button type="button" onClick={() => setThere(false)}>
          put away
        </button>
      )}
    </div>
  );
}

const rest = () => act(() => vi.advanceTimersByTimeAsync(200));
const named = (name: string) => screen.getByRole("button", { name });

async function take(name: string, by: "keys" | "pointer" = "keys"): Promise<void> {
  act(() => named(name).focus());
  if (by === "keys") fireEvent.keyDown(named(name), { key: "Enter" });
  else fireEvent.pointerDown(named(name));
  fireEvent.click(named(name));
  await rest();
}

it("goes on to what stood after it", async () => {
  render(<Lines />);
  await take("take one");
  expect(document.activeElement).toBe(named("take two"));
  await take("take two");
  expect(document.activeElement).toBe(named("take three"));
});

it("goes on from what went together", async () => {
  render(<Lines />);
  await take("take all");
  expect(document.activeElement).toBe(screen.getByLabelText("field"));
});

it("goes back where nothing stands after it, and leaves its part of the page for no other", async () => {
  render(
    <div className="app">
      <Lines />
      <Note />
    </div>,
  );
  await take("put away");
  expect(document.activeElement).toBe(document.getElementById("step"));
  await take("after");
  expect(document.activeElement).toBe(screen.getByLabelText("field"));
});

it("moves nothing by a pointer: the next key would press what nobody chose", async () => {
  render(<Lines />);
  await take("take one", "pointer");
  expect(document.activeElement).toBe(document.body);
});

it("lets a key that is held too long press only once", async () => {
  render(<Lines />);
  await take("take one");
  expect(fireEvent.keyDown(named("take two"), { key: "Enter", repeat: true })).toBe(false);
  expect(fireEvent.keyDown(named("take two"), { key: "Enter" })).toBe(true);
});

it("leaves it to what sees to it itself", async () => {
  render(<Lines seesToItself />);
  await take("take one");
  expect(document.activeElement).toBe(named("after"));
});

it("takes none that was left before", async () => {
  render(<Lines />);
  const second = named("take two");
  act(() => named("take one").focus());
  act(() => named("take one").blur());
  await rest();
  fireEvent.click(named("take one"));
  await rest();
  expect(document.activeElement).toBe(document.body);
  expect(second.isConnected).toBe(true);
});
