/** What is told of an answer, worked out anew from the table of signs and the record: of any record the same must hold. */
import { describe, expect, it } from "vitest";
import type { StyleName } from "../../../src/core/decisions/pattern";
import type { Observation, Trial } from "../../../src/core/decisions/trial";
import { RULE_NAMES, ruleOf } from "../../../src/core/trial/rules";
import type { Cause, SignAt } from "../../../src/core/trial/trialReading";
import { first, line, readingOf, toile } from "../../support/trials";

const RECORDS: readonly (readonly [string, StyleName, readonly Observation[], Partial<Trial>])[] = [
  [
    "a sway back",
    "sideDart",
    [line("backAboveWaist", "foldAcross", { amount: 6 }), line("backWaist", "drops", { amount: 12 })],
    { checks: { hemLevel: true, waistOnWaist: true, sideSeamsUpright: true } },
  ],
  [
    "a waist that drops",
    "sideDart",
    [line("backWaist", "drops"), line("frontWaist", "drops")],
    { checks: { hemLevel: true } },
  ],
  ["one that rises behind", "sideDart", [line("backWaist", "ridesUp"), line("backHem", "ridesUp")], {}],
  [
    "halves that differ",
    "sideDart",
    [
      line("neckPoint", "dragLines", { amount: 8, way: "pinched", half: "right" }),
      line("frontArmhole", "gapes", { amount: 5, half: "left" }),
      line("chest", "foldAlong"),
    ],
    {},
  ],
  [
    "a bust and what is odd beside it",
    "sideDart",
    [line("bust", "tight", { amount: 9 }), line("bust", "dragLines"), line("frontHip", "pointed")],
    { checks: { waistOnWaist: true } },
  ],
  [
    "marks",
    "sideDart",
    [
      line("bust", "bustPoint", { mark: { out: 3, down: 12 } }),
      line("dartEnd", "dartEnds", { mark: { out: 6, down: 9 } }),
      line("dartEnd", "pointed"),
    ],
    {},
  ],
  [
    "straps",
    "midriff",
    [line("strap", "slips"), line("strap", "gapes"), line("underBust", "drops")],
    { checks: { shouldersStay: true } },
  ],
  [
    "by hand",
    "sideDart",
    [line("frontArmhole", "cutsIn"), line("backArmhole", "gapes"), line("blades", "dragLines")],
    {},
  ],
  [
    "seams that lean",
    "sideDart",
    [line("sideSeam", "leansForward"), line("frontHip", "tight"), line("frontHem", "ridesUp")],
    { checks: { sideSeamsUpright: true, hemLevel: false } },
  ],
];

const keyOf = ({ rule, half }: Cause): string => (half === undefined ? rule : `${rule}-${half}`);
const order = ({ rule, half }: Cause): number => RULE_NAMES.indexOf(rule) + (half === "right" ? 0.5 : 0);
const isIn = (list: readonly SignAt[], one: SignAt): boolean =>
  list.some(({ place, sign }) => place === one.place && sign === one.sign);

const TICKS = {
  hemLevel: ["frontHem drops", "frontHem ridesUp", "backHem drops", "backHem ridesUp"],
  waistOnWaist: ["frontWaist drops", "frontWaist ridesUp", "backWaist drops", "backWaist ridesUp"],
  sideSeamsUpright: ["sideSeam leansForward", "sideSeam leansBack"],
  shouldersStay: ["strap slips"],
} as const;

