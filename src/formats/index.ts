/** Results as text and JSON. Nothing is computed here. */
export { faultsText } from "./faults-text.ts";
export { lintJson } from "./lint-json.ts";
export { countLine, lintText } from "./lint-text.ts";
export { makeStyle, type Style } from "./style.ts";
