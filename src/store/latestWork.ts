import type { Work } from "../core/decisions/work";
import { ok, type Result } from "../core/result";
import type { StorageFailure } from "./library";
import type { SessionParts } from "./sessionParts";

/** The open work as it is on the page, any other as it is saved. */
export const latestWork = async (
  { library, openWork }: SessionParts,
  id: string,
): Promise<Result<Work, StorageFailure>> => (id === openWork.id() ? ok(openWork.current().work) : library.peek(id));
