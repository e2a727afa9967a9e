/** What was measured goes into the text of a case: nothing else in it changes. */
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { withMeasured } from "../../src/fix/index.ts";

const path = ["respiratory", "turbinates"];
const sha = "0123456789abcdef".repeat(4);
const measured = {
  tracing: "tracings/a.svg",
  sha256: sha,
  perimeter_ratio: { left: 1.2, right: 1.3, total: 1.25 },
  asymmetry: -0.04,
  septum_deviation: "1.5 mm",
};

function written(text: string, value = measured, at: readonly string[] = path): string {
  const result = withMeasured(text, at, value);
  if (!result.ok) throw new Error(result.why);
  return result.text;
}

const block = `# the case
case: a   # its id
respiratory:
  turbinates:
    section: premolar-1
    tracing: tracings/a.svg   # drawn by hand
    septum: straight
  # lungs next
  lungs: normal
`;

describe("a new entry", () => {
  it("stands on lines of its own below the tracing; comments and order stay", () => {
    expect(written(block)).toBe(
      block.replace(
        "    septum",
        `    measured:
      tracing: tracings/a.svg
      sha256: "${sha}"
      perimeter_ratio: {left: 1.2, right: 1.3, total: 1.25}
      asymmetry: -0.04
      septum_deviation: 1.5 mm
    septum`,
      ),
    );
  });

  it("stands inside braces where the organ does", () => {
    const text =
      "case: a\nrespiratory: {turbinates: {tracing: tracings/a.svg, septum: straight}, lungs: normal} # all\n";
    const after = written(text);
    expect(parse(after).respiratory).toEqual({
      turbinates: { tracing: "tracings/a.svg", septum: "straight", measured },
      lungs: "normal",
    });
    expect(after.startsWith("case: a\nrespiratory: {turbinates: {tracing: tracings/a.svg,\n")).toBe(true);
    expect(after.endsWith(", septum: straight}, lungs: normal} # all\n")).toBe(true);
    for (const line of after.split("\n").slice(2, -2)) expect(line.length).toBeLessThanOrEqual(110);
  });

  it("keeps CRLF, and a last line without its end", () => {
    const crlf = block.replaceAll("\n", "\r\n");
    expect(written(crlf)).toBe(written(block).replaceAll("\n", "\r\n"));
    const short = "case: a\nrespiratory:\n  turbinates:\n    tracing: tracings/a.svg";
    expect(parse(written(short)).respiratory.turbinates.measured).toEqual(measured);
    expect(written(short).endsWith("\n")).toBe(false);
  });

  it("folds a list of figures that is too long for a line", () => {
    const lobes = [
      "left_cranial",
      "left_middle",
      "left_caudal",
      "right_cranial",
      "right_middle",
      "right_caudal",
    ];
    const long = { ...measured, affected_percent: Object.fromEntries(lobes.map((lobe) => [lobe, 12.5])) };
    const after = written(block, long);
    expect(parse(after).respiratory.turbinates.measured).toEqual(long);
    for (const line of after.split("\n")) expect(line.length).toBeLessThanOrEqual(110);
    // Measured again, its figures are found where they stand.
    const later = { ...long, affected_percent: { ...long.affected_percent, right_caudal: 3 } };
    expect(written(after, later)).toBe(after.replace("right_caudal: 12.5", "right_caudal: 3"));
  });

  it("quotes a name that YAML would read as something else", () => {
    const odd = { ...measured, tracing: "12: #x.svg" };
    const text = block.replace("tracings/a.svg   #", '"12: #x.svg"   #');
    expect(parse(written(text, odd)).respiratory.turbinates.measured).toEqual(odd);
  });
});

describe("an entry that is there", () => {
  const full = written(block);
  const later = {
    ...measured,
    sha256: "f".repeat(64),
    perimeter_ratio: { left: 1, right: 1.3, total: 1.15 },
  };

  it("is left alone when nothing changed", () => {
    expect(written(full)).toBe(full);
  });

  it("has only its figures changed; what a person added around them stays", () => {
    const text = full.replace("asymmetry: -0.04", "asymmetry:   -0.04  # left is less");
    expect(written(text, later)).toBe(
      text.replace(`"${sha}"`, "f".repeat(64)).replace("left: 1.2", "left: 1").replace("1.25", "1.15"),
    );
  });

  it("is replaced as a whole when it has other figures, in lines and in braces", () => {
    const { asymmetry: _, ...fewer } = measured;
    const at = (text: string): unknown => parse(text).respiratory.turbinates.measured;
    const after = withMeasured(full, path, fewer);
    expect(after.ok && at(after.text)).toEqual(fewer);
    expect(after.ok && after.text.endsWith("    septum: straight\n  # lungs next\n  lungs: normal\n")).toBe(
      true,
    );
    const flow = written("respiratory: {turbinates: {tracing: tracings/a.svg, septum: straight}}\n");
    const less = withMeasured(flow, path, fewer);
    expect(less.ok && at(less.text)).toEqual(fewer);
  });

  it("is not replaced when a comment in it would be lost", () => {
    const text = full.replace("asymmetry: -0.04", "asymmetry: -0.04  # left is less");
    const { asymmetry: _, ...fewer } = measured;
    expect(withMeasured(text, path, fewer)).toMatchObject({
      ok: false,
      why: expect.stringContaining("comment"),
      entry: expect.stringMatching(/^measured: \{tracing: .*\}$/),
    });
  });

  it.each([
    block.replace("    septum", "    measured:\n    septum"),
    block.replace("    septum", "    measured: ~  # later\n    septum"),
    "respiratory: {turbinates: {tracing: tracings/a.svg, measured: , septum: straight}}\n",
    "respiratory: {turbinates: {tracing: tracings/a.svg, measured: }}\n",
  ])("is filled when it was left blank: %j", (text) => {
    const after = written(text);
    expect(parse(after).respiratory.turbinates.measured).toEqual(measured);
    expect(after.includes("# later")).toBe(text.includes("# later"));
  });
});

it("refuses a text in which it cannot be put safely", () => {
  const text = "base: &b {tracing: tracings/a.svg}\nrespiratory:\n  turbinates: *b\n";
  expect(withMeasured(text, path, measured).ok).toBe(false);
});
