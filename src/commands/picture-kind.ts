/** What a picture is, by its first bytes and not by its name. */

const kinds = [
  ["image/jpeg", /^\xff\xd8\xff/],
  ["image/png", /^\x89PNG\r\n\x1a\n/],
  ["image/webp", /^RIFF.{4}WEBP/s],
  ["HEIC", /^.{4}ftyp(?:hei[cmsx]|hev[cmsx]|mif1|msf1)/s],
] as const;

export type PictureKind = (typeof kinds)[number][0];

export function pictureKind(bytes: Buffer): PictureKind | undefined {
  const start = bytes.toString("latin1", 0, 16);
  return kinds.find(([, begins]) => begins.test(start))?.[0];
}
