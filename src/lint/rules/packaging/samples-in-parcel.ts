/** Samples that do not suit the parcel they travel in: its category, its coolant, its times. */
import { type Case, isAfter, type Moment, moment } from "../../../cases/index.ts";
import { transportLimits } from "../../../knowledge/index.ts";
import {
  hoursBetween,
  isFresh,
  isShipped,
  type Parcel,
  parcelsOf,
  type Sample,
} from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { fromMemory, practice, type VisitRule, verified } from "../../rule.ts";
import { fixedAlone, onDryIce, parcelExample } from "../../shared/parcel-example.ts";

interface Row extends Omit<VisitRule, "scope" | "family" | "check"> {
  /** The entry of the parcel that the finding points at. */
  readonly key: keyof Parcel;
  /** Whether a parcel like this has to suit its samples at all. */
  readonly concerns: (parcel: Parcel) => boolean;
  readonly isUnsuited: (sample: Sample, parcel: Parcel, one: Case) => boolean;
  readonly says: (sample: Sample, parcel: Parcel) => string;
}

const { value: limit, unit } = transportLimits.culture_hours;

const frozenLung =
  "samples:\n  - {id: 01-A, from: respiratory.lungs, site: left cranial and left middle and right cranial and right middle lobe, into: formalin, for: [histology], at: 2026-04-20T10:05}\n  - {id: 01-B, from: respiratory.lungs, into: frozen, for: [pcr], at: 2026-04-20T10:06}";

