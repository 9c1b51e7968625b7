/**
 * Runs in the page itself, before its own script, in every engine alike: finds what is looked for as those find it who go by
 * roles and names, and keeps what goes wrong.
 */
import { queryAllByLabelText, queryAllByRole, queryAllByText } from "@testing-library/dom";

/** A name, or a pattern as it was sent. */
type Sent = string | { readonly source: string; readonly flags: string };

interface SentSought {
  readonly within?: SentSought;
  readonly role?: string;
  readonly label?: Sent;
  readonly text?: Sent;
  readonly css?: string;
  readonly name?: Sent;
  readonly at?: number;
}

const FAULTS = "faults-of-the-page";

const kept = (): string[] => {
  const text: unknown = JSON.parse(sessionStorage.getItem(FAULTS) ?? "[]");
  return Array.isArray(text) ? text.map(String) : [];
};

const keep = (fault: string): void => sessionStorage.setItem(FAULTS, JSON.stringify([...kept(), fault]));

addEventListener(
  "error",
  ({ message, target }) => {
    // A file that does not come has no message.
    const from = target instanceof Element ? target.outerHTML.slice(0, 200) : "";
    keep(`error: ${message ?? "not loaded"} ${from}`);
  },
  true,
);
addEventListener("unhandledrejection", ({ reason }) => keep(`rejection: ${String(reason)}`));
addEventListener("securitypolicyviolation", ({ violatedDirective, blockedURI, sourceFile }) =>
  keep(`policy: ${violatedDirective} ${blockedURI} ${sourceFile}`),
);
for (const level of ["error", "warn"] as const) {
  const told = console[level].bind(console);
  console[level] = (...given: unknown[]) => {
    keep(`console.${level}: ${given.map(String).join(" ")}`);
    told(...given);
  };
}

const pattern = (sent: Sent): string | RegExp =>
  typeof sent === "string" ? sent : new RegExp(sent.source, sent.flags);

function isSeen(element: Element): boolean {
  const { width, height } = element.getBoundingClientRect();
  return width > 0 && height > 0 && element.checkVisibility({ visibilityProperty: true });
}

function allOf({ within, role, name, label, text, css, at }: SentSought): Element[] {
  const inside = within === undefined ? document.body : allOf(within)[0];
  if (!(inside instanceof HTMLElement)) return [];
  const found =
    role !== undefined
      ? queryAllByRole(inside, role, { hidden: true, ...(name === undefined ? {} : { name: pattern(name) }) })
      : label !== undefined
        ? queryAllByLabelText(inside, pattern(label))
        : text !== undefined
          ? queryAllByText(inside, pattern(text))
          : [...inside.querySelectorAll(css ?? "*")];
  const seen = found.filter(isSeen);
  return at === undefined ? seen : seen.slice(at, at + 1);
}

const isField = (element: Element): element is HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement =>
  element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement || element instanceof HTMLSelectElement;

function lookAt(element: Element) {
  const { left, top, width, height } = element.getBoundingClientRect();
  return {
    text: element instanceof HTMLElement ? element.innerText : (element.textContent ?? ""),
    label: element.getAttribute("aria-label") ?? "",
    value:
      element instanceof HTMLSelectElement
        ? (element.selectedOptions[0]?.label ?? "")
        : isField(element)
          ? element.value
          : (element.getAttribute("aria-valuetext") ?? ""),
    isChecked: element instanceof HTMLInputElement && element.checked,
    isDisabled: element.matches(":disabled, [aria-disabled=true]"),
    place: { x: left + width / 2, y: top + height / 2 },
  };
}

/** A choice is pressed on its mark, which covers the small field. */
const markOf = (found: Element): Element =>
  (found instanceof HTMLInputElement && /^(?:radio|checkbox)$/.test(found.type) ? found.labels?.[0] : null) ?? found;

/** What is about to be pressed, and what became of the press. */
let awaited: SentSought | null = null;
let landed = "";

addEventListener(
  "pointerdown",
  ({ target, clientX, clientY }) => {
    const [found] = awaited === null ? [] : allOf(awaited);
    if (found === undefined || !(target instanceof Element)) return;
    const mark = markOf(found);
    // Words that take no press themselves are pressed on what they stand in.
    const isOn = mark.contains(target) || (target.contains(mark) && target.matches("button, label, summary, a"));
    const { x, y } = lookAt(mark).place;
    const off = Math.hypot(x - clientX, y - clientY).toFixed(0);
    landed = isOn ? "there" : `${off} px off, on ${target.outerHTML.slice(0, 80)}`;
  },
  true,
);

const hand = {
  count: (sought: SentSought) => allOf(sought).length,
  look: (sought: SentSought) => {
    const [first] = allOf(sought);
    return first === undefined ? null : lookAt(first);
  },
  /** Where it is once it lies in sight, and what would take a press there if it is not the element itself. */
  bring: (sought: SentSought) => {
    const [found] = allOf(sought);
    if (found === undefined) return null;
    const first = markOf(found);
    const covering = (): string | null => {
      const { x, y } = lookAt(first).place;
      const top = document.elementFromPoint(x, y);
      const isOwn = top !== null && (first.contains(top) || top.contains(first));
      return isOwn ? null : (top?.outerHTML.slice(0, 120) ?? "nothing");
    };
    // What lies in sight stays: WebKit moves it by a little at every call.
    if (covering() !== null) first.scrollIntoView({ block: "center", inline: "nearest", behavior: "instant" });
    [awaited, landed] = [sought, ""];
    return { place: lookAt(first).place, covered: covering() };
  },
  /** Whether it is on the page, seen or not. */
  holds: (selector: string) => document.querySelector(selector) !== null,
  /** Where the press went that was meant for what was brought last; nothing: it has not come. */
  landed: () => landed,
  focus: (sought: SentSought) => {
    const [first] = allOf(sought);
    if (first instanceof HTMLElement || first instanceof SVGElement) first.focus();
    return first !== undefined && document.activeElement === first;
  },
  hasFocus: (sought: SentSought) => document.activeElement !== null && allOf(sought)[0] === document.activeElement,
  /** What holds the focus, by the name that is said of it. */
  focused: () => {
    const now = document.activeElement;
    if (now === null) return "";
    return (isField(now) ? now.labels?.[0]?.textContent : null) ?? now.getAttribute("aria-label") ?? now.id;
  },
  choose: (sought: SentSought, label: string) => {
    const [list] = allOf(sought);
    if (!(list instanceof HTMLSelectElement)) return false;
    const index = [...list.options].findIndex((option) => option.label.startsWith(label));
    if (index < 0) return false;
    list.selectedIndex = index;
    list.dispatchEvent(new Event("change", { bubbles: true }));
    return true;
  },
  /** What reaches past the right of the screen, where the page can be moved sideways. */
  tooWide: () => {
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth <= clientWidth) return [];
    const past = [...document.querySelectorAll("body *")].filter(
      (one) => one.closest("svg") === null && one.getBoundingClientRect().right > clientWidth + 0.5,
    );
    return [`${scrollWidth} of ${clientWidth} px`, ...past.map((one) => `${one.tagName} ${one.className}`).slice(0, 8)];
  },
  size: () => [innerWidth, innerHeight],
  faults: kept,
  forgive: () => sessionStorage.removeItem(FAULTS),
};

export type Hand = typeof hand;

declare global {
  interface Window {
    hand?: Hand;
  }
}

window.hand = hand;
