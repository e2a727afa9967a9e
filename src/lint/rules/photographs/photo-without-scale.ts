import type { Case } from "../../../cases/index.ts";
import type { PlacedOrgan } from "../../../knowledge/index.ts";
import { findingsOf, photographs } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const photoWithoutScale: CaseRule = {
  id: "photo-without-scale",
  scope: "case",
  family: "photographs",
  level: "note",
  summary: "A photograph of a measured lesion includes a scale.",
  protects:
    "Without a ruler in the picture nobody can measure again, and a lymph node is as large as the screen.",
  lookAlike:
    "A second picture of the same organ with a ruler is enough; a picture that says nothing of a scale is not asked about.",
  source: practice("common practice of photographing specimens"),
  bad: {
    case: "photos: [{file: 01-node.jpg, shows: lymphoid.bronchial_nodes, scale: no}]",
    files: ["01-node.jpg"],
  },
  good: {
    case: "photos: [{file: 01-node.jpg, shows: lymphoid.bronchial_nodes, scale: yes}]",
    files: ["01-node.jpg"],
  },
  check(one, report) {
    const photos = photographs(one);
    for (const { file, scale, organs, path } of photos) {
      const [organ] = organs;
      if (scale !== false || organs.length !== 1 || organ === undefined) continue;
      const hasBetter = photos.some((other) => other.scale === true && other.organs.includes(organ));
      if (!hasBetter && isMeasured(one, organ))
        report(
          `${file} shows ${organ.id}, which was measured, without a scale. Lay a ruler beside it and take it again while you still have the organ.`,
          path,
        );
    }
  },
};

const isMeasured = (one: Case, organ: PlacedOrgan): boolean =>
  findingsOf(one).some((entry) => entry.organ === organ && entry.finding.size !== undefined);
