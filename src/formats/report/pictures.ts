/** The figures of a report, made of its data in the words of its reader. */
import { lobeNames } from "../../drawings/lungs.ts";
import {
  bodyMap,
  caseTimes,
  completeness,
  type Drawing,
  distribution,
  type ForestRow,
  figure,
  forest,
  lungMap,
  type PleurisyPlace,
  snoutSections,
  timetable,
  visitToVisit,
} from "../../figures/index.ts";
import { systems } from "../../knowledge/index.ts";
import {
  medianOf,
  type ReportPig,
  type ReportResult,
  type ReportScale,
  type ReportWords,
} from "../../report/index.ts";

/** A figure with its caption; `description` says in words what it shows. */
export interface Picture {
  readonly id: string;
  readonly caption: string;
  readonly svg: string;
}

const picture = (id: string, caption: string, description: string, drawing: Drawing): Picture => ({
  id,
  caption,
  svg: figure({ id, title: caption, description }, drawing),
});

const quarters = (first: string, words: ReportWords): string[] => [
  first,
  ...[0.25, 0.5, 0.75].map((share) => words.say("up_to", { share })),
  words.say("more_than"),
];

const lobeWords = (words: ReportWords) => ({ left: words.say("left"), right: words.say("right") });

/** How often each lobe was affected; nothing where no lungs were graded. */
export function groupLungs({ pigs }: ReportResult, words: ReportWords): Picture[] {
  const graded = pigs.flatMap(({ lobes }) => (lobes === null ? [] : [lobes]));
  if (graded.length < 2) return [];
  const told = lobeNames.map((lobe) => {
    const values = graded.flatMap((lobes) => lobes[lobe] ?? []);
    const affected = values.filter((value) => value > 0);
    const mean =
      values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length / 100;
    const hint = words.say("lobe_pigs", {
      lobe: words.name("lobes", lobe),
      affected: affected.length,
      examined: values.length,
      mean,
    });
    return {
      lobe,
      share: values.length === 0 ? undefined : affected.length / values.length,
      shown: values.length === 0 ? "" : `${affected.length}/${values.length}`,
      hint,
    };
  });
  return [
    picture(
      "lungs",
      words.say("lungs_group"),
      words.say("lungs_desc", { list: told.map(({ hint }) => hint).join("; ") }),
      lungMap({
        id: "lungs",
        lobes: told,
        words: { ...lobeWords(words), steps: quarters(words.say("none_of_pigs"), words) },
      }),
    ),
  ];
}

const isPlace = (place: string): place is PleurisyPlace =>
  ["cranioventral", "dorsocaudal-focal", "dorsocaudal-extensive"].includes(place);

export function pigLungs({ id, lobes, pleurisy }: ReportPig, words: ReportWords): Picture[] {
  if (lobes === null) return [];
  const told = lobeNames.map((lobe) => {
    const value = lobes[lobe];
    const shown = value === undefined ? "" : words.percent(value / 100);
    return {
      lobe,
      share: value === undefined ? undefined : value / 100,
      shown,
      hint: words.say("lobe_pig", {
        lobe: words.name("lobes", lobe),
        share: shown === "" ? words.say("nobody_graded") : shown,
      }),
    };
  });
  const places =
    pleurisy === null
      ? undefined
      : { left: pleurisy.left.filter(isPlace), right: pleurisy.right.filter(isPlace) };
  return [
    picture(
      "lungs",
      words.say("lungs_pig", { pig: id }),
      words.say("lungs_desc", { list: told.map(({ hint }) => hint).join("; ") }),
      lungMap({
        id: "lungs",
        lobes: told,
        ...(places !== undefined && { pleurisy: places }),
        words: {
          ...lobeWords(words),
          steps: [words.percent(0), ...quarters("", words).slice(1)],
          pleurisy: words.say("adhesions"),
        },
      }),
    ),
  ];
}

