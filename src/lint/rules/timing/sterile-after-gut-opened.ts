import { isForAgents } from "../../../record/index.ts";

import { listing } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";
import { afterGutOpened, isSterileInside, isSterileStepLate } from "../../shared/gut-opened-first.ts";

export const sterileAfterGutOpened: CaseRule = {
  id: "sterile-after-gut-opened",
  scope: "case",
  family: "timing",
  level: "error",
  summary: "Sterile swabs and tissue are taken before the gut is opened.",
  protects: "Once the gut is open its germs are on knife, gloves and every surface.",
  source: { cite: "standard pathology texts (from memory)", confidence: "from-memory" },
  bad: { case: "steps: {gut_opened: 2026-04-20T10:00, sterile_samples: 2026-04-20T10:15}\nsamples: " },
  good: { case: "steps: {sterile_samples: 2026-04-20T09:50, gut_opened: 2026-04-20T11:00}\nsamples: " },
  check(one, report) {
    if (!isSterileStepLate(one)) return;
    const ids = afterGutOpened(one, (sample) => isForAgents(sample) && isSterileInside(sample)).map(
      ({ sample }) => sample.id,
    );
    const which = ids.length === 0 ? "they are not sterile" : `${listing(ids)} may carry germs of the gut`;
    report(
      `steps.sterile_samples: taken (${one.record.steps?.sterile_samples}) after the gut was opened (${one.record.steps?.gut_opened}). Tell the laboratory that ${which}; of the next pig take them right after the cavities are open.`,
      ["steps", "sterile_samples"],
    );
  },
};
