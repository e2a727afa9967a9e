/** Cases are mostly called after their visit: `03` for alder-2026-03-14-03 of alder-2026-03-14. */
export const shortId = (id: string, visit: string | undefined): string =>
  visit !== undefined && id.startsWith(`${visit}-`) ? id.slice(visit.length + 1) : id;
