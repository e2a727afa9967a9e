/**
 * Which files a run may show: those of the repository that it was asked about. A link or a path in a file can lead
 * elsewhere, and whoever can put it there need not be allowed to read what lies there (docs/ci.md).
 */
import { basename, dirname, join, relative, resolve } from "node:path";
import { isLink, kindOf, sameFile } from "./file-kind.ts";
import { isInside } from "./shown-paths.ts";
import { Remembered } from "./witness.ts";

export class Repository {
  readonly #from: string;
  readonly #asked: readonly string[];
  readonly #tops = new Remembered(() => [...new Set(this.#asked.map((path) => this.#topOf(path)))]);

  /** @param from the folder that the run started from; @param asked paths, as written on the command line */
  constructor(from: string, asked: readonly string[]) {
    this.#from = resolve(from);
    this.#asked = asked;
  }

  /** The folders that it begins in. */
  get tops(): readonly string[] {
    return this.#tops.value;
  }

  /** Whether a file lies in it, whatever its path says: links are resolved. */
  holds(location: string): boolean {
    const real = sameFile(location);
    const isAround = aroundCases.has(basename(location)) && !isLink(location);
    return this.tops.some(
      (top) => isInside(relative(top, real)) || (isAround && isInside(relative(dirname(real), top))),
    );
  }

  /** The top folder of the repository, else the current folder, or that of a file asked for elsewhere. */
  #topOf(path: string): string {
    const written = resolve(this.#from, path);
    // Of a pattern, the folder in which it begins.
    const start = kindOf(written) === "nothing" ? written.replace(/[*?[{(!].*/s, "x") : written;
    const folder = kindOf(start) === "folder" ? start : dirname(start);
    const without = isInside(relative(this.#from, start)) ? this.#from : folder;
    return sameFile(repositoryAround(folder).top ?? without);
  }
}

/** Without git, these hold for the cases in all folders below theirs. */
const aroundCases: ReadonlySet<string> = new Set(["carcase.yaml", "farm.yaml"]);

/** A link inside a repository does not lead into another. */
function repositoryAround(folder: string): { readonly top?: string; readonly isLeft?: true } {
  const above = dirname(folder) === folder ? {} : repositoryAround(dirname(folder));
  if (above.top !== undefined && (above.isLeft || isLink(folder))) return { top: above.top, isLeft: true };
  return kindOf(join(folder, ".git")) === "nothing" ? above : { top: folder };
}
