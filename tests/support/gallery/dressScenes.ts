/** Every skirt, lining, facing, neckline and strap of a dress. */
import {
  EDGE_FINISHES,
  NECKLINE_SHAPES,
  SKIRT_KINDS,
  STRAP_KINDS,
  type Dress,
  type Neckline,
  type Skirt,
  type SkirtKind,
} from "../../../src/core/decisions/dress";
import { STYLE_NAMES, type StyleName } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { dressOf } from "../../../src/core/dress/dressOf";
import type { DressPlan } from "../../../src/core/dress/dressPlan";
import type { PartGroup } from "../../../src/core/parts/part";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { fail, ok, type Result } from "../../../src/core/result";
import { FINISH_WORDS, NECKLINE_WORDS, STRAP_KIND_WORDS } from "../../../src/words/dressEdges";
import { liningFailureWords } from "../../../src/words/dressLining";
import { skirtFailureWords, skirtKindWords } from "../../../src/words/dressSkirt";
import { necklineFailureWords } from "../../../src/words/neckline";
import { planFailureWords } from "../../../src/words/plan";
import { capital, styleWords } from "../../../src/words/terms/names";
import { workOf } from "./bodies";
import { changed, piecesOfWork, planned } from "./planned";
import { SHOWN, type Scene, type Shown } from "./scene";

/** From her waist to the floor, not alike all round: hems are levelled by it. */
const UNEVEN = { waistToHip: 205, waistToFloorFront: 1040, waistToFloorSide: 1055, waistToFloorBack: 1050 };

type Choices = Omit<Skirt, "kind">;

/** A line for each shape: one that is added without is refused by the compiler. */
const SKIRTS: Readonly<Record<SkirtKind, Readonly<Record<string, Choices>>>> = {
  gathered: { usual: {}, "whole widths": { tierCut: "wholeWidths", ratio: 2 } },
  tiers: { usual: {}, "four growing": { tiers: [{}, {}, {}, {}], growing: true } },
  circle: { usual: {}, half: { share: 0.5 }, quarter: { share: 0.25 } },
  aLine: {
    usual: {},
    "darts shut into flare": { darts: false },
    "four panels": { panels: 4 },
    "six panels": { panels: 6, flare: 8 },
  },
  straight: { usual: {}, "no vent, short, little ease": { vent: 0, length: 480, hipEase: 20 } },
  peplum: { usual: {}, full: { peplumShare: 1 } },
};

interface Dressed {
  readonly work: Work;
  readonly dress: Dress;
  readonly groups: readonly PartGroup[];
}

function dressed({ work, dress, groups }: Dressed): Result<Shown, string> {
  const made = dressOf({ ...work, dress });
  if (!made.ok) return fail(planFailureWords(made.failure, "cm", work.pattern.chart.sizes.length).text);
  const refused = refusalOf(made.value);
  if (refused !== null) return fail(refused);
  const parts = made.value.parts.filter(({ group }) => groups.includes(group));
  return parts.length === 0 ? fail("Nothing is cut for it.") : ok({ ...SHOWN, parts });
}

function refusalOf({ skirt, lining }: DressPlan): string | null {
  if (skirt?.ok === false) return skirtFailureWords(skirt.failure, "cm").text;
  return lining?.ok === false ? liningFailureWords(lining.failure, "cm") : null;
}

const scene = (key: string, title: string, of: Dressed): Scene => ({
  key,
  title,
  isKept: true,
  make: () => dressed(of),
});

function skirtScenes(): readonly Scene[] {
  const work = workOf("sideDart");
  return SKIRT_KINDS.flatMap((kind) =>
    Object.entries(SKIRTS[kind]).flatMap(([name, choices]) =>
      [
        { floor: "", measures: {} },
        { floor: ", hem levelled", measures: UNEVEN },
      ]
        .filter(({ floor }) => floor === "" || name === "usual")
        .map(({ floor, measures }) =>
          scene(`skirt/${kind}/${name}${floor}`, `${capital(skirtKindWords(kind))} skirt, ${name}${floor}`, {
            work,
            dress: { skirt: { kind, ...choices }, measures },
            groups: ["skirt"],
          }),
        ),
    ),
  );
}

function liningScenes(): readonly Scene[] {
  const bodices = STYLE_NAMES.map((style) =>
    scene(`lining/bodice/${style}`, `Lining of the bodice, ${styleWords(style)}`, {
      work: workOf(style),
      dress: { skirt: { kind: "gathered" }, lining: { bodice: true } },
      groups: ["bodiceLining"],
    }),
  );
  const skirts = (["darts", "pleats"] as const).map((shaping) =>
    scene(`lining/skirt/${shaping}`, `Lining of the skirt, ${shaping}`, {
      work: workOf("sideDart"),
      dress: { skirt: { kind: "gathered" }, lining: { skirt: true, shaping } },
      groups: ["skirtLining"],
    }),
  );
  return [...bodices, ...skirts];
}

const edgeScenes = (): readonly Scene[] =>
  STYLE_NAMES.flatMap((style) =>
    EDGE_FINISHES.map((finish) =>
      scene(`edges/${finish}/${style}`, `${capital(FINISH_WORDS[finish])}, ${styleWords(style)}`, {
        work: workOf(style),
        dress: { edges: { neck: finish, armhole: finish } },
        groups: ["facing", "binding"],
      }),
    ),
  );

const strapScenes = (): readonly Scene[] =>
  STRAP_KINDS.map((kind) =>
    scene(`strap/${kind}`, `Straps, ${STRAP_KIND_WORDS[kind]}`, {
      work: workOf("midriff"),
      dress: { straps: { kind, elastic: kind === "plain" } },
      groups: ["strap"],
    }),
  );

/** What is asked of a shape: on cups there is less room. */
const NECKLINES: Readonly<Record<"blocks" | "cups", Readonly<Record<string, Omit<Neckline, "shape">>>>> = {
  blocks: {
    deeper: { deeper: 40, wider: 20, backDeeper: 30 },
    "much deeper, pinched": { deeper: 70, wider: 30, backDeeper: 60, pinched: true },
    higher: { deeper: -10 },
  },
  cups: {
    deeper: { deeper: 6 },
    "much deeper, pinched": { deeper: 12, backDeeper: 10, pinched: true },
    higher: { deeper: -12 },
  },
};

const necklineScenes = (): readonly Scene[] =>
  STYLE_NAMES.flatMap((style) =>
    NECKLINE_SHAPES.flatMap((shape) =>
      Object.entries(NECKLINES[style === "midriff" ? "cups" : "blocks"]).map(([name, amounts]): Scene => {
        const words = `Neckline ${NECKLINE_WORDS[shape]}, ${name}, ${styleWords(style)}`;
        return {
          key: `neckline/${style}/${shape}/${name}`,
          title: words,
          isKept: true,
          make: () => redrawn(style, { shape, ...amounts }),
        };
      }),
    ),
  );

function redrawn(style: StyleName, neckline: Neckline): Result<Shown, string> {
  const work = workOf(style);
  const plan = planned({ ...work, dress: { neckline } });
  if (!plan.ok) return plan;
  const { left } = plan.value;
  if (left.neckline?.ok === false) return fail(necklineFailureWords(left.neckline.failure, work.unit));
  const shown = changed(piecesOfWork(work), setOf(left.pieces));
  return Object.keys(shown.pieces).length === 0 ? fail("Nothing changes.") : ok({ ...SHOWN, ...shown });
}

export const dressScenes = (): readonly Scene[] => [
  ...necklineScenes(),
  ...skirtScenes(),
  ...liningScenes(),
  ...edgeScenes(),
  ...strapScenes(),
];
