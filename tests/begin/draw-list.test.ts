/** The list that `plan choose` wrote, read again. */
import { describe, expect, it } from "vitest";
import { DrawError, readDraw } from "../../src/begin/index.ts";
import { planCsv, planJson } from "../../src/formats/plan/data.ts";
import { farmFrame, planChoose, tagsFrame } from "../../src/plan/index.ts";

const tags = planChoose({
  frame: tagsFrame('2201\n0202\n"x"\n2204\n2205\n'),
  unit: "tags",
  take: 3,
  reserve: 2,
  seed: 7,
});
const groups = planChoose({
  frame: farmFrame({ groups: { "g-1": { head: 40 }, "g-2": { head: 30 } } }, { unit: "pigs" }),
  unit: "pigs",
  take: 4,
  reserve: 1,
  seed: 3,
});

describe("a list of a draw", () => {
  it.each([
    ["csv", planCsv],
    ["json", planJson],
  ])("gives pigs and reserve in the order in which they were drawn: %s", (_, written) => {
    for (const plan of [tags, groups]) {
      const { pigs, reserve } = readDraw("draw", written(plan));
      const inOrder = (use: string) =>
        plan.table.rows
          .filter((row) => row.use === use)
          .sort((a, b) => Number(a.drawn) - Number(b.drawn))
          .map(({ tag }) => String(tag));
      expect(pigs.map(({ name }) => name)).toEqual(inOrder("examine"));
      expect(reserve.map(({ name }) => name)).toEqual(inOrder("reserve"));
      expect(pigs.map(({ order }) => order)).toEqual(pigs.map((_one, index) => index + 1));
    }
    expect(readDraw("draw", written(tags)).pigs[0]?.tag).toBeDefined();
    expect(readDraw("draw", written(groups)).pigs[0]).toMatchObject({
      tag: undefined,
      group: expect.stringMatching(/^g-/),
    });
  });

  it("knows the seed where the list says it", () => {
    expect([readDraw("draw", planJson(tags)).seed, readDraw("draw", planCsv(tags)).seed]).toEqual([
      7,
      undefined,
    ]);
  });

  it.each([
    ["use,drawn,line,tag\nexamin,1,1,2201\n", 'draw.csv:2:1: use: "examin" is not one of examine, reserve'],
    ["use,drawn,line,tag\nexamine,one,1,2201\n", 'draw.csv:2:9: drawn: "one" is no number'],
    ["use,drawn,line,tag\nexamine,1,1,\n", "draw.csv:2:13: tag: it is left blank"],
    ["use,drawn,line,tag\nexamine,1,1,2201\nexamine,1,2,2202\n", "draw.csv:3:9: drawn: 1 stands twice"],
    ["use,drawn,line,tag\nexamine,1,1,2201\nreserve,1,2,2201\n", 'draw.csv:3:13: tag: "2201" stands twice'],
    ["use,drawn,line,tag\nexamine,1,1\n", "draw.csv:2:1: 3 cells under 4 columns"],
    ["use,drawn,group,tag\nexamine,1,g-1,g-1 pen 4\n", 'draw.csv:2:15: tag: "g-1 pen 4" is a pen'],
    ["use,drawn,group,tag\nexamine,1,g-2,g-1 pig 4\n", 'draw.csv:2:11: group: "g-2" and "g-1 pig 4"'],
    ["use,drawn,line,tag\nreserve,1,1,2201\n", "draw.csv: no pig to examine is in it"],
    ["2201\n2202\n", "draw.csv:1:1: there is no column use"],
    ['use,drawn,line,tag\nexamine,1,1,"2201\n', "draw.csv:2: the table ends within a cell"],
    ["", "draw.csv:1:1: there is no column use"],
    [
      '{"plan": "choose",\n "table": [\n  {"use": "examine", "drawn": 0, "tag": "1"}]}',
      'draw.csv:3:31: drawn: "0" is no number',
    ],
    ['{"plan": "detect", "table": []}', "draw.csv:1:10: this is no list of a draw"],
    ['{"plan": "choose", "table": [3]}', "draw.csv:1:30: table[0] is no row"],
    ['{"plan": ', "draw.csv:1:"],
    ["[1, 2]", "draw.csv:1:1:"],
  ])("is refused with line, column and what to write: %j", (text, says) => {
    let fault: unknown;
    try {
      readDraw("draw.csv", text);
    } catch (error) {
      fault = error;
    }
    expect(fault).toBeInstanceOf(DrawError);
    expect((fault as DrawError).message).toContain(says);
  });
});
