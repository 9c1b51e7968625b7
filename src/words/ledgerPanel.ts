/** The words of the ledger beside the table: its slips of paper, truing, checks. */
import { plural } from "./terms/language";

export const measuredCount = (count: number): string => plural(count, { one: "measured", other: `${count} measured` });

// Ledger
export const ledger = "Ledger";
export const nothingPlannedYet = "Slips appear here as soon as there is a plan.";
export const truing = "Truing";
export const checks = "Checks";
export const where = "where";
export const isWord = "is";
export const shouldBe = "should be";
export const allHold = "all hold";
export const toLookAt = (count: number): string => `${count} to look at`;
export const holds = ": holds";
export const doesNotHold = ": does not hold";

// SlipOfPaper
export const leftOut = (text: string): string => `Left out. ${text}`;
export const earlier = "Earlier";
export const later = "Later";
export const takeOut = "Take out";
export const dragToAnotherPlace = "Drag to another place";
export const earlierOf = (title: string): string => `Earlier: ${title}`;
export const laterOf = (title: string): string => `Later: ${title}`;
export const takeOutOf = (title: string): string => `Take out: ${title}`;

// Slips
export const nothingAltered = "Nothing is altered: cut the frame size as printed.";
export const outOfOrder =
  "The slips are not made in the trade’s order. They still work: each is measured on what the ones before it left.";
export const putInTheTradesOrder = "Put in the trade’s order";
export const inTheTradesOrder = "In the trade’s order.";
export const nowAt = (title: string, at: number, all: number): string => `${title}: now ${at} of ${all}.`;
