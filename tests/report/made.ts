/** Reports of the example, and of a case that means ill. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readCases } from "../../src/cases/index.ts";
import type { Dress } from "../../src/formats/report/dress.ts";
import { inertHtml } from "../../src/formats/report/inert.ts";
import { makeReport, type ReportResult } from "../../src/report/index.ts";

const made = (paths: readonly string[]): ReportResult =>
  makeReport(readCases(paths), { version: "0.0.0", files: [{ file: "a.yaml", sha256: "0".repeat(64) }] });

export const reports: Readonly<Record<ReportResult["of"], ReportResult>> = {
  case: made(["cases-example/alder-farm/2026-03-14/pig-01.yaml"]),
  visit: made(["cases-example/alder-farm/2026-03-14"]),
  farm: made(["cases-example/alder-farm"]),
};

const markup = `<script>alert(1)</script><img src=x onerror=alert(1)>](javascript:alert(1)) "'\`&amp; \\u202eevil`;
const long = "W".repeat(10_000);

/** A visit whose every free text is markup, or a word of ten thousand letters. */
export function hostileReport(): ReportResult {
  const folder = mkdtempSync(join(tmpdir(), "carcase-report-"));
  try {
    const text = JSON.stringify(markup);
    writeFileSync(
      join(folder, "visit.yaml"),
      `format: 1\nvisit: v-1\ndate: 2026-03-14\nveterinarian: ${text}\ncomplaint: ${text}\nquestion: ${JSON.stringify(long)}\ntreatments: [${text}]\nchanges: [2026-03-10 ${long}]\nrecommendations: [${text}, ${long}]\ncases: [v-1-01, v-1-02]\n`,
    );
    for (const pig of ["01", "02"])
      writeFileSync(
        join(folder, `pig-${pig}.yaml`),
        `format: 1\ncase: v-1-${pig}\nprotocol: full\npig: {age: 50 d}\nselection: {basis: clinical, signs: [cough]}\nrespiratory:\n  lungs:\n    consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 3, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}\n    findings: [{process: consolidation, site: ${text}, distribution: cranioventral, note: ${text}}]\nnervous: {brain: {not_examined: ${text}}}\nsamples: [{id: ${pig}-A, from: respiratory.lungs, into: chilled, for: [pcr], note: ${text}}]\ndiagnosis: {morphologic: [${text}], aetiologic: [${long}], differentials: [${text}]}\n`,
      );
    return made([folder]);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A point, as a picture. */
const point =
  "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";

/** The visit with three photographs: in the page, linked, and neither. */
export const photographed: ReportResult = {
  ...reports.visit,
  pigs: reports.visit.pigs.map((pig, index) => ({
    ...pig,
    photographs: [index < 3 ? `${index}` : []].flat().map((sha256) => ({
      file: `photos/${long}.jpg`,
      shows: "respiratory.lungs",
      note: markup,
      sha256,
    })),
  })),
};

/** All that a practice can put around a report. */
export const dress: Dress = {
  letterhead: {
    name: `Practice ${long}`,
    address: [markup, "Elmbridge"],
    telephone: "555 0100",
    logo: point,
  },
  extra: new Map([["terms", { title: "Terms", body: [markup, long] }]]),
  order: { farm: ["next", "terms"] },
  replaced: new Map([
    [
      "herd",
      inertHtml(
        `<h3>Own</h3><table><tr><th scope="col">${long}</th><td>a</td></tr></table><ul><li><a href="#terms">b</a></li></ul>`,
      ),
    ],
  ]),
  photographs: new Map([
    ["0", { embedded: point, width: 600, height: 1200 }],
    ["1", { link: `photos/${long}.jpg` }],
  ]),
};
