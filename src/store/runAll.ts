/** Several commands that make one decision. */
import { applyCommand, type Command } from "../core/plan/commands";
import { beginGesture, commitGesture, type createWorkStore } from "./workStore";

/** Carries out commands one after the other as one step of undo. */
export function runAll(store: ReturnType<typeof createWorkStore>, commands: readonly Command[]): void {
  beginGesture(store);
  store.setState({ work: commands.reduce(applyCommand, store.getState().work) });
  commitGesture(store);
}
