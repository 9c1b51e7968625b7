import { useInsertionEffect } from "react";
import type { PaperSize } from "../core/decisions/paperChoice";
import { pageRule } from "./pageRule";

interface PageSetupProps {
  readonly paper: PaperSize;
  readonly name: string;
  readonly kind?: string;
}

/** Sets up the printed page while its sheet is shown. Given as a stylesheet of its own: one written into the page is refused. */
export function PageSetup({ paper, name, kind }: PageSetupProps) {
  const rule = pageRule(paper, name, kind);
  useInsertionEffect(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(rule);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((other) => other !== sheet);
    };
  }, [rule]);
  return null;
}
