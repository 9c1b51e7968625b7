import type { PaperMade } from "../../paper/request";
import { handOut } from "../works/offerFile";

/** Hands finished paper to the wearer as a download. */
export const offerMade = ({ bytes, fileName, mediaType }: PaperMade): void => handOut(bytes, fileName, mediaType);
