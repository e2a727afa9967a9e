/** docs/knife.md is made from the steps: UPDATE_DOCS=1 writes it. Its drawings are drawn by hand, and wear the colours of the figures of the scales. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { explain, type Section } from "../../src/explain/index.ts";
import { type NecropsyStep, necropsySteps } from "../../src/knowledge/knife.ts";
import { every } from "../every.ts";

const page = new URL("../../docs/knife.md", import.meta.url);
const drawing = (name: string): string =>
  readFileSync(new URL(`../../docs/knife/${name}.svg`, import.meta.url), "utf8");
const drawings = readdirSync(new URL("../../docs/knife/", import.meta.url));

const element = (name: string, svg: string): string =>
  new RegExp(`<${name}[^>]*>([\\s\\S]*?)</${name}>`).exec(svg)?.[1] ?? "";

/** A caution names its section of docs/safety.md. */
const linked = (line: string): string =>
  line.replace(/\(Safety: (.*)\)$/, (_, title: string) => {
    const anchor = title.toLowerCase().replaceAll(" ", "-");
    return `([${title}](safety.md#${anchor}))`;
  });

function part({ heading, lines, yaml }: Section): string {
  const said = lines.map(linked);
  if (heading === null) return "";
  if (yaml) return `**${heading}** \`${said.join(" ")}\``;
  if (heading === "Who says so") return `*${heading}.* ${said.join(" ")}`;
  if (said.length === 1) return `**${heading}.** ${said.join("")}`;
  return `**${heading}**\n\n${said.map((line, at) => `${heading === "Cut" ? `${at + 1}.` : "-"} ${line}`).join("\n")}`;
}

function stepPart(step: NecropsyStep, at: number): string {
  const { id, title, figures = [] } = step;
  const [found] = explain(id).filter(({ kind }) => kind === "step");
  const drawn = figures.map((name) => `![${element("title", drawing(name))}](knife/${name}.svg)`);
  const parts = [`## ${at + 1} ${title}`, `\`${id}\``, ...drawn, ...(found?.sections ?? []).map(part)];
  return parts.filter((one) => one !== "").join("\n\n");
}

it("docs/knife.md shows every step as it is explained", () => {
  const text = readFileSync(page, "utf8");
  const made = text.replace(
    /(<!-- steps -->\n)[\s\S]*(<!-- \/steps -->)/,
    (_, open: string, close: string) => `${open}\n${necropsySteps.map(stepPart).join("\n\n")}\n\n${close}`,
  );
  expect(text).toContain("<!-- steps -->");
  if (process.env.UPDATE_DOCS === "1") writeFileSync(page, made);
  else expect(text).toBe(made);
});

describe("the drawings", () => {
  it("belong to a step each, and none is left over", () => {
    const named = necropsySteps.flatMap(({ figures = [] }) => figures);
    expect(named.map((name) => `${name}.svg`).sort()).toEqual(drawings.sort());
  });

  const style = element("style", readFileSync("docs/scales/figures/done-1984.svg", "utf8"));
  every("say in words what they show, and wear the colours of the figures", drawings, (file) => {
    const svg = drawing(file.replace(".svg", ""));
    expect(element("title", svg).length).toBeGreaterThan(20);
    expect(element("desc", svg).length).toBeGreaterThan(80);
    expect(element("style", svg)).toBe(style);
    const body = svg.replace(/<style>[\s\S]*<\/style>/, "");
    const classes = [...body.matchAll(/class="([^"]*)"/g)].flatMap(([, of = ""]) => of.split(" "));
    expect(
      [...new Set(classes)].filter((one) => !style.includes(`.${one} {`) && !style.includes(`.${one},`)),
    ).toEqual([]);
    expect(body).not.toMatch(/href|<script|<image|(?:fill|stroke|style)="/);
  });
});
