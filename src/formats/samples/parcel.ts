/** A packing list a parcel, with the check of its layers, in blocks. */
import type { Container, Parcel } from "../../record/index.ts";
import type { PackedVisit, ParcelSheet } from "../../sending/parcel.ts";
import { grouped } from "../../words/grouped.ts";
import { capital, count } from "../../words/listing.ts";
import { type Block, gap, heading, list, right, table, text } from "../page/blocks.ts";

type Checks = ParcelSheet["checks"];

export const parcelBlocks = (visits: readonly PackedVisit[]): Block[] =>
  visits.flatMap((packed) => {
    const { visit, proposed, parcels, left, besides } = packed;
    const all = count(parcels.length, "parcel");
    return [
      heading(
        `${visit.id}  ${proposed ? `no parcel recorded; the samples could go as ${all}` : summary(packed)}`,
      ),
      ...parcels.flatMap((one) => blocksOf(one, proposed)),
      ...(left.length === 0
        ? []
        : [
            heading(`In no parcel${besides.some(isLeftOut) ? " [sample-in-no-parcel]" : ""}`, {
              level: 3,
              indent: 2,
            }),
            ...containerTable(left),
          ]),
      ...list(null, besides.filter((finding) => !isLeftOut(finding)).map(sentence), {
        indent: 2,
        bullet: "- ",
      }),
      ...(proposed ? entryBlocks(parcels) : []),
    ];
  });

/** Told by the table of what is in no parcel. */
const isLeftOut = ({ rule }: { readonly rule: string }): boolean => rule === "sample-in-no-parcel";

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

function blocksOf(one: ParcelSheet, proposed: boolean): Block[] {
  const { placed, contains, checks, air, findings, outside } = one;
  const { parcel, name } = placed;
  const head = howOf(parcel);
  const isByAir = parcel.by === "air";
  return [
    heading(`${capital(name)}${head === "" ? "" : `  ${head}`}`, { level: 3, indent: 2 }),
    ...containerTable(contains),
    gap,
    text(isByAir ? "Three layers, by air (PI650):" : "Three layers, by road (P650):"),
    ...checkTable(checks),
    ...(air.length === 0 ? [] : [text("By air (PI650) besides:"), ...checkTable(air)]),
    gap,
    ...list("Write on the outside:", outside, { indent: 2, bullet: "- " }),
    ...(findings.length === 0 || proposed
      ? []
      : [gap, ...list("To put right:", findings.map(sentence), { indent: 2, bullet: "- " })]),
  ];
}

/** Containers of a kind together, as they are counted into the parcel. */
const containerTable = (contains: readonly Container[]): Block[] =>
  table(
    [{ head: "container" }, right("count"), { head: "numbers" }],
    [...grouped(contains, ({ container }) => container ?? "Not recorded")].map(([container, all]) => [
      container,
      String(all.length),
      all.map(({ id }) => id).join(", "),
    ]),
  );

const states = { kept: "yes", broken: "NO", unrecorded: "?" } as const;

const checkTable = (checks: Checks): Block[] =>
  table(
    [{ head: "is it so" }, { head: "? is not recorded" }],
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
