import { type Alarm, callWhom, findAlarms } from "../../../alarms/index.ts";
import { isAfter, type Moment, moment } from "../../../cases/index.ts";
import { parcelsOf } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type VisitRule, verified } from "../../rule.ts";
import { parcelExample } from "../../shared/parcel-example.ts";

export const parcelDuringAlarm: VisitRule = {
  id: "parcel-during-alarm",
  scope: "visit",
  family: "alarm",
  level: "error",
  locked: true,
  summary: "No parcel leaves while an alarm of its visit is unanswered.",
  protects:
    "Samples of a notifiable disease in the post carry it to other farms and to laboratories that are not licensed for it, and posting them breaks the law.",
  lookAlike:
    "A parcel that left on the same day, after the authority had let it go: give authority.at and parcels.sent their hours, so that the order shows.",
  source: verified(
    "GB guidance on submitting farm animals for post-mortem: on suspicion do not send samples, report; local law rules",
  ),
  bad: {
    case: "alarm_check: {at_knife: {dark_spleen: seen, bloody_nodes: seen}}\nlymphoid:\n  spleen:\n    - {process: enlargement, distribution: diffuse, size: 300 mm, colour: black, consistency: friable, severity: moderate, duration: acute}\n  gastrohepatic_nodes:\n    - {process: haemorrhage, distribution: diffuse, size: 25 mm, colour: dark-red, severity: moderate, duration: acute}\nsamples:\n  - {id: 01-A, from: respiratory.lungs, site: left cranial and left middle and right cranial and right middle lobe, into: formalin, for: [histology], at: 2026-04-20T10:05}\n  - {id: 01-B, from: respiratory.lungs, into: chilled, for: [pcr, culture], at: 2026-04-20T10:06}\n  - {id: 01-C, from: lymphoid.spleen, into: chilled, for: [pcr], at: 2026-04-20T10:07}\n  - {id: 01-D, from: lymphoid.gastrohepatic_nodes, into: chilled, for: [pcr], at: 2026-04-20T10:08}\nauthority: [{at: 2026-04-20T18:00, stands: excluded, for: [dark-spleen-and-haemorrhagic-nodes], sample: PCR of spleen}]",
    visit: parcelExample({ samples: "[01-A, 01-B, 01-C, 01-D]" }),
  },
  good: {
    case: "alarm_check: {at_knife: {dark_spleen: seen, bloody_nodes: seen}}\nlymphoid:\n  spleen:\n    - {process: enlargement, distribution: diffuse, size: 300 mm, colour: black, consistency: friable, severity: moderate, duration: acute}\n  gastrohepatic_nodes:\n    - {process: haemorrhage, distribution: diffuse, size: 25 mm, colour: dark-red, severity: moderate, duration: acute}\nsamples:\n  - {id: 01-A, from: respiratory.lungs, site: left cranial and left middle and right cranial and right middle lobe, into: formalin, for: [histology], at: 2026-04-20T10:05}\n  - {id: 01-B, from: respiratory.lungs, into: chilled, for: [pcr, culture], at: 2026-04-20T10:06}\n  - {id: 01-C, from: lymphoid.spleen, into: chilled, for: [pcr], at: 2026-04-20T10:07}\n  - {id: 01-D, from: lymphoid.gastrohepatic_nodes, into: chilled, for: [pcr], at: 2026-04-20T10:08}\nauthority: [{at: 2026-04-20T11:00, stands: excluded, for: [dark-spleen-and-haemorrhagic-nodes], sample: PCR of spleen}]",
    visit: parcelExample({ samples: "[01-A, 01-B, 01-C, 01-D]" }),
  },
  check(visit, reportVisit) {
    if (visit.record.parcels === undefined) return;
    const alarms = findAlarms(visit);
    for (const { parcel, name, path } of parcelsOf(visit)) {
      const sent = moment(parcel.sent);
      const open = alarms.filter((alarm) => isOpenAt(sent, alarm));
      if (open.length > 0)
        reportVisit(
          `${name}: it left with ${listing([...new Set(open.map(({ pattern }) => pattern.id))])} still open: the authority had neither released nor excluded it. STOP it: ring the carrier and the laboratory, call ${callWhom(visit.settings)} now, and send nothing until it does.`,
          path,
        );
    }
  },
};

/** Whether an alarm stood when the parcel was sent. */
const isOpenAt = (sent: Moment | undefined, { liftedBy }: Alarm): boolean =>
  liftedBy.length === 0 ||
  liftedBy.some(({ at }) => {
    const lifted = moment(at);
    return sent !== undefined && lifted !== undefined && isAfter(lifted, sent);
  });
