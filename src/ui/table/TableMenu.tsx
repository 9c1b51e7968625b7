import { useEffect, useLayoutEffect, useRef, useState } from "react";
import { dartOfAlteration, isMadeOn } from "../../core/decisions/alteration";
import type { LengthUnit } from "../../core/decisions/work";
import { isSameDart, type PieceName } from "../../core/pattern/piece";
import type { PlannedAlteration } from "../../core/plan/plan";
import { ledgerGroup, plannedTitle } from "../../words/ledger";
import {
  halfNote,
  MENU_WORDS,
  onlyWords,
  pieceGroupLabel,
  printedWords,
  alterationsOnPiece,
  openAlterationWords,
} from "../../words/table";
import { dartHandleValue } from "../../words/terms/darts";
import { capital, dartRefWords, namedPieceWords } from "../../words/terms/names";
import { usePageState } from "../session/pageState";
import { useSettledPlan } from "../session/usePlan";
import { useViewState } from "../session/viewState";
import { dartOf, halfOf } from "./sheetTarget";
import type { Asked } from "./useSheetHand";

export interface TableMenuProps {
  readonly asked: Asked;
  readonly pieces: readonly PieceName[];
  readonly unit: LengthUnit;
  readonly onPiece: (piece: PieceName) => void;
  readonly onAll: () => void;
  readonly onClose: () => void;
}

interface Item {
  readonly words: string;
  /** Whether the focus is led on by what it does. */
  readonly leads?: true;
  readonly act: () => void;
}

function goToDarts(): void {
  window.location.hash = "#darts";
}

/** What lies there, and what can be done with it. */
function useItems({
  asked: { target },
  pieces,
  unit,
  onPiece,
  onAll,
}: TableMenuProps): readonly [string, readonly Item[]] {
  const settled = useSettledPlan();
  const shown = useViewState((view) => view.half);
  const showHalf = useViewState((view) => view.showHalf);
  const selectDart = useViewState((view) => view.selectDart);
  const lightAlteration = useViewState((view) => view.lightAlteration);
  const openLedger = usePageState((page) => page.openLedger);
  const plan = settled.ok ? settled.value : null;
  const half = plan === null ? shown : halfOf(plan, "half" in target ? target.half : undefined, shown);
  const own = plan?.[half] ?? null;
  const others = own?.nest.otherNames;
  const note = halfNote(plan === null || plan.left === plan.right ? null : half);

  const slip = (planned: PlannedAlteration): Item => ({
    words: openAlterationWords(plannedTitle(planned, unit)),
    leads: true,
    act: () => {
      lightAlteration(ledgerGroup(planned));
      openLedger(true);
      // The ledger may have to open first.
      requestAnimationFrame(() => document.querySelector<HTMLElement>(".slip[data-lit] .slip-face")?.focus());
    },
  });
  const slips = (all: readonly PlannedAlteration[]): readonly Item[] =>
    [...new Map(all.map((one) => [ledgerGroup(one), one])).values()].map(slip);
  const all: Item = { words: MENU_WORDS.all, act: onAll };
  const only = (name: string): readonly Item[] => [
    ...pieces
      .filter((piece) => piece === name)
      .map((piece) => ({ words: onlyWords(piece, others), act: () => onPiece(piece) })),
    all,
  ];
  const named = (name: string): string => {
    const piece = pieces.find((one) => one === name);
    return piece === undefined ? "" : capital(namedPieceWords(piece, others));
  };

  switch (target.kind) {
    case "dart": {
      const dart = own === null ? undefined : dartOf(own, target.piece, target.dart);
      if (own === null || dart === undefined) return [named(target.piece), only(target.piece)];
      const made = own.alterations.filter(({ what }) => {
        const of = what.kind === "alteration" ? dartOfAlteration(what.alteration) : null;
        return of !== null && isSameDart(of, dart.ref) && what.kind === "alteration" && isMadeOn(what.alteration, half);
      });
      const choose: Item = {
        words: MENU_WORDS.choose,
        act: () => {
          selectDart(dart.ref);
          showHalf(half);
          goToDarts();
        },
      };
      return [
        `${capital(dartRefWords(dart.ref))}${note}. ${dartHandleValue(dart, "apex", unit)}`,
        [choose, ...slips(made), ...only(target.piece)],
      ];
    }
    case "slip": {
      const made = own?.alterations.filter((one) => one.id === target.id || ledgerGroup(one) === target.id) ?? [];
      const [first] = made;
      return [first === undefined ? MENU_WORDS.table : plannedTitle(first, unit), [...slips(made), all]];
    }
    case "printed":
      return [printedWords(named(target.piece), target.size), only(target.piece)];
    case "piece": {
      const piece = pieces.find((one) => one === target.piece);
      if (own === null || piece === undefined) return [named(target.piece), only(target.piece)];
      return [`${pieceGroupLabel(own, piece)}${note}`, [...only(piece), ...slips(alterationsOnPiece(own, piece))]];
    }
    case "table":
      return [MENU_WORDS.table, [...pieces.flatMap((piece) => only(piece).slice(0, 1)), all]];
  }
}

