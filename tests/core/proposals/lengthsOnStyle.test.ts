/** What is asked of the pattern is what its pieces can be held against, in every style. */
import { expect, it } from "vitest";
import { lengthsAskedOn, PRINTED_LENGTHS, STYLE_NAMES } from "../../../src/core/decisions/pattern";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { garmentLength } from "../../../src/core/proposals/garmentLengths";
import { planOf, testWork } from "../../support/works";

it.each(STYLE_NAMES)("%s", (style) => {
  const { printed } = planOf({ ...testWork, pattern: { ...testWork.pattern, style } });
  const held = PRINTED_LENGTHS.filter(
    // Height is held against the height that the pattern is drafted for, not against a piece.
    (measure) => measure === "height" || garmentLength(measure, setOf(printed)) !== null,
  );
  expect(lengthsAskedOn(style)).toEqual(held);
});
