/** Links of the pages: a file that is there, a heading that is there. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { every } from "../every.ts";

const pages = [
  "README.md",
  "DEVELOPERS.md",
  "cases-example/README.md",
  ...readdirSync("docs", { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".md"))
    .map((name) => `docs/${name}`),
];

/** A page without its examples. */
const prose = (page: string): string =>
  readFileSync(page, "utf8").replaceAll(/```[\s\S]*?```|`[^`\n]*`/g, "");

/** The headings of a page as anchors. */
const anchors = (page: string): Set<string> =>
  new Set(
    [...readFileSync(page, "utf8").matchAll(/^#+ (.*)$/gm)].map(([, heading = ""]) =>
      heading
        .toLowerCase()
        .replaceAll(/[^\p{L}\p{N}\s_-]/gu, "")
        .replaceAll(" ", "-"),
    ),
  );

const links = pages.flatMap((page) =>
  [...prose(page).matchAll(/\]\(([^)\s]+)\)/g)].map(([, target = ""]) => ({
    id: `${page}: ${target}`,
    page,
    target,
  })),
);

every("a link leads to a file, and to a heading of it", links, ({ page, target }) => {
  const [path = "", anchor] = target.split("#");
  const file = path === "" ? page : join(dirname(page), path);
  if (!existsSync(file)) throw new Error("no such file");
  if (anchor !== undefined && !anchors(file).has(anchor)) throw new Error("no such heading");
});
