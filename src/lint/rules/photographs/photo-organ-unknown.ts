import { unknownName } from "../../../cases/index.ts";
import { organs, systems } from "../../../knowledge/index.ts";
import { photographs } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

const known = ["carcass", ...systems.map(({ id }) => id), ...organs.map(({ id }) => id)];

export const photoOrganUnknown: CaseRule = {
  id: "photo-organ-unknown",
  scope: "case",
  family: "photographs",
  level: "error",
  summary: "What a photograph shows is an organ, a system or the carcass.",
  protects: "Pictures are matched to findings by the name of the organ; a mistyped one appears in no report.",
  lookAlike:
    "A picture of the pen, the feed or the ear tag: it belongs to no organ, so write shows: carcass, and what it is into the name of the file.",
  source: practice("common practice of record keeping: names join files"),
  bad: {
    case: "photos: [{file: 01.jpg, shows: respiratory.lung, scale: yes}]",
    files: ["01.jpg"],
  },
  good: {
    case: "photos: [{file: 01.jpg, shows: respiratory.lungs, scale: yes}]",
    files: ["01.jpg"],
  },
  check(one, report) {
    for (const { shows, showsPath } of photographs(one)) {
      if (shows === undefined || known.includes(shows)) continue;
      const byKey = organs.find(({ key }) => key === shows);
      report(
        byKey === undefined
          ? `shows: ${unknownName(shows, known, "organ")}`
          : `shows: an organ is written with its system. Write ${byKey.id}.`,
        showsPath,
      );
    }
  },
};
