import { isElsewhere, photographs, tracings } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const pictureElsewhere: CaseRule = {
  id: "picture-elsewhere",
  scope: "case",
  family: "photographs",
  level: "warning",
  summary: "Photographs and tracings are kept beside the case, not on one computer or on the internet.",
  protects: "The archive is read on other machines and in other years, and today's desktop is not there.",
  lookAlike:
    "A picture archive of the practice that everybody reaches: it will move one day, so copy the few that matter beside the case.",
  source: practice("common practice of filing"),
  bad: { case: "photos: [{file: 'C:/Pictures/lungs.jpg', shows: respiratory.lungs, scale: yes}]" },
  good: {
    case: "photos: [{file: photos/01-lungs.jpg, shows: respiratory.lungs, scale: yes}]",
    files: ["photos/01-lungs.jpg"],
  },
  check(one, report) {
    for (const { file, path } of [...photographs(one), ...tracings(one)])
      if (isElsewhere(file))
        report(
          `${file} is not beside this case. Copy it into a folder here and write its path from here, such as photos/01-lungs.jpg.`,
          path,
        );
  },
};
