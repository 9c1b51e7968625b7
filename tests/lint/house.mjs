/** Lint rules of this house: the floors of the core hold in the editor, too. */
import { posix, relative, sep } from "node:path";
import { FLOORS, floorFault } from "./floors.mjs";

/** @typedef {{ source?: { value?: unknown } | null }} ImportNode */
/** @typedef {{ cwd: string, filename: string, report: (fault: { node: object, message: string }) => void }} Context */

export default {
  meta: { name: "house" },
  rules: {
    floors: {
      /** @param {Context} context */
      create(context) {
        const file = relative(context.cwd, context.filename).split(sep).join(posix.sep);
        /** @param {ImportNode} node */
        const check = (node) => {
          const specifier = node.source?.value;
          const fault = typeof specifier === "string" ? floorFault(FLOORS, file, specifier) : null;
          if (fault !== null) context.report({ node, message: fault });
        };
        return {
          ImportDeclaration: check,
          ExportNamedDeclaration: check,
          ExportAllDeclaration: check,
          ImportExpression: check,
          TSImportType: check,
        };
      },
    },
  },
};