describe.each(RECORDS)("%s", (_, style, lines, more) => {
  const { answers, read, unexplained } = readingOf(toile(style, lines, more));
  const causes = answers.flatMap((answer) => answer.causes);

  it("has answers, each another one, its causes in the trade's order", () => {
    expect(answers.length).toBeGreaterThan(0);
    expect(answers.length).toBeLessThanOrEqual(4);
    expect(new Set(answers.map(({ key }) => key)).size).toBe(answers.length);
    const changes = answers.map(({ alterations, bustAlteration, halfCups }) =>
      JSON.stringify([alterations, bustAlteration, halfCups]),
    );
    expect(new Set(changes).size).toBe(answers.length);
    for (const answer of answers) {
      expect(answer.key).toBe(answer.causes.map(keyOf).join("+"));
      expect(answer.causes).toEqual(answer.causes.toSorted((a, b) => order(a) - order(b)));
    }
  });

  it("explains by each cause what the table says that it shows there, from 0.12 on", () => {
    for (const { rule, half, explains } of causes) {
      const { shows } = ruleOf(rule);
      const wanted = lines.filter(
        (one) =>
          (half === undefined || one.half === undefined || one.half === half) &&
          shows.some(
            ({ place, sign, likely, marked }) =>
              place === one.place &&
              sign === one.sign &&
              likely >= 0.12 &&
              (marked === undefined ||
                one.mark === undefined ||
                (marked === "down" ? one.mark.down >= 4 : one.mark.down <= -4)),
          ),
      );
      expect(explains).toEqual(wanted.map(({ id }) => id));
    }
  });

  it("tells of every line whether it is explained", () => {
    expect(read).toEqual(lines.map(({ id }) => id));
    for (const { causes: own, explains, leaves } of answers) {
      const all = new Set(own.flatMap((cause) => cause.explains));
      expect(explains).toEqual(read.filter((id) => all.has(id)));
      expect(leaves).toEqual(read.filter((id) => !all.has(id)));
    }
    expect(unexplained).toEqual(read.filter((id) => !answers.some(({ explains }) => explains.includes(id))));
  });

  it("expects the three likeliest signs not seen, from 0.4 on", () => {
    for (const { rule, half, expects } of causes) {
      const wanted = ruleOf(rule)
        .shows.filter(
          ({ place, sign, likely }) => likely >= 0.4 && !lines.some((one) => one.place === place && one.sign === sign),
        )
        .toSorted((a, b) => b.likely - a.likely)
        .slice(0, 3)
        .map(({ place, sign }) => ({ place, sign, ...(half === undefined ? {} : { half }) }));
      expect(expects).toEqual(wanted);
    }
  });

  it("has against it what was ticked as right and should show from 0.4 on", () => {
    for (const { rule, against } of causes) {
      const shown = ruleOf(rule)
        .shows.filter(({ likely }) => likely >= 0.4)
        .map(({ place, sign }) => `${place} ${sign}`);
      const checks = (["hemLevel", "waistOnWaist", "sideSeamsUpright", "shouldersStay"] as const).filter(
        (check) => more.checks?.[check] === true && TICKS[check].some((sign) => shown.includes(sign)),
      );
      expect(against).toEqual(checks);
    }
  });

  it("is told apart from the next by what the one should show and the other not", () => {
    for (const [at, answer] of answers.entries()) {
      const other = answers[at + 1] ?? answers[at - 1];
      const [own, others] = [answer, other].map((one) => one?.causes.flatMap(({ expects }) => expects) ?? []);
      const wanted =
        other === undefined || own === undefined || others === undefined
          ? []
          : [
              ...own.filter((one) => !isIn(others, one)).map((look) => ({ look, speaksFor: true })),
              ...others.filter((one) => !isIn(own, one)).map((look) => ({ look, speaksFor: false })),
            ].slice(0, 3);
      expect(answer.tellsApart).toEqual(wanted);
    }
  });

  it("has whole amounts, measured where a line of its own says so; what is mended by hand has none", () => {
    for (const { rule, amount, amountBy, explains } of causes) {
      expect(Number.isInteger(amount)).toBe(true);
      const { isByHand, usual } = ruleOf(rule);
      const isMeasured = explains.some((id) => {
        const one = lines.find((some) => some.id === id);
        return one?.amount !== undefined || one?.mark !== undefined;
      });
      expect(isByHand === true && amount !== 0).toBe(false);
      expect(amountBy === "measured" && !isMeasured).toBe(false);
      expect(amountBy === "usual" && isByHand !== true && amount < 0.5 * usual).toBe(false);
    }
  });
});

describe("an answer whole", () => {
  it("of a neck that gapes on the left", () => {
    const gape = line("frontNeck", "gapes", { amount: 4, half: "left" });
    expect(first(toile("sideDart", [gape]))).toMatchObject({
      key: "neckGapes-left",
      causes: [
        {
          rule: "neckGapes",
          half: "left",
          amount: 8,
          amountBy: "measured",
          explains: [gape.id],
          expects: [],
          against: [],
        },
      ],
      explains: [gape.id],
      leaves: [],
      alterations: [{ kind: "fit", id: "fit-necklineGape-left", fit: "necklineGape", amount: 8, half: "left" }],
    });
  });

  it("of marks: as far as the furthest of them lies, to whole millimetres", () => {
    const ends = [
      line("dartEnd", "dartEnds", { mark: { out: 3, down: 4 }, half: "left" }),
      line("dartEnd", "dartEnds", { mark: { out: 6, down: 9 }, half: "right" }),
    ];
    const [cause] = first(toile("sideDart", ends)).causes;
    // √(36 + 81) = 10.8.
    expect(cause).toMatchObject({ rule: "dartEndElsewhere", amount: 11, amountBy: "measured" });
  });

  it("of no measured line: the usual first try", () =>
    expect(first(toile("sideDart", [line("shoulder", "leansBack")])).causes).toMatchObject([
      { rule: "forwardShoulder", amount: 10, amountBy: "usual" },
    ]));

  it("of more than the pieces give: what they give, told by its name, and what is made of it stands", () => {
    const trial = toile("sideDart", [line("shoulder", "endsOutside", { amount: 60 })]);
    const answer = first(trial);
    // 60 were measured, and the usual 8 counts for a thirty-sixth of a line: 58.6.
    expect(answer.causes[0]?.amount).toBe(59);
    expect(answer.less ?? []).toEqual(
      answer.alterations.filter((one) => one.kind === "fit" && one.amount > -30).map(({ id }) => id),
    );
  });
});
