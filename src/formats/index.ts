/** Results as text, JSON and the formats of other programs. Nothing is computed here. */

export { alarmNotice } from "./alarm-notice.ts";
export { explainJson, explainListJson } from "./explain-json.ts";
export { explainListText, explainText } from "./explain-text.ts";
export { faultsText } from "./faults-text.ts";
export { fixReport } from "./fix-report.ts";
export { herdJson } from "./herd-json.ts";
export { herdText } from "./herd-text.ts";
export { type LintFormat, lintFormats, lintReport } from "./lint-formats.ts";
export type { LintReport } from "./lint-report.ts";
export { shownByCodeScanning } from "./lint-sarif.ts";
export { countLine } from "./lint-text.ts";
export { scoreJson } from "./score-json.ts";
export { scoreText } from "./score-text.ts";
export { makeStyle, type Style } from "./style.ts";
