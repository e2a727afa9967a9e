import { formatPath } from "../../../cases/index.ts";
import { isOfUnknown, markedLesions, photographs } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const lesionWithoutPhoto: CaseRule = {
  id: "lesion-without-photo",
  scope: "case",
  family: "photographs",
  level: "note",
  summary: "In a case with photographs, every organ with a marked lesion is on one of them.",
  protects:
    "The worst lesion is the one that everybody asks about, and the only one that nobody photographed.",
  lookAlike:
    "A picture of several organs at once: shows: with the name of the system (shows: respiratory) counts for each organ of it.",
  source: practice("common practice of necropsy: marked lesions are photographed"),
  bad: {
    case: 'photos: [01-carcass.jpg]\nliver_pancreas: {liver: [{process: necrosis, distribution: multifocal, size: 4 mm, colour: white, severity: marked}]}\nsamples: \ndiagnosis: {morphologic: ["Liver: necrosis, multifocal, acute, marked"]}',
    files: ["01-carcass.jpg"],
  },
  good: {
    case: 'photos: [01-carcass.jpg, {file: 01-liver.jpg, shows: liver_pancreas.liver, scale: yes}]\nliver_pancreas: {liver: [{process: necrosis, distribution: multifocal, size: 4 mm, colour: white, severity: marked}]}\nsamples: \ndiagnosis: {morphologic: ["Liver: necrosis, multifocal, acute, marked"]}',
    files: ["01-carcass.jpg", "01-liver.jpg"],
  },
  check(one, report) {
    const photos = photographs(one);
    // A picture that does not say what it shows may be the one.
    if (photos.length === 0 || photos.some(isOfUnknown)) return;
    const told = new Set<string>();
    for (const { organ, path } of markedLesions(one)) {
      if (told.has(organ.id)) continue;
      told.add(organ.id);
      if (!photos.some(({ organs }) => organs.includes(organ)))
        report(
          `${formatPath(path)} is marked, yet no photograph shows ${organ.id}. Take one, with a scale, before the organ goes.`,
          path,
        );
    }
  },
};
