/** The floors of the core as a picture, drawn from the imports as they are. */
import { posix } from "node:path";
import { folderGraph, type Graph } from "../architecture/importGraph";

const WIDTH = 1180;
const ROW = 74;
const BOX = { width: 150, height: 40, gap: 22 };
const LEFT = 70;

interface Room {
  readonly folder: string;
  readonly floor: number;
  readonly files: number;
  readonly x: number;
  readonly y: number;
}

/** What a folder imports less what it reaches by another one anyway: else nobody could follow a line. */
function direct(graph: Graph, folder: string): readonly string[] {
  const own = graph.get(folder) ?? [];
  const reached = (from: string, seen = new Set<string>()): Set<string> => {
    for (const next of graph.get(from) ?? []) {
      if (seen.has(next)) continue;
      seen.add(next);
      reached(next, seen);
    }
    return seen;
  };
  return own.filter((target) => !own.some((other) => other !== target && reached(other).has(target)));
}

/**
 * @param floors by folder, from the table in DEVELOPERS.md
 * @param graph  from each file of the core to those that it imports
 * @returns an SVG, the ground at the foot
 */
export function floorsPicture(floors: ReadonlyMap<string, number>, graph: Graph): string {
  const top = Math.max(...floors.values());
  const height = (top + 1) * ROW + 50;
  const byFloor = grouped(floors);
  const rooms = new Map<string, Room>();
  for (const [floor, folders] of byFloor) {
    const whole = folders.length * BOX.width + (folders.length - 1) * BOX.gap;
    folders.forEach((folder, index) => {
      const x = LEFT + (WIDTH - LEFT - whole) / 2 + index * (BOX.width + BOX.gap);
      const files = [...graph.keys()].filter((file) => posix.dirname(file) === folder).length;
      rooms.set(folder, { folder, floor, files, x, y: 30 + (top - floor) * ROW });
    });
  }
  const folders = folderGraph(graph);
  const lines = [...rooms.values()].flatMap((room) =>
    direct(folders, room.folder).flatMap((target) => {
      const to = rooms.get(target);
      if (to === undefined) return [];
      const [x1, y1] = [room.x + BOX.width / 2, room.y + BOX.height];
      const [x2, y2] = [to.x + BOX.width / 2, to.y];
      const bend = (y2 - y1) / 2;
      return [`<path d="M${x1} ${y1}C${x1} ${y1 + bend} ${x2} ${y2 - bend} ${x2} ${y2}"/>`];
    }),
  );
  const boxes = [...rooms.values()].map(
    ({ folder, files, x, y }) =>
      `<rect x="${x}" y="${y}" width="${BOX.width}" height="${BOX.height}" rx="3"/>` +
      `<text x="${x + BOX.width / 2}" y="${y + 17}">${roomName(folder)}</text>` +
      `<text class="count" x="${x + BOX.width / 2}" y="${y + 32}">${files} ${files === 1 ? "file" : "files"}</text>`,
  );
  const storeys = [...byFloor.keys()].map((floor) => {
    const y = 30 + (top - floor) * ROW;
    return (
      `<line class="floor" x1="16" y1="${y + BOX.height + 17}" x2="${WIDTH - 16}" y2="${y + BOX.height + 17}"/>` +
      `<text class="number" x="30" y="${y + 26}">${floor}</text>`
    );
  });
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label="The floors of the core: each folder imports only from floors below">`,
    "<style>",
    "text{font:13px 'Source Sans 3',sans-serif;fill:#1F2A37;text-anchor:middle}",
    ".count{font-size:11px;fill:#5B6470}.number{font-size:17px;fill:#2F5D9B}",
    "rect{fill:#fff;stroke:#1F2A37}path{fill:none;stroke:#2F5D9B;stroke-opacity:.45;stroke-width:1.4}",
    ".floor{stroke:#1F2A37;stroke-opacity:.18;stroke-dasharray:7 5}",
    "</style>",
    `<path d="M0 0H${WIDTH}V${height}H0Z" style="fill:#FBF7EF;stroke:none"/>`,
    ...storeys,
    ...lines,
    ...boxes,
    "</svg>",
  ].join("\n")}\n`;
}

function grouped(floors: ReadonlyMap<string, number>): ReadonlyMap<number, readonly string[]> {
  const groups = new Map<number, string[]>();
  for (const [folder, floor] of floors) groups.set(floor, [...(groups.get(floor) ?? []), folder]);
  return groups;
}

const roomName = (folder: string): string => (folder === "src/core" ? "ground" : folder.replace(/^src\/core\//, ""));
