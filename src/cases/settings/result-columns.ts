/** What of a result a column of a laboratory's table can hold, and how such columns are usually headed. */
import { bareName, type CaseColumn } from "./case-columns.ts";

interface Heads {
  readonly kind: CaseColumn["kind"];
  /** In small letters; English, German and Spanish, from memory. */
  readonly heads: readonly string[];
}

const columns: Readonly<Record<string, Heads>> = {
  sample: {
    kind: "text",
    heads: [
      "sample id",
      "sample no",
      "sample number",
      "specimen",
      "probe",
      "proben nr",
      "probennummer",
      "muestra",
      "animal sample",
      "your reference",
    ],
  },
  test: { kind: "text", heads: ["assay", "analysis", "examination", "untersuchung", "prueba", "test type"] },
  method: { kind: "text", heads: ["technique", "methode", "método", "kit"] },
  agent: {
    kind: "text",
    heads: ["pathogen", "target", "organism", "isolate", "erreger", "patógeno", "agente", "disease"],
  },
  analyte: { kind: "text", heads: ["parameter", "substance", "analyt", "analito"] },
  value: {
    kind: "number",
    heads: ["measurement", "concentration", "wert", "messwert", "valor", "s/p", "s/p ratio"],
  },
  unit: { kind: "text", heads: ["units", "einheit", "unidad"] },
  ct: { kind: "number", heads: ["ct value", "cq", "cq value", "cp", "ct wert"] },
  cut_off: { kind: "number", heads: ["cutoff", "threshold", "grenzwert", "limit"] },
  titre: { kind: "text", heads: ["titer", "título"] },
  interpretation: {
    kind: "text",
    heads: ["result", "finding", "outcome", "ergebnis", "befund", "bewertung", "resultado", "conclusion"],
  },
  date: {
    kind: "moment",
    heads: ["result date", "date of result", "reported", "tested on", "datum", "fecha"],
  },
  reference: {
    kind: "text",
    heads: ["lab no", "lab number", "lab id", "report no", "case no", "labornummer", "auftrag"],
  },
  note: { kind: "text", heads: ["comment", "remark", "remarks", "bemerkung", "observación"] },
  text: { kind: "text", heads: ["report", "description", "histology"] },
  drug: {
    kind: "text",
    heads: ["antibiotic", "antimicrobial", "substance tested", "wirkstoff", "antibiótico"],
  },
  mic: { kind: "text", heads: ["mic mg/l", "mhk", "cmi"] },
  zone: { kind: "quantity", heads: ["zone mm", "diameter", "hemmhof", "halo"] },
  category: { kind: "text", heads: ["s/i/r", "sir", "susceptibility"] },
  standard: { kind: "text", heads: ["breakpoints", "guideline", "norm"] },
  year: { kind: "number", heads: ["edition", "jahr", "año"] },
};

export const resultColumns: readonly CaseColumn[] = Object.entries(columns).map(([id, { kind }]) => ({
  id,
  path: [id],
  name: id.replace("_", " "),
  kind,
  unit: kind === "quantity" ? "mm" : undefined,
  title: id,
  usual: true,
}));

const known = new Map(resultColumns.map((column) => [bareName(column.id), column]));

/** The column that is called so: by its own name alone. */
export const resultColumn = (name: string): CaseColumn | undefined => known.get(bareName(name));

/** The column that a head of a laboratory probably means, to be looked through. */
export function likelyResultColumn(head: string): CaseColumn | undefined {
  const bare = bareName(head.replaceAll(/[([][^()[\]]*[)\]]/g, " "));
  return resultColumns.find(
    ({ id }) => bareName(id) === bare || columns[id]?.heads.some((one) => bareName(one) === bare) === true,
  );
}
