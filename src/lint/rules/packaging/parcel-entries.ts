/** What is wrong with a parcel by its own entries: its layers, its marks, what lies where. */
import { isAfter, moment } from "../../../cases/index.ts";
import { answer, isMarkDue, isShipped, type Parcel, parcelsOf } from "../../../record/index.ts";
import { fromMemory, practice, type VisitRule, verified } from "../../rule.ts";
import { fixedAlone, onDryIce, parcelExample } from "../../shared/parcel-example.ts";

interface Row extends Omit<VisitRule, "scope" | "family" | "check" | "asks" | "concerns"> {
  /** The entry that is wrong, or missing. */
  readonly key: keyof Parcel;
  readonly isWrong: (parcel: Parcel) => boolean;
  readonly says: (parcel: Parcel) => string;
}

const threeLayers = verified(
  "UN3373 packing instruction P650 (road) and PI650 (air); Swiss Expert Committee for Biosafety, transport sheet category B",
);

const rows: readonly Row[] = [
  {
    id: "parcel-primary-leaks",
    level: "error",
    summary: "The containers of a parcel are leak-proof and closed.",
    protects: "A leaking pot spoils every other sample in the parcel and wets the hands that open it.",
    lookAlike:
      "A lid that had wept and was tightened and taped before the parcel went: what counts is how it left, primary_leakproof: yes.",
    source: threeLayers,
    bad: { visit: parcelExample({ primary_leakproof: "no" }) },
    good: { visit: parcelExample() },
    key: "primary_leakproof",
    isWrong: (parcel) => answer(parcel.primary_leakproof) === false,
    says: () =>
      "the containers are not leak-proof. Tighten the lids, tape them, and pack nothing that still drips.",
  },
  {
    id: "parcel-without-absorbent",
    level: "error",
    summary:
      "Absorbent material for all of the liquid lies between the containers and the secondary packaging.",
    protects: "One broken tube soaks the whole parcel, and the carrier stops a wet parcel.",
    lookAlike:
      "A parcel without a drop of liquid, such as blocks or slides: nothing could leak, so accept the finding with that reason.",
    source: threeLayers,
    bad: { visit: parcelExample({ absorbent: "no" }) },
    good: { visit: parcelExample() },
    key: "absorbent",
    isWrong: (parcel) => answer(parcel.absorbent) === false,
    says: () =>
      "there is no absorbent material. Put enough round the containers to soak up all of the liquid.",
  },
  {
    id: "parcel-without-secondary",
    level: "error",
    summary: "The containers are packed in a leak-proof secondary packaging.",
    protects: "Of the three layers, this is the one that holds when the first has failed.",
    lookAlike:
      "A sealed plastic bag round the pots is a secondary packaging: it need not be a box, so write secondary_leakproof: yes.",
    source: threeLayers,
    bad: { visit: parcelExample({ secondary_leakproof: "no" }) },
    good: { visit: parcelExample() },
    key: "secondary_leakproof",
    isWrong: (parcel) => answer(parcel.secondary_leakproof) === false,
    says: () =>
      "there is no leak-proof secondary packaging. Put the containers and their absorbent into a closed leak-proof bag or box, with fragile ones wrapped separately.",
  },
  {
    id: "parcel-outer-soft",
    level: "error",
    summary: "The outer packaging is rigid.",
    protects: "A padded envelope is thrown and crushed like a letter, and glass breaks in it.",
    lookAlike:
      "A padded bag inside a carton: the outermost layer counts. What you carry yourself (by: hand) need not be rigid.",
    source: threeLayers,
    bad: { visit: parcelExample({ outer_rigid: "no" }) },
    good: { visit: parcelExample() },
    key: "outer_rigid",
    isWrong: (parcel) => answer(parcel.outer_rigid) === false && isShipped(parcel),
    says: () =>
      "the outer packaging is not rigid. Use a box that keeps its shape when it is dropped or stacked.",
  },
  {
    id: "parcel-mark-missing",
    level: "error",
    summary: "A parcel of category B carries the UN3373 mark with the proper shipping name beside it.",
    protects:
      "Without the mark the carrier may refuse the parcel, and whoever finds it broken does not know what is in it.",
    lookAlike:
      "Material in category A or exempt, and what you carry yourself (by: hand), has no UN3373 mark: write category and by, and none is asked for.",
    source: threeLayers,
    bad: { visit: parcelExample({ mark: "no" }) },
    good: { visit: parcelExample() },
    key: "mark",
    isWrong: (parcel) => answer(parcel.mark) === false && isMarkDue(parcel),
    says: () =>
      "it does not carry the UN3373 mark. Put the UN3373 diamond on it, with BIOLOGICAL SUBSTANCE, CATEGORY B beside it.",
  },
  {
    id: "parcel-contact-missing",
    level: "warning",
    summary: "The name and telephone number of a responsible person are on the parcel.",
    protects: "When a parcel leaks or is held up, nobody knows whom to ring, and it waits until Monday.",
    lookAlike:
      "A sender's label of the carrier with name and telephone: write the same under contact, since the record cannot see the label.",
    source: verified(
      "University of New Hampshire veterinary diagnostic laboratory, shipping supplies; UN3373 packing instruction P650 (road) and PI650 (air)",
    ),
    bad: { visit: parcelExample({ contact: "" }) },
    good: { visit: parcelExample() },
    key: "contact",
    isWrong: (parcel) => parcel.contact === undefined && isShipped(parcel),
    says: () =>
      "no responsible person is named. Write contact: the name and telephone number of somebody who will answer, and put the same on the outside.",
  },
  {
    id: "parcel-form-missing",
    level: "error",
    summary: "The submission form travels with the samples.",
    protects: "Samples without a form sit in the fridge until somebody rings, and the tests are guesswork.",
    lookAlike:
      "A form that was sent in by computer: print one for the parcel, or accept the finding and name the number of the order.",
    source: verified(
      "Animal Health Laboratory, University of Guelph: missing history is the first fault named; common practice",
    ),
    bad: { visit: parcelExample({ form: "missing" }) },
    good: { visit: parcelExample() },
    key: "form",
    isWrong: (parcel) => parcel.form === "missing",
    says: () =>
      "there is no submission form. Enclose one with history, samples and tests, in a plastic bag between secondary and outer packaging.",
  },
  {
    id: "parcel-form-inside",
    level: "warning",
    summary: "The submission form is in a plastic bag outside the secondary packaging.",
    protects:
      "In with the samples it is wet or bloody by the time it is needed, and nobody can read it without opening them.",
    lookAlike:
      "A form sealed in its own bag but under the inner lid: whoever opens the box must read it without touching a pot, so it lies outside the secondary packaging.",
    source: verified("North Dakota State University veterinary diagnostic laboratory, submission guidelines"),
    bad: { visit: parcelExample({ form: "inside-secondary" }) },
    good: { visit: parcelExample() },
    key: "form",
    isWrong: (parcel) => parcel.form === "inside-secondary",
    says: () =>
      "the form is in with the samples. Put it into a plastic bag of its own between secondary and outer packaging.",
  },
  {
    id: "parcel-coolant-inside",
    level: "warning",
    summary: "Ice and cold packs are outside the secondary packaging.",
    protects: "Melting ice floats the containers and washes labels off; dry ice in a closed bag bursts it.",
    lookAlike:
      "Cold packs between two inner bags: outside the closed one that holds the pots is outside-secondary.",
    source: fromMemory("P650; from memory"),
    bad: { visit: parcelExample({ coolant_place: "inside-secondary" }) },
    good: { visit: parcelExample() },
    key: "coolant_place",
    isWrong: (parcel) => parcel.coolant_place === "inside-secondary" && parcel.coolant !== "none",
    says: () => "the coolant is in with the samples. Put it between secondary and outer packaging.",
  },
  {
    id: "dry-ice-weight-missing",
    level: "error",
    summary: "The net weight of dry ice is recorded and marked on the outside (UN1845).",
    protects:
      "Dry ice turns to a gas that suffocates in a closed van or hold; the carrier must know how much there is.",
    lookAlike:
      "Dry ice in what you carry yourself (by: hand) needs no mark; ice of water is coolant: ice, and has no weight to declare.",
    source: fromMemory("UN1845, dry ice marked with net kilograms; from memory"),
    bad: { visit: parcelExample(fixedAlone, { ...onDryIce, dry_ice: "" }) },
    good: { visit: parcelExample(fixedAlone, onDryIce) },
    key: "dry_ice",
    isWrong: (parcel) => parcel.coolant === "dry-ice" && parcel.dry_ice === undefined && isShipped(parcel),
    says: () =>
      "the net weight of the dry ice is missing. Write dry_ice: 2 kg, and mark the outside UN1845 with the same weight.",
  },
  {
    id: "dry-ice-not-vented",
    level: "error",
    summary: "A parcel with dry ice lets the gas out.",
    protects: "A tightly closed box with dry ice in it bursts.",
    lookAlike:
      "A foam box with a loose lid in a carton lets the gas out: write vented: yes. Carried by hand it is asked all the same, for a car is closed as well.",
    source: fromMemory("UN1845 and P650; from memory"),
    bad: { visit: parcelExample(fixedAlone, { ...onDryIce, vented: "no" }) },
    good: { visit: parcelExample(fixedAlone, onDryIce) },
    key: "vented",
    isWrong: (parcel) => parcel.coolant === "dry-ice" && answer(parcel.vented) !== true,
    says: ({ vented }) =>
      `it holds dry ice${vented === undefined ? ", and nothing is said of a vent" : " and has no vent"}. Leave a way out for the gas (do not tape the lid all round), and write vented: yes.`,
  },
  {
    id: "parcel-arrives-before-sent",
    level: "error",
    summary: "A parcel arrives after it was sent.",
    protects: "One of the two times is wrong, and so is every hour counted between sampling and test.",
    lookAlike:
      "A parcel across time zones: write the zone behind both times, and they are compared as they were.",
    source: practice("order of events; common practice"),
    bad: { visit: parcelExample({ arrives: "2026-04-20T12:00" }) },
    good: { visit: parcelExample() },
    key: "arrives",
    isWrong(parcel) {
      const [sent, arrives] = [moment(parcel.sent), moment(parcel.arrives)];
      return sent !== undefined && arrives !== undefined && isAfter(sent, arrives);
    },
    says: ({ arrives, sent }) =>
      `it arrives (${arrives}) before it is sent (${sent}). Correct one of the two times.`,
  },
];

/** What an entry may be at worst. */
const worst = ["no", "missing", "inside-secondary", undefined];

export const parcelEntries: readonly VisitRule[] = rows.map(({ key, isWrong, says, ...text }) => ({
  ...text,
  scope: "visit",
  family: "packaging",
  asks: key,
  concerns: (parcel) => worst.some((value) => isWrong({ ...parcel, [key]: value })),
  check(visit, reportVisit) {
    for (const { parcel, name, path } of parcelsOf(visit))
      if (isWrong(parcel))
        reportVisit(`${name}: ${says(parcel)}`, [...path, key], parcel[key] === undefined ? "key" : "value");
  },
}));
