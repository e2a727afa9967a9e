// Two modules of Node that chalk imports, without what comes with them: importing them makes Node set up every stream of
// the process, standard input included, before the first line of ours runs.
const shims = {
  "node:process": "export default globalThis.process;",
  "node:tty":
    "export default { isatty: (fd) => (fd === 2 ? process.stderr : process.stdout).isTTY === true };",
};

export const lightNode = {
  name: "light-node",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^node:(?:process|tty)$/ }, ({ path, importer, kind }) =>
      kind === "import-statement" && /[\\/]chalk[\\/]/.test(importer)
        ? { path, namespace: "light-node", sideEffects: false }
        : undefined,
    );
    onLoad({ filter: /.*/, namespace: "light-node" }, ({ path }) => ({
      contents: shims[path],
      loader: "js",
    }));
  },
};
