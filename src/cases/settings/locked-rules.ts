/** Rules that no settings may lower or switch off. The linter locks the same ones; a test holds both together. */
export const lockedRules: readonly string[] = [
  "accepted-locked-rule",
  "accepted-unknown-rule",
  "accepted-without-reason",
  "alarm-exclude",
  "alarm-in-herd",
  "alarm-in-herd-exclude",
  "alarm-pattern",
  "alarm-sign-recorded",
  "authority-before-death",
  "authority-before-visit",
  "authority-entry-incomplete",
  "case-format",
  "parcel-during-alarm",
  "scale-example",
  "scale-format",
];