const rows: readonly Row[] = [
  {
    id: "parcel-exempt-though-ill",
    level: "warning",
    summary: "Fresh samples from sick pigs do not travel as exempt.",
    protects:
      "Exempt is for samples that are unlikely to hold an agent; a sick pig is opened because one is expected.",
    lookAlike:
      "Feed or water beside a sick pig is passed. Blood for a check of vaccination from a pig with a cough is category B all the same.",
    source: fromMemory("UN Model Regulations 2.6.3.2.3 (exempt animal specimens); from memory"),
    bad: { visit: parcelExample({ category: "exempt" }) },
    good: { visit: parcelExample() },
    key: "category",
    concerns: (parcel) => parcel.category === "exempt" && isShipped(parcel),
    isUnsuited: (sample, _parcel, one) => isFresh(sample) && one.signs.some((sign) => sign !== "none"),
    says: ({ id }) =>
      `${id} is of a sick pig, unfixed, and travels as exempt. Send it as category B under the UN3373 mark.`,
  },
  {
    id: "parcel-too-late-for-culture",
    level: "warning",
    summary: "Fresh samples for culture or virus isolation reach the laboratory within two days.",
    protects:
      "Contaminants overgrow the agent and viruses die; a negative culture of an old sample says nothing.",
    lookAlike:
      "Samples that are only for PCR, or frozen, may take longer; a sample with the day alone gets that whole day as grace.",
    source: fromMemory("fresh tissue at 2-8 °C delivered within 24-48 hours; hours from memory"),
    bad: { visit: parcelExample({ arrives: "2026-04-23T09:00" }) },
    good: { visit: parcelExample() },
    key: "arrives",
    concerns: ({ arrives }) => arrives !== undefined,
    isUnsuited({ into, for: tests, at }, { arrives }) {
      if (into === "frozen" || !tests?.some((test) => test === "culture" || test === "virus-isolation"))
        return false;
      const [taken, arrival] = [moment(at), moment(arrives)];
      return (
        taken !== undefined &&
        arrival !== undefined &&
        arrival.written - taken.written > limit + doubt(arrival, taken)
      );
    },
    says: ({ id, for: tests = [], at }, { arrives }) =>
      `${id} is for ${listing(tests)} and arrives more than ${limit} ${unit} after it was taken (${at}, ${arrives}). Send it by express courier or by hand, or freeze it for PCR and tell the laboratory.`,
  },
  {
    id: "parcel-before-sample",
    level: "error",
    summary: "A parcel leaves after its samples were taken.",
    protects: "One of the two times is wrong, and so is every hour counted between sampling and test.",
    lookAlike: "A second batch of samples that went later: it is a parcel of its own, with its own sent.",
    source: practice("order of events; common practice"),
    bad: { visit: parcelExample({ sent: "2026-04-20T09:50" }) },
    good: { visit: parcelExample() },
    key: "sent",
    concerns: ({ sent }) => sent !== undefined,
    isUnsuited({ at }, parcel) {
      const [taken, sent] = [moment(at), moment(parcel.sent)];
      return taken !== undefined && sent !== undefined && isAfter(taken, sent);
    },
    says: ({ id, at }, { sent }) =>
      `it was sent ${sent}, but ${id} was taken ${at}. Correct one of the two times.`,
  },
  {
    id: "parcel-not-cooled",
    level: "warning",
    summary: "Chilled and frozen samples travel with coolant.",
    protects: "At room temperature contaminants overgrow the agent within hours.",
    lookAlike:
      "Chilled tissue that you carry next door: by: hand, with sent and arrives an hour apart or less, is passed.",
    source: verified(
      "chill fresh tissue, 2-8 °C: J. Carr, post-mortem samples (cold packs); Oregon State University veterinary diagnostic laboratory",
    ),
    bad: { visit: parcelExample({ coolant: "none", coolant_place: "" }) },
    good: { visit: parcelExample() },
    key: "coolant",
    concerns: (parcel) => parcel.coolant === "none" && !isNextDoor(parcel),
    isUnsuited: ({ into }) => into === "chilled" || into === "frozen",
    says: ({ id, into }) =>
      `${id} is ${into} and travels without coolant. Add cold packs outside the secondary packaging, or dry ice for what is frozen.`,
  },
  {
    id: "frozen-sample-on-cold-packs",
    level: "note",
    summary: "Frozen samples travel on dry ice, or arrive the same day.",
    protects: "What thaws on the way and is frozen again is of little use for virus isolation or toxicology.",
    lookAlike:
      "Frozen samples that you carry in by hand, or that arrive on the same day, stay frozen: write by: hand, or sent and arrives.",
    source: fromMemory("frozen tissue on dry ice; from memory"),
    bad: { case: frozenLung, visit: parcelExample() },
    good: { case: frozenLung, visit: parcelExample({ by: "hand", arrives: "2026-04-20T18:00" }) },
    key: "coolant",
    concerns: ({ by, coolant, sent, arrives }) =>
      (coolant === "cold-packs" || coolant === "ice") &&
      (arrives === undefined ? by !== "hand" : sent?.slice(0, 10) !== arrives.slice(0, 10)),
    isUnsuited: ({ into }) => into === "frozen",
    says: ({ id }, { arrives, coolant }) =>
      `${id} is frozen and travels ${arrives === undefined ? "" : "overnight "}on ${coolant === "ice" ? "ice" : "cold packs"}. Use dry ice (vented, net weight marked), or leave it in the freezer until somebody can take it.`,
  },
  {
    id: "formalin-on-dry-ice",
    level: "warning",
    summary: "Samples in formalin do not travel on dry ice.",
    protects: "Formalin freezes on the way, and ice crystals tear the tissue meant for histology.",
    lookAlike:
      "Formalin in one carton with dry ice but in a foam box of its own: that is two parcels in the record, and the second has coolant: none.",
    source: verified(
      "Veterinary Laboratory and Field Manual, 3rd ed., p. 517: formalin can freeze in transit and ruin tissue",
    ),
    bad: { visit: parcelExample({ coolant: "dry-ice", dry_ice: "2 kg", vented: "yes" }) },
    good: { visit: parcelExample(fixedAlone, onDryIce) },
    key: "coolant",
    concerns: ({ coolant }) => coolant === "dry-ice",
    isUnsuited: ({ into }) => into === "formalin",
    says: ({ id }) =>
      `${id} is in formalin and travels on dry ice. Send fixed tissue in a parcel of its own, without ice.`,
  },
];

/** Carried by hand within the hour; the hour is our own limit. */
const isNextDoor = ({ by, sent, arrives }: Parcel): boolean =>
  by === "hand" && (hoursBetween(moment(sent), moment(arrives)) ?? Number.POSITIVE_INFINITY) <= 1;

/** Where only the day of sampling is known, it gets the benefit of the doubt: that whole day. */
const doubt = (arrival: Moment, taken: Moment): number => (taken.dayOnly && !arrival.dayOnly ? 24 : 0);

/** One finding a parcel, with the first sample as an example. */
export const samplesInParcel: readonly VisitRule[] = rows.map(
  ({ key, concerns, isUnsuited, says, ...text }) => ({
    ...text,
    scope: "visit",
    family: "packaging",
    check(visit, reportVisit) {
      for (const { parcel, name, path, samples } of parcelsOf(visit)) {
        if (!concerns(parcel)) continue;
        const found = samples.find(
          ({ taken }) => taken !== undefined && isUnsuited(taken.sample, parcel, taken.one),
        )?.taken;
        if (found !== undefined) reportVisit(`${name}: ${says(found.sample, parcel)}`, [...path, key]);
      }
    },
  }),
);
