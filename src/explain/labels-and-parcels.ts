/** Sheets of labels, and what stands on a parcel. */
import { transportOutside } from "../knowledge/index.ts";
import { labelCodes, labelCodesSource, labelSheets, labelSheetsSource } from "../knowledge/label-sheets.ts";
import { section, type Topic, yamlSection } from "./explanation.ts";

const sheetTopics: readonly Topic[] = [...labelSheets].map(([name, sheet]) => ({
  kind: "label sheet",
  name,
  title: sheet.title,
  aliases: [],
  explain: () => ({
    sections: [
      ...section(null, [
        `${sheet.columns * sheet.rows} labels, ${sheet.columns} across and ${sheet.rows} down. carcase samples labels --sheet ${name} prints on it.`,
      ]),
      ...yamlSection(
        "A sheet of your own, in carcase.yaml, in mm",
        `label_sheets: {ours: {${Object.entries(sheet)
          .map(([key, value]) => `${key}: ${key === "title" ? `"${value}"` : value}`)
          .join(", ")}}}`,
      ),
    ],
    source: labelSheetsSource,
  }),
}));

const codeTopics: readonly Topic[] = Object.entries(labelCodes).map(([name, { least, quiet }]) => ({
  kind: "label sheet",
  name,
  title: `The code on a label: ${name === "qr" ? "QR code" : "DataMatrix"}`,
  aliases: [],
  explain: () => ({
    sections: section(null, [
      `It holds the number of the sample and nothing else. A square of it is at least ${least} mm wide, and the white around it as wide as ${quiet === 1 ? "one square" : `${quiet} squares`}.`,
    ]),
    source: labelCodesSource,
  }),
}));

export const labelTopics: readonly Topic[] = [...sheetTopics, ...codeTopics];

const marks = {
  to: "The address on a parcel",
  contact: "The responsible person on a parcel",
  category_b: "The mark of category B",
  category_a: "The mark of category A",
  exempt: "The mark of an exempt parcel",
  dry_ice: "The mark of dry ice",
} as const satisfies Record<keyof typeof transportOutside, string>;

export const markTopics: readonly Topic[] = Object.entries(transportOutside).map(
  ([key, { write, source }]) => ({
    kind: "parcel mark",
    name: `outside.${key}`,
    title: marks[key as keyof typeof marks],
    aliases: [],
    explain: () => ({ sections: section("Write on the outside", [write]), source }),
  }),
);
