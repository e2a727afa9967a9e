/** A code of a sample id: squares that a scanner reads. */
import { datamatrix, drawingSVG, qrcode } from "bwip-js/generic";
import type { CodeKind } from "../../knowledge/label-sheets.ts";

export interface Code {
  /** Squares along a side, without the white around it. */
  readonly squares: number;
  /** Path of SVG. */
  readonly path: string;
  /** Units of the path along a side. */
  readonly units: number;
}

const encoders = {
  datamatrix: (text: string) => datamatrix({ bcid: "datamatrix", text, scale: 1 }, drawingSVG()),
  qr: (text: string) => qrcode({ bcid: "qrcode", text, scale: 1 }, drawingSVG()),
} as const satisfies Record<CodeKind, (text: string) => string>;

/** Units of a square at this scale. */
const unit = 2;

/** @param id ASCII, as the schema of ids has it */
export function codeOf(kind: CodeKind, id: string): Code {
  const svg = encoders[kind](id);
  const units = Number(/viewBox="0 0 (\d+) /.exec(svg)?.[1]);
  return { squares: units / unit, path: /\bd="([^"]*)"/.exec(svg)?.[1] ?? "", units };
}
