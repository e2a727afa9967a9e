/** Names that people write in more than one way: `S-1` and `s-1` are one litter, `R. Sallow` and `r sallow` one person. */

/** The same for every way to write a name: small letters, one blank for blanks, hyphens and full stops. */
export const plainName = (name: string | number): string =>
  `${name}`
    .toLowerCase()
    .replaceAll(/[\s._-]+/g, " ")
    .trim();

/** Whether two names are one, such as those of two bags; a missing one is none. */
export const isOneName = (first: string | number | undefined, second: string | number | undefined): boolean =>
  first !== undefined && second !== undefined && plainName(first) === plainName(second);
