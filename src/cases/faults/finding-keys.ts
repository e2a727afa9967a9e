/** Keys of a finding that get written beside an organ's own keys. */
export const findingKeys = new Set([
  "process",
  "site",
  "distribution",
  "extent",
  "number",
  "colour",
  "color",
  "consistency",
  "exudate",
  "severity",
  "duration",
  "margin",
  "contour",
  "shape",
  "volume",
  "certainty",
]);
