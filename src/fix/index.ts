/** Fixes: what can be put right in a file without any doubt. */
export { type FixedFile, fixFiles } from "./fix-files.ts";
export { type FixedText, type FixTextOptions, fixText } from "./fix-text.ts";
export { withMeasured } from "./measured-text.ts";
export { unifiedDiff } from "./unified-diff.ts";
export { withSeal } from "./with-seal.ts";
export { withValue } from "./with-value.ts";
