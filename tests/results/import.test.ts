/** A laboratory's table becomes a file of results, all of it or nothing, and what is wrong is told cell by cell. */
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { importResults } from "../../src/results/index.ts";
import { TableFault } from "../../src/tally/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";

const pig =
  "format: 1\ncase: v-1\nsamples: [{id: 1-A, from: respiratory.lungs}, {id: 1-B, from: blood}, {id: 1-C, from: lymphoid.tonsil}]\n";

function imported(
  table: string,
  {
    settings = "format: 1\n",
    results,
    ...wish
  }: Partial<Record<"settings" | "results" | "test" | "agent", string>> = {},
) {
  const folder = temporaryFolder();
  put(folder, {
    "carcase.yaml": settings,
    "visit.yaml": "format: 1\nvisit: v\ndate: 2026-04-20\n",
    "1.yaml": pig,
    ...(results !== undefined && { "results.yaml": results }),
  });
  const read = importResults({
    file: "report 17.csv",
    bytes: Buffer.from(table),
    folder,
    config: undefined,
    test: wish.test,
    agent: wish.agent,
  });
  return { folder, read };
}

function textOf(...given: Parameters<typeof imported>): string {
  const { read } = imported(...given);
  if (!("text" in read)) throw new Error(JSON.stringify(read.faults));
  return read.text;
}

function faultsOf(...given: Parameters<typeof imported>): string[] {
  try {
    imported(...given);
  } catch (error) {
    if (!(error instanceof TableFault)) throw error;
    return error.faults.map(({ line, column, message }) => `${line}:${column}: ${message}`);
  }
  return [];
}

describe("a table of results", () => {
  it("is read with names, words, dates and decimal commas as laboratories write them", () => {
    expect(
      textOf(
        "sample;test;agent;ct;interpretation;date\n1-A;real-time PCR;Mhyo;29,6;Detected;18.03.2027\n1-A+1-C;PCR;influenza A;;neg;18.03.2027\n1-B;ELISA;PRRS;;+/-;18.03.2027\n",
      ),
    ).toBe(`format: 1
results: v
entries:
  - {sample: "1-A", test: pcr, method: real-time PCR,
     agent: mycoplasma-hyopneumoniae, ct: 29.6, interpretation: positive,
     date: 2027-03-18}
  - {pool: ["1-A", "1-C"], test: pcr, agent: influenza-a,
     interpretation: negative, date: 2027-03-18}
  - {sample: "1-B", test: serology, method: ELISA, agent: prrsv,
     interpretation: inconclusive, date: 2027-03-18}
`);
  });

  it("gives a file that is read back without a fault", () => {
    const { folder, read } = imported(
      'sample,analyte,value,unit,note\n1-A,"sodium: brain",2300,mg/kg,"#1, wet"\n1-B,selenium,"<0,05",mg/l,\n',
      { test: "toxicology" },
    );
    if (!("text" in read)) throw new Error("not mapped");
    expect(read.name).toBe("results-report-17.yaml");
    put(folder, { [read.name]: read.text });
    const archive = readCases([folder]);
    expect(archive.unreadable).toEqual([]);
    const [file] = archive.visits[0]?.results ?? [];
    expect(file?.faults).toEqual([]);
    expect(file?.record.entries).toEqual([
      {
        sample: "1-A",
        test: "toxicology",
        analyte: "sodium: brain",
        value: 2300,
        unit: "mg/kg",
        note: "#1, wet",
      },
      { sample: "1-B", test: "toxicology", analyte: "selenium", value: "< 0.05", unit: "mg/l" },
    ]);
    expect(lintCases(archive).findings.filter(({ file: name }) => name.includes("results"))).toEqual([]);
  });

  it("joins the drugs of one isolate", () => {
    const text = textOf(
      "sample,test,agent,drug,mic,category,standard,year\n1-A,MIC,P. multocida,florfenicol,0.5,s,VET01S,2024\n1-A,MIC,P. multocida,tetracycline,>16,R,VET01S,2024\n",
    );
    expect(text.match(/- \{sample/g)).toHaveLength(1);
    expect(text).toContain("{drug: florfenicol, mic: 0.5, category: S, standard: VET01S, year: 2024}");
    expect(text).toContain('mic: "> 16", category: R');
  });

  it("takes heads and words from the settings, and proposes a map for those that nobody knows", () => {
    const settings =
      "format: 1\nimport: {results_columns: {Nr: sample, Keim: {to: agent, words: {KEIM7: prrsv}}, X: skip}}\n";
    const table = "Nr;Keim;X;Outcome\n1-A;KEIM7;who;pos\n";
    const { read } = imported(table, { settings, test: "pcr" });
    expect("unknown" in read && read.unknown).toEqual([
      { head: "Outcome", to: "interpretation", such: ["pos"] },
    ]);
    expect(textOf(table.replace("Outcome", "interpretation"), { settings, test: "pcr" })).toContain(
      "agent: prrsv, interpretation: positive",
    );
  });

  it("tells every fault by line, column and cell, and imports nothing then", () => {
    expect(
      faultsOf(
        "sample,test,agent,interpretation,date\n1-A,pcr,Mhio,positive,2026-05-01\n1-Q,pcr,Mhyo,positive,2026-05-01\n1-B,pcr,Mhyo,maybe,2026-05-01\n,pcr,Mhyo,positive,2026-05-01\n1-A,magic,Mhyo,positive,05/04/26\n",
      ),
    ).toEqual([
      '2:9: cell C2: "Mhio" is no agent known here. Did you mean mycoplasma-hyopneumoniae? Or map the word in carcase.yaml',
      "3:1: cell A3: no case of v has a sample 1-Q. Did you mean 1-C?",
      expect.stringMatching(/^4:14: cell D4: "maybe" is neither positive nor negative/),
      "5:2: cell B5: this row names no sample; write its number, or empty the row",
      expect.stringMatching(/^6:5: cell B6: "magic" is no test known here/),
      expect.stringMatching(/^6:\d+: cell E6: "05\/04\/26" is no date/),
    ]);
  });

  it("refuses what stands beside the visit already, or twice in the table", () => {
    const row = "1-A,pcr,Mhyo,positive\n";
    expect(
      faultsOf(`sample,test,agent,interpretation\n${row}${row}`, {
        results:
          "format: 1\nresults: v\nentries: [{sample: 1-B, test: pcr, agent: prrsv, interpretation: negative}]\n",
      }),
    ).toEqual(["3:1: cell A3: this result stands in line 2 already; take one of them out"]);
    expect(
      faultsOf("sample,test,agent,interpretation\n1-B,pcr,PRRS,positive\n", {
        results:
          "format: 1\nresults: v\nentries: [{sample: 1-B, test: pcr, agent: prrsv, interpretation: negative}]\n",
      }),
    ).toEqual([expect.stringMatching(/^2:1: cell A2: this result stands in .*results\.yaml:3 already/)]);
  });

  it("asks for a sample and a test before anything else, and for a visit", () => {
    expect(faultsOf("agent,interpretation\nMhyo,positive\n")).toEqual([
      expect.stringContaining("no column is called sample"),
      expect.stringContaining("no column says which test"),
    ]);
    expect(() =>
      importResults({
        file: "a.csv",
        bytes: Buffer.from("sample\n1\n"),
        folder: temporaryFolder(),
        config: undefined,
        test: "pcr",
        agent: undefined,
      }),
    ).toThrow("there is no visit.yaml in it");
    expect(() => imported("sample\n1-A\n", { test: "pcrr" })).toThrow("Did you mean pcr?");
  });
});