const ALONG: Readonly<Record<string, (at: number, count: number) => number>> = {
  ArrowDown: (at, count) => (at + 1) % count,
  ArrowUp: (at, count) => (at + count - 1) % count,
  Home: () => 0,
  End: (_, count) => count - 1,
};
/** Pixels between a finger and what it asked for, and to the edge of the screen. */
const BESIDE = 14;

/** A small menu of our own, for a finger, the other button and the keys alike. */
export function TableMenu(props: TableMenuProps) {
  const { asked, onClose } = props;
  const menu = useRef<HTMLDivElement>(null);
  const [title, items] = useItems(props);
  const [place, setPlace] = useState<{ readonly left: number; readonly top: number } | null>(null);

  useLayoutEffect(() => {
    const element = menu.current;
    if (element === null) return;
    if ("showPopover" in element) element.showPopover();
    const { offsetWidth: width, offsetHeight: height } = element;
    const below = asked.y + BESIDE;
    const room = window.innerHeight - height - BESIDE;
    // Under the finger if there is room, else over it.
    const top = below <= room ? below : asked.y - BESIDE - height;
    setPlace({
      left: Math.max(BESIDE, Math.min(asked.x + BESIDE, window.innerWidth - width - BESIDE)),
      top: Math.max(BESIDE, Math.min(top, room)),
    });
    element.querySelector<HTMLElement>("[role=menuitem]")?.focus({ preventScroll: true });
  }, [asked]);

  useEffect(() => {
    const outside = (event: Event): void => {
      if (!(event.target instanceof Node) || menu.current?.contains(event.target) !== true) onClose();
    };
    window.addEventListener("pointerdown", outside, true);
    window.addEventListener("resize", onClose);
    return () => {
      window.removeEventListener("pointerdown", outside, true);
      window.removeEventListener("resize", onClose);
    };
  }, [onClose]);

  const back = (): void => {
    if (asked.from instanceof SVGElement) asked.from.focus({ preventScroll: true });
    onClose();
  };
  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.key === "Escape" || event.key === "Tab") {
      event.preventDefault();
      event.stopPropagation();
      return back();
    }
    const all = [...(menu.current?.querySelectorAll<HTMLElement>("[role=menuitem]") ?? [])];
    const next = ALONG[event.key]?.(
      all.findIndex((one) => one === document.activeElement),
      all.length,
    );
    if (next === undefined) return;
    event.preventDefault();
    all[next]?.focus();
  };
  return (
    <div
      ref={menu}
      className="table-menu"
      popover="manual"
      role="menu"
      tabIndex={-1}
      aria-labelledby="table-menu-title"
      style={place ?? undefined}
      onKeyDown={onKeyDown}
      onContextMenu={(event) => event.preventDefault()}
    >
      <p id="table-menu-title" className="table-menu-title">
        {title}
      </p>
      {items.map(({ words, leads, act }) => (
        <button
          key={words}
          type="button"
          role="menuitem"
          tabIndex={-1}
          onClick={() => {
            if (leads === true) onClose();
            else back();
            act();
          }}
        >
          {words}
        </button>
      ))}
    </div>
  );
}
