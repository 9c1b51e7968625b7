import { screen } from "@testing-library/react";
import type { Work } from "../../../src/core/decisions/work";
import { TapeStep } from "../../../src/ui/tape/TapeStep";
import { renderWork, type Rendered } from "../renderWork";

/** Tape, with what comes after its fields: guesses and doubts. */
export async function showTape(change: Partial<Work> = {}): Promise<Rendered> {
  const rendered = await renderWork(<TapeStep />, change);
  await screen.findByText("Where the guesses come from");
  return rendered;
}
