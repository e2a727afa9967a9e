/** Results as text and JSON. Nothing is computed here. */
export { faultsText } from "./faults-text.ts";
export { herdJson } from "./herd-json.ts";
export { herdText } from "./herd-text.ts";
export { lintJson } from "./lint-json.ts";
export { countLine, lintText } from "./lint-text.ts";
export { scoreJson } from "./score-json.ts";
export { scoreText } from "./score-text.ts";
export { makeStyle, type Style } from "./style.ts";
