/** Workers that do nothing by themselves: a test says what they answer, and sees what they were asked. */
import { lineEdge } from "../../../src/core/geometry/edgeCurve";
import { sheetPoint } from "../../../src/core/geometry/point";
import { invariant } from "../../../src/core/result";
import { radians } from "../../../src/core/units";
import type { PaperMade, PaperPreview } from "../../../src/paper/request";
import type { OpenPaperWorker, PaperAnswer, PaperAsk } from "../../../src/ui/paper/paperMessages";

export interface FakeWorker {
  readonly asked: PaperAsk[];
  closed: boolean;
  readonly say: (answer: PaperAnswer) => void;
}

export interface FakeWorkers {
  readonly all: readonly FakeWorker[];
  readonly open: OpenPaperWorker;
  /** The worker that was asked last for something of that kind. */
  readonly lastAsked: (kind: PaperAsk["kind"]) => FakeWorker;
}

export function fakeWorkers(): FakeWorkers {
  const all: FakeWorker[] = [];
  const open: OpenPaperWorker = (hear) => {
    const worker: FakeWorker = { asked: [], closed: false, say: hear };
    all.push(worker);
    return {
      ask: (ask) => void worker.asked.push(ask),
      close: () => {
        worker.closed = true;
      },
    };
  };
  const lastAsked = (kind: PaperAsk["kind"]) =>
    invariant(
      all.findLast(({ asked }) => asked.at(-1)?.kind === kind),
      `a worker asked for ${kind}`,
    );
  return { all, open, lastAsked };
}

const corner = sheetPoint(0, 0);

export const previewOf = (pages: number): PaperPreview => ({
  before: 1,
  pages,
  notes: [],
  map: {
    name: "Map",
    width: 720,
    height: 1060,
    groups: [
      {
        id: "front",
        label: "Front",
        dx: 5,
        dy: 6,
        clip: { x: 0, y: 0, width: 700, height: 1000 },
        ink: [
          {
            kind: "line",
            role: "cutting",
            closed: true,
            edges: [lineEdge(corner, sheetPoint(300, 0)), lineEdge(sheetPoint(300, 0), sheetPoint(0, 400))],
          },
          {
            kind: "text",
            role: "title",
            at: sheetPoint(90, 120),
            anchor: "middle",
            text: "A1",
            size: 30,
            turn: radians(0),
          },
        ],
      },
    ],
  },
});

export const madeFile = (fileName: string): PaperMade => ({
  bytes: new Uint8Array([37, 80, 68, 70]),
  fileName,
  mediaType: "application/pdf",
  pages: 15,
});
