import type { ReactNode } from "react";

interface StripTick {
  readonly label: string;
  /** Where it stands, in whatever the strip measures. */
  readonly at: number;
}

interface StripProps {
  readonly ticks: readonly StripTick[];
  /** The wearer's own place on it. */
  readonly mark: number;
  /** The stretch of it that the pick covers. */
  readonly covers?: readonly [number, number];
  readonly picked?: string;
  /** How far it runs, where that is further than from the first tick to the last. */
  readonly reach?: readonly [number, number];
  /** A slider along the strip, if the mark can be moved. */
  readonly children?: ReactNode;
}

const WIDTH = 360;
const INSET = 16;
/** Room a label takes, to its neighbour's. */
const roomFor = (label: string): number => 9 + 7 * label.length;

/** Where a place of the strip lies across it, 0 to 1, everything in view. */
function stripScale(places: readonly number[]): (at: number) => number {
  const least = Math.min(...places);
  const most = Math.max(...places);
  const span = most - least;
  return (at) => (span === 0 ? 0.5 : (at - least) / span);
}

/** The labels that do not run into each other, from the left; the picked one is always among them. */
function clearLabels(
  ticks: readonly { readonly label: string; readonly x: number }[],
  picked?: string,
): ReadonlySet<string> {
  const chosen = ticks.filter((tick) => tick.label === picked);
  for (const tick of ticks) {
    if (chosen.every((other) => Math.abs(other.x - tick.x) >= roomFor(tick.label))) chosen.push(tick);
  }
  return new Set(chosen.map((tick) => tick.label));
}

/** Printed sizes as ticks along a tape, and the wearer's mark among them. */
export function Strip({ ticks, mark, covers, picked, reach = [mark, mark], children }: StripProps) {
  const share = stripScale([...ticks.map((tick) => tick.at), mark, ...reach]);
  const x = (at: number): number => INSET + share(at) * (WIDTH - 2 * INSET);
  const kept = (at: number): number => Math.min(WIDTH - 4, Math.max(4, x(at)));
  const first = x(ticks[0]?.at ?? mark);
  const last = x(ticks.at(-1)?.at ?? mark);
  const labelled = clearLabels(
    ticks.map(({ label, at }) => ({ label, x: x(at) })),
    picked,
  );
  return (
    <div className="strip">
      <svg viewBox={`0 0 ${WIDTH} 46`} aria-hidden="true" focusable="false">
        {covers !== undefined && (
          <rect
            className="strip-covers"
            x={kept(covers[0])}
            y="13"
            width={Math.max(2, kept(covers[1]) - kept(covers[0]))}
            height="12"
          />
        )}
        <path className="strip-edge beyond" d={`M4 13 L${WIDTH - 4} 13 M4 25 L${WIDTH - 4} 25`} />
        <path className="strip-edge" d={`M${first} 13 L${last} 13 M${first} 25 L${last} 25`} />
        {ticks.map((tick) => {
          const isPicked = tick.label === picked;
          const place = x(tick.at);
          return (
            <g key={tick.label} data-picked={isPicked ? "" : undefined}>
              <path className="strip-tick" d={`M${place} 13 L${place} 25`} />
              {labelled.has(tick.label) && (
                <text className="strip-label" x={place} y="41">
                  {tick.label}
                </text>
              )}
            </g>
          );
        })}
        <path
          className="strip-mark"
          d={`M${x(mark)} 29 L${x(mark)} 12 M${x(mark) - 5} 2 L${x(mark) + 5} 2 L${x(mark)} 11 Z`}
        />
      </svg>
      {children}
    </div>
  );
}
