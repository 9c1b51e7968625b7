/** The words of the ledger beside the table: its slips of paper, truing, checks. */
import { plural } from "./terms/language";

export const measuredCount = (count: number): string => plural(count, { one: "measured", other: `${count} measured` });
