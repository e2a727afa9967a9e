import { photographs } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const photoWithoutSubject: CaseRule = {
  id: "photo-without-subject",
  scope: "case",
  family: "photographs",
  level: "note",
  summary: "A photograph says what it shows.",
  protects: "In the evening thirty red pictures look alike.",
  source: { cite: "common practice of recording", confidence: "common-practice" },
  bad: { case: "photos: [IMG_2041.jpg]", files: ["IMG_2041.jpg"] },
  good: {
    case: "photos: [{file: IMG_2041.jpg, shows: respiratory.lungs, scale: yes}]",
    files: ["IMG_2041.jpg"],
  },
  check(one, report) {
    for (const { file, shows, organs, path } of photographs(one))
      if (shows === undefined && organs.length === 0 && !/carcass/i.test(file))
        report(
          `${file}: what does it show? Write {file: ${file}, shows: respiratory.lungs}, or carcass.`,
          path,
        );
  },
};