/** Each snout at the grades of its conchae, with its grade on the scale that is told first. */
export function snouts({ pigs, scales }: ReportResult, words: ReportWords): Picture[] {
  const scale = scales.find(({ organ }) => organ === "respiratory.turbinates");
  const cut = pigs.filter(({ conchae }) => conchae !== null);
  if (cut.length === 0) return [];
  const told = cut.map(({ id, conchae, scores }) => {
    const grade = scores.find((one) => one.scale === scale?.scale)?.value;
    const shown = grade === undefined ? words.say("nobody_graded") : words.number(grade);
    const side = (of: { dorsal: number | null; ventral: number | null } | undefined) => ({
      dorsal: of?.dorsal ?? undefined,
      ventral: of?.ventral ?? undefined,
    });
    const septum = conchae?.septum;
    return {
      left: side(conchae?.left),
      right: side(conchae?.right),
      septum: septum === "straight" || septum === "slight" || septum === "marked" ? septum : undefined,
      name: pigs.length > 1 ? tail(id) : id,
      grade: shown,
      hint: words.say("snout_pig", { pig: id, grade: shown }),
    } as const;
  });
  return [
    picture(
      told.length === 1 ? "snout" : "snouts",
      words.say("snouts", {
        title: scale === undefined ? "" : words.name("scales", scale.scale, scale.title),
      }),
      words.say("snouts_desc", { n: told.length, list: told.map(({ hint }) => hint).join("; ") }),
      snoutSections({
        snouts: told,
        words: { left: words.say("pigs_left"), right: words.say("pigs_right") },
        ...(told.length === 1 && { cell: 300 }),
      }),
    ),
  ];
}

/** The number of a pig, where its visit is told anyway. */
const tail = (id: string): string => id.slice(id.lastIndexOf("-") + 1);

/** Pigs by grade, a row a visit and way of choosing. */
export function grades({ pigs, scales, visits }: ReportResult, words: ReportWords): Picture[] {
  return scales
    .filter(({ grades: all }) => all.length > 1)
    .flatMap((scale) => {
      const rows = rowsOf(pigs, scale, visits.length > 1, words);
      if (rows.length === 0) return [];
      const title = `${words.name("scales", scale.scale, scale.title)}${scale.from_memory ? "*" : ""}`;
      const listed = (values: readonly number[]) =>
        scale.grades.flatMap((grade) => {
          const n = values.filter((value) => value === grade).length;
          return n === 0 ? [] : [words.say("grade_count", { grade: words.number(grade), n })];
        });
      return [
        picture(
          `grades-${scale.scale}`,
          words.say("grades_of", { title }),
          words.say("grades_desc", {
            title,
            list: rows
              .map(({ name, values }) => words.say("grades_row", { name, list: listed(values).join(", ") }))
              .join("; "),
          }),
          distribution({
            groups: rows.map(({ name, values }) => ({
              name,
              number: words.say("n_pigs", { n: values.length }),
              counts: new Map(
                scale.grades.map((grade) => [grade, values.filter((value) => value === grade).length]),
              ),
              hint: words.say("grades_row", { name, list: listed(values).join(", ") }),
            })),
            grades: scale.grades.map((grade) => ({ grade, shown: words.number(grade) })),
            words: { grade: words.say("grade") },
          }),
        ),
      ];
    });
}

function rowsOf(pigs: readonly ReportPig[], { scale }: ReportScale, withVisit: boolean, words: ReportWords) {
  const rows = new Map<string, number[]>();
  for (const { visit, basis, scores } of pigs) {
    const value = scores.find((one) => one.scale === scale)?.value;
    if (value === undefined) continue;
    const name = [
      ...(withVisit && visit !== null ? [dayOf(visit)] : []),
      words.name("bases", basis ?? ""),
    ].join(", ");
    rows.set(name, [...(rows.get(name) ?? []), value]);
  }
  return [...rows].map(([name, values]) => ({ name, values }));
}

/** The day in the id of a visit, where there is one. */
const dayOf = (visit: string): string => /\d{4}-\d{2}-\d{2}/.exec(visit)?.[0] ?? visit;

/** The shares of what is told first. */
export function shares({ shares: all, visits }: ReportResult, words: ReportWords): Picture[] {
  if (all.length === 0) return [];
  const told = all.map((one) => {
    const { visit, indicator, basis, affected, examined, proportion, limits, level } = one;
    const title = words.name("indicators", indicator, one.title);
    const chosen = words.name("bases", basis ?? "");
    const name = [...(visits.length > 1 && visit !== null ? [dayOf(visit)] : []), chosen].join(", ");
    const row = words.say("forest_row", { title, basis: name, affected, examined });
    const hint =
      limits === null ? row : words.say("forest_limits", { row, level, low: limits[0], high: limits[1] });
    return {
      indicator,
      title,
      hint,
      row: {
        name,
        counted: words.say("count_of", { affected, examined }),
        share: proportion ?? undefined,
        limits: limits ?? undefined,
        hint,
      } satisfies ForestRow,
      from_memory: one.from_memory,
    };
  });
  const ids = [...new Set(told.map(({ indicator }) => indicator))];
  return [
    picture(
      "forest",
      words.say("forest"),
      words.say("forest_desc", { list: told.map(({ hint }) => hint).join(". ") }),
      forest({
        parts: ids.map((id) => {
          const rows = told.filter(({ indicator }) => indicator === id);
          return {
            heading: `${rows[0]?.title ?? id}${rows.some((row) => row.from_memory) ? "*" : ""}`,
            rows: rows.map(({ row }) => row),
          };
        }),
        percent: words.percent,
        words: {
          limits: words.say("limits", { level: all[0]?.level ?? 0.95 }),
          thesePigs: words.say("these_pigs"),
        },
      }),
    ),
  ];
}

