/** The sections of a report below the answer, which comes first always. */
export const reportSections = [
  "history",
  "chosen",
  "found",
  "photographs",
  "scores",
  "herd",
  "compared",
  "not_seen",
  "samples",
  "diagnoses",
  "next",
  "cautions",
  "method",
] as const;

export type ReportSection = (typeof reportSections)[number];

export const isReportSection = (name: string): name is ReportSection =>
  reportSections.some((section) => section === name);

/** A file of this name is a template; other texts are paragraphs. */
export const isTemplateFile = (file: string): boolean => /\.liquid$/i.test(file);
