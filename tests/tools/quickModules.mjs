/**
 * The test runner keeps what a module exports in an object without a prototype, which the engine treats as a dictionary: each
 * use of an import is looked up and its getter called anew, ten times what it takes where the engine knows the shape of the
 * object. Once another has it as its prototype, it does.
 * @returns {import("vite").Plugin}
 */
export function quickModules() {
  return {
    name: "quick-modules",
    enforce: "post",
    apply: () => process.env["VITEST"] !== undefined,
    transform(code, id) {
      if (id.includes("/node_modules/") || !/\.[cm]?[jt]sx?$/u.test(id)) return null;
      return { code: `${code}\nObject.create(__vite_ssr_exports__);`, map: null };
    },
  };
}