/** Every pig of each visit on the scales that are told first. */
export function changes(
  { visits, pigs, scales }: ReportResult,
  words: ReportWords,
  stands: (basis: string | null) => boolean,
): Picture[] {
  if (visits.length < 2) return [];
  return scales.flatMap((scale) => {
    const title = `${words.name("scales", scale.scale, scale.title)}${scale.from_memory ? "*" : ""}`;
    const told = visits.map(({ id, date }) => {
      const dots = pigs.flatMap((pig) => {
        const value =
          pig.visit === id ? pig.scores.find((one) => one.scale === scale.scale)?.value : undefined;
        return value === undefined
          ? []
          : [
              {
                value,
                stands: stands(pig.basis),
                hint: words.say("snout_pig", { pig: pig.id, grade: words.number(value) }),
              },
            ];
      });
      const values = dots.filter((dot) => dot.stands).map(({ value }) => value);
      const middle = (values.length > 0 ? values : dots.map(({ value }) => value)).toSorted((a, b) => a - b);
      return {
        name: date ?? id,
        number: words.say("n_pigs", { n: dots.length }),
        pigs: dots,
        median: middle.length === 0 ? undefined : medianOf(middle),
      };
    });
    if (told.filter(({ pigs: dots }) => dots.length > 0).length < 2) return [];
    const list = told
      .map(({ name, median, pigs: dots }) =>
        words.say("visit_dots", { visit: name, median: median ?? 0, n: dots.length }),
      )
      .join("; ");
    return [
      picture(
        `change-${scale.scale}`,
        words.say("visit_to_visit", { title }),
        words.say("visit_to_visit_desc", { list }),
        visitToVisit({
          visits: told,
          least: scale.least,
          most: Math.min(
            scale.most,
            Math.max(...told.flatMap(({ pigs: dots }) => dots.map(({ value }) => value)), scale.least + 1),
          ),
          number: words.number,
          whole: scale.grades.length > 1,
          words: {
            median: words.say("middle_pig"),
            drawn: words.say("drawn"),
            chosen: words.say("chosen_dot"),
            scale: title,
          },
        }),
      ),
    ];
  });
}

/** Systems that belong to these pigs: nobody looks for a placenta in a weaner. */
const systemsOf = (pigs: readonly ReportPig[]): readonly { id: string; title: string }[] =>
  systems.filter(({ id }) =>
    pigs.some((pig) => pig.systems[id] !== undefined && pig.systems[id].looked !== "blank"),
  );

export function lookedAt({ pigs, visits }: ReportResult, words: ReportWords): Picture[] {
  const shown = systemsOf(pigs);
  if (pigs.length < 2 || shown.length === 0) return [];
  const states = ["lesion", "normal", "left", "blank"] as const;
  const named = {
    lesion: words.say("something"),
    normal: words.say("normal"),
    left: words.say("not_examined"),
    blank: words.say("blank"),
  };
  const list = shown
    .map(({ id }) => {
      const [lesion, normal, left, blank] = states.map(
        (state) => pigs.filter((pig) => (pig.systems[id]?.looked ?? "blank") === state).length,
      );
      return words.say("grid_row", {
        system: words.name("systems", id),
        lesion: lesion ?? 0,
        normal: normal ?? 0,
        left: left ?? 0,
        blank: blank ?? 0,
      });
    })
    .join("; ");
  return [
    picture(
      "grid",
      words.say("grid"),
      words.say("grid_desc", { pigs: pigs.length, list }),
      completeness({
        systems: shown.map(({ id }) => words.name("systems", id)),
        pigs: pigs.map(({ id, systems: of }) => ({
          name: visits.length > 1 ? id : tail(id),
          looked: shown.map((system) => {
            const { looked = "blank", reason = null } = of[system.id] ?? {};
            const name = `${words.name("systems", system.id)}: ${named[looked]}`;
            return { state: looked, hint: reason === null ? name : `${name} (${reason})` };
          }),
        })),
        words: named,
      }),
    ),
  ];
}

