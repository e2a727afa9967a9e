import { isAbsent, photographs } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const photoAbsent: CaseRule = {
  id: "photo-absent",
  scope: "case",
  family: "photographs",
  level: "error",
  summary: "Every photograph that a case names lies where it says.",
  protects:
    "The picture that stayed on the telephone is gone when the telephone is, and the carcass is gone already.",
  source: { cite: "common practice of filing", confidence: "common-practice" },
  bad: { case: "photos: [{file: photos/01-lungs.jpg, shows: respiratory.lungs, scale: yes}]" },
  good: {
    case: "photos: [{file: photos/01-lungs.jpg, shows: respiratory.lungs, scale: yes}]",
    files: ["photos/01-lungs.jpg"],
  },
  check(one, report) {
    for (const { file, path } of photographs(one))
      if (isAbsent(one, file))
        report(
          `there is no photograph ${file} beside this case. Copy it there, or correct the name; the path starts at the folder of the case.`,
          path,
        );
  },
};
