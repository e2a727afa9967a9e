/** A packing list a parcel, with the check of its layers, in blocks. */
import { type Container, type Parcel, testNames } from "../../record/index.ts";
import type { PackedVisit, ParcelSheet } from "../../samples/parcel.ts";
import { capital, count } from "../../words/listing.ts";
import { shortId } from "../../words/short-id.ts";
import { type Block, gap, heading, list, table, text } from "../page/blocks.ts";

type Checks = ParcelSheet["checks"];

export const parcelBlocks = (visits: readonly PackedVisit[]): Block[] =>
  visits.flatMap((packed) => {
    const { visit, proposed, parcels, left, besides } = packed;
    const all = count(parcels.length, "parcel");
    return [
      heading(
        `${visit.id}  ${proposed ? `no parcel recorded; the samples could go as ${all}` : summary(packed)}`,
      ),
      ...parcels.flatMap((one) => blocksOf(one, packed)),
      ...(left.length === 0
        ? []
        : [heading("In no parcel", { level: 3, indent: 2 }), ...containerTable(left, visit.id)]),
      ...list(null, besides.filter(({ rule }) => rule !== "sample-in-no-parcel").map(sentence), {
        indent: 2,
        bullet: "-",
      }),
      ...(proposed ? entryBlocks(parcels) : []),
    ];
  });

function summary({ parcels, left }: PackedVisit): string {
  const faults = parcels.reduce((sum, { findings }) => sum + findings.length, left.length);
  return `${count(parcels.length, "parcel")}, ${faults === 0 ? "packed as it should be" : `${count(faults, "thing")} to put right`}`;
}

const ways = { hand: "carried by hand", road: "by road", air: "by air" } as const;
const coolants = {
  none: "no coolant",
  "cold-packs": "cold packs",
  ice: "ice",
  "dry-ice": "dry ice",
} as const;

function howOf({ by, category, coolant, sent, arrives }: Parcel): string {
  return [
    by && ways[by],
    category && (category === "exempt" ? "exempt" : `category ${category}`),
    coolant && coolants[coolant],
    sent && `sent ${sent.replace("T", " ")}`,
    arrives && `due ${arrives.replace("T", " ")}`,
  ]
    .filter((one) => one !== undefined)
    .join(", ");
}

function blocksOf(one: ParcelSheet, { visit, proposed }: PackedVisit): Block[] {
  const { placed, contains, checks, air, findings, outside } = one;
  const { parcel, name } = placed;
  const head = howOf(parcel);
  const isByAir = parcel.by === "air";
  return [
    heading(`${capital(name)}${head === "" ? "" : `  ${head}`}`, { level: 3, indent: 2 }),
    ...containerTable(contains, visit.id),
    gap,
    text(isByAir ? "Three layers, by air (PI650):" : "Three layers, by road (P650):"),
    ...checkTable(checks),
    ...(air.length === 0 ? [] : [text("By air (PI650) besides:"), ...checkTable(air)]),
    gap,
    ...list("Write on the outside:", outside, { indent: 2, bullet: "-" }),
    ...(findings.length === 0 || proposed
      ? []
      : [gap, ...list("To put right:", findings.map(sentence), { indent: 2, bullet: "-" })]),
  ];
}

const containerTable = (contains: readonly Container[], visit: string): Block[] =>
  table(
    [
      { head: "number" },
      { head: "pig" },
      { head: "what" },
      { head: "container" },
      { head: "for", detail: true },
    ],
    contains.map(({ id, pig, what, container, tests }) => [
      id,
      shortId(pig, visit),
      what,
      container ?? "not recorded",
      testNames(tests),
    ]),
  );

const states = { kept: "yes", broken: "NO", unrecorded: "?" } as const;

const checkTable = (checks: Checks): Block[] =>
  table(
    [{ head: "is it so" }, { head: "what is asked" }],
    checks.map(({ says, state }) => [states[state], says]),
  );

/** A finding without the name of the parcel below which it stands. */
const sentence = ({ message, rule }: { readonly message: string; readonly rule: string }): string =>
  `${capital(message.replace(/^parcel \d+: /, ""))} [${rule}]`;

/** What to write under `parcels:` once they are packed so. */
function entryBlocks(parcels: readonly ParcelSheet[]): Block[] {
  return list(
    "Once packed, write in visit.yaml, and the rest as you find it:",
    [
      "parcels:",
      ...parcels.map(({ placed: { parcel } }) => {
        const entries = Object.entries(parcel).map(
          ([key, value]) => `${key}: ${Array.isArray(value) ? `[${value.join(", ")}]` : value}`,
        );
        return `  - {${entries.join(", ")}}`;
      }),
    ],
    { indent: 2 },
  );
}