export function body({ pigs }: ReportResult, words: ReportWords): Picture[] {
  const told = systemsOf(pigs).map(({ id }) => {
    const examined = pigs.filter((pig) =>
      ["lesion", "normal"].includes(pig.systems[id]?.looked ?? "blank"),
    ).length;
    const affected = pigs.filter((pig) => pig.systems[id]?.looked === "lesion").length;
    const name = words.name("systems", id);
    return {
      id,
      name,
      affected,
      examined,
      hint: `${name}: ${words.say("count_of", { affected, examined })}`,
    };
  });
  if (told.every(({ affected }) => affected === 0)) return [];
  return [
    picture(
      "body",
      words.say("body_map"),
      words.say("body_map_desc", { n: pigs.length, list: told.map(({ hint }) => hint).join("; ") }),
      bodyMap({ systems: told, words: { notExamined: words.say("not_examined") } }),
    ),
  ];
}

/** From death to fixation, of one pig. */
export function times({ of, pigs }: ReportResult, words: ReportWords): Picture[] {
  const [pig] = pigs;
  if (of !== "case" || pig === undefined || pig.steps.length === 0) return [];
  const named = (what: string): string =>
    what === "opened"
      ? words.say("opened", { n: 1 })
      : what === "gut_fixed"
        ? words.name("systems", "intestine")
        : what;
  const steps = pig.steps.map(({ hours, what, late }) => ({
    hours,
    name: named(what),
    hint: `${named(what)}: ${words.number(hours, 2)}`,
    late,
  }));
  return [
    picture(
      "times",
      words.say("times_pig", { pig: pig.id }),
      words.say("times_desc", { list: steps.map(({ hint }) => hint).join("; ") }),
      caseTimes({
        steps,
        limits: pig.limits.map(({ test, hours }) => ({ hours, name: words.name("tests", test) })),
        hours: (value) => words.number(value),
        words: { hours: words.say("hours_after_death"), limit: words.say("keeps") },
      }),
    ),
  ];
}

/** The days of a herd problem. */
export function days({ visits }: ReportResult, words: ReportWords): Picture[] {
  const isDay = (text: string | null): text is string => text !== null && /^\d{4}-\d{2}-\d{2}/.test(text);
  const onset = new Map(
    visits.flatMap(({ groups }) =>
      groups.flatMap(({ name, onset: day }) =>
        isDay(day) ? [[`${name} ${day}`, { from: day, name }] as const] : [],
      ),
    ),
  );
  const rows = [
    { name: words.say("onset"), entries: [...onset.values()] },
    {
      name: words.say("treatments"),
      entries: visits.flatMap(({ treatments }) =>
        treatments.flatMap(({ words: what, from, to }) =>
          isDay(from) ? [{ from, ...(isDay(to) && { to }), name: what }] : [],
        ),
      ),
    },
    {
      name: words.say("visits"),
      entries: visits.flatMap(({ date, pigs }) =>
        isDay(date) ? [{ from: date, name: words.say("opened", { n: pigs }) }] : [],
      ),
    },
    {
      name: words.say("samples"),
      entries: visits.flatMap(({ reported }) =>
        reported.flatMap(({ day, results }) =>
          isDay(day) ? [{ from: day, name: words.say("came", { n: results }) }] : [],
        ),
      ),
    },
    {
      name: words.say("changes"),
      entries: visits.flatMap(({ changes: some }) =>
        some.flatMap((change) => {
          const day = /\d{4}-\d{2}-\d{2}/.exec(change)?.[0];
          return day === undefined ? [] : [{ from: day, name: change.replace(day, "").trim() }];
        }),
      ),
    },
  ].filter(({ entries }) => entries.length > 0);
  if (rows.length < 2) return [];
  return [
    picture(
      "days",
      words.say("timetable"),
      words.say("timetable_desc", {
        list: rows
          .flatMap(({ name, entries }) => entries.map(({ from, name: what }) => `${from} ${name}: ${what}`))
          .join("; "),
      }),
      timetable({ rows, day: words.month, near: words.dayOfMonth }),
    ),
  ];
}
