/**
 * Stands in the built page for packages that the writer of PDF files can load, for pictures and for web pages in a file:
 * none of them is ever asked for here, and they would be heavier than all the rest.
 */
import { CoreBug } from "../core/result";

/** In place of the decoder of PNG pictures. */
export function decode(): never {
  throw new CoreBug("a picture in a PDF file");
}

export default null;
