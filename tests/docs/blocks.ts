/** Code blocks of the documentation. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));
export const fence = /^```([^\n]*)\n([\s\S]*?)^```$/gm;

export interface Block {
  /** The last heading above it. */
  readonly heading: string;
  readonly info: string;
  readonly body: string;
}

export const textOf = (page: string): string => readFileSync(join(root, page), "utf8");

export function blocksOf(page: string): Block[] {
  const text = textOf(page);
  return [...text.matchAll(fence)].map(({ 1: info = "", 2: body = "", index }) => ({
    heading:
      [
        ...text
          .slice(0, index)
          .replaceAll(fence, "")
          .matchAll(/^#+ (.*)$/gm),
      ].at(-1)?.[1] ?? "",
    info,
    body,
  }));
}

/** What a console block should say: each command with what `run` prints of it, cut where the block was cut. */
export function played(body: string, run: (line: string) => string): string {
  const entries = body.split(/^(?=\$ )/m);
  return entries
    .map((entry) => {
      const [command = "", ...shown] = entry.trimEnd().split("\n");
      const printed = run(command.slice(2)).trimEnd().split("\n");
      const cut = shown.at(-1) === "…";
      const lines = cut ? [...printed.slice(0, Math.max(1, shown.length - 1)), "…"] : printed;
      return [command, ...lines].map((line) => `${line.trimEnd()}\n`).join("");
    })
    .join("");
}
