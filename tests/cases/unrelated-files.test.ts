/** Other tools keep YAML in a repository, too: it is passed over and counted; a case of ours never is, however broken. */
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { every } from "../every.ts";
import { put, smallCase, temporaryFolder } from "./temporary.ts";

const others: Readonly<Record<string, string | Uint8Array>> = {
  "workflow.yml":
    "name: build\non:\n  push:\n    branches: [main]\njobs:\n  test:\n    runs-on: linux\n    steps:\n      - run: npm test\n",
  "pipeline.yml": "stages: [build, test]\nbuild:\n  script:\n    - !reference [.setup, script]\n    - make\n",
  "steps.yml": "trigger: [main]\nsteps:\n  - script: echo ok\n",
  "docker-compose.yaml":
    "version: '3.8'\nservices:\n  web: &web\n    image: web\n  worker:\n    <<: *web\nvolumes:\n  data: {external: true}\n",
  "manifest.yaml":
    "apiVersion: v1\nkind: Namespace\nmetadata: {name: a}\n---\napiVersion: v1\nkind: ConfigMap\nmetadata:\n  name: b\ndata:\n  case: upper\n",
  "chart/values.yaml": "replicas: 2\nimage:\n  repository: web\nresources: {}\n",
  "chart/templates/deploy.yaml":
    "apiVersion: apps/v1\nkind: Deployment\n{{- if .Values.pig }}\nmetadata:\n  name: {{ .Release.Name }}\n{{- end }}\n",
  "stack.yaml":
    "Resources:\n  Bucket:\n    Type: Store\n    Properties:\n      Name: !Sub '$Stack-x'\n      Arn: !GetAtt Role.Arn\n",
  "hooks.yaml":
    "repos:\n  - repo: local\n    hooks:\n      - id: check\n        name: check\n        entry: make\n",
  "en.yaml": "en:\n  farm: Farm\n  pig: Pig\n  case: Case\n  respiratory: Respiratory\n",
  "named.yaml": "name: site\nversion: 2.1.0\nformat: html\n",
  "book.yml": "project: {type: website}\nformat:\n  html: {toc: true}\n  pdf: default\n",
  "playbook.yml": '---\n- name: set up\n  hosts: all\n  tasks:\n    - name: farm\n      command: "true"\n',
  "empty-vars.yml": "---\n# nothing yet\n",
  "comments.yaml": "# replicas: 2\n# case: upper\n",
  "rules.yml": "groups:\n  - name: alerts\n    rules:\n      - alert: Down\n",
  "api.yaml": "openapi: 3.0.0\ninfo: {title: Farm, version: '1'}\npaths: {}\n",
  "environment.yml": "name: lab\nchannels: [main]\ndependencies: [python]\n",
  "twice.yaml": "a: 1\na: 2\n",
  "anchors.yaml": "x: *nowhere\n",
  "tabs.yaml": "a:\n\tb: 1\n",
  "binary.yaml": Uint8Array.from([0, 1, 2, 255]),
  "utf16.yaml": Uint8Array.from(Buffer.from("\ufeffname: x\n", "utf16le")),
  "latin1.yaml": Uint8Array.from([...Buffer.from("name: caf"), 0xe9, 10]),
  "marks.yaml": "he: \u200fshalom\n",
  "lock.yaml": `lockfileVersion: 9\npackages:\n${"  a@1.0.0: {}\n".repeat(200_000)}`,
  "flow.yaml": '{"name": "x", "items": [1, 2,, 3]}',
  "list.yaml": "- one\n- two\n",
  "text.yaml": "just words\n",
  "a%.yaml": "%YAML 1.1\n---\na: 1\n",
};

/** A case that cannot be read, in many ways. */
const broken: Readonly<Record<string, string | Uint8Array>> = {
  "bracket.yaml": "format: 1\ncase: x\npig: {tag: 1\nrespiratory:\n  lungs: normal\n",
  "format-alone.yaml": "format: 1\nwhat: [\n",
  "format-quoted.yaml": 'format: "1"\nwhat: [\n',
  "format-indented.yaml": "  format: 1\n  what: [\n",
  "key-alone.yaml": "note: [\nliver_pancreas:\n  liver: normal\n",
  "tag.yaml": "case: x\npig: !mine {tag: 1}\n",
  "two.yaml": "case: x\n---\ncase: y\n",
  "second.yaml": "name: x\n---\ncase: y\n",
  "tab.yaml": "pig:\n\tsex: female\n",
  "twice.yaml": "case: x\ncase: y\n",
  "list.yaml": "- case: x\n- case: y\n",
  "list-later.yaml": "- tag: 5\n  pig: {tag: 5}\n",
  "indented.yaml": "  examiner: A\n  case: x\n  pig: [\n",
  "stray.yaml": "  case: x\n  pig: {tag: 1}\nwhat: [\n",
  "dedented.yaml": "    tag: 5\npig:\n   [\n",
  "quoted.yaml": '"case": x\npig: [\n',
  "single-quoted.yaml": "'pig': [\n",
  "flow.yaml": '{"note": "n", "case": "x", "pig": {"tag": 1,,}}',
  "flow-lines.yaml": "{\n  format: 1,\n  case: x\n  pig: {}\n}\n",
  "capital.yaml": "Case: x\nPig: [\n",
  "glued.yaml": "case:x\npig:{tag: 1}\n",
  "blank-before-colon.yaml": "case : [\n",
  "question.yaml": "? case\n: x\n? pig: [\n",
  "conflict.yaml": "<<<<<<< HEAD\ncase: x\n=======\ncase: y\n>>>>>>> other\n",
  "prose.yaml": "Note to self\ncase: x\n",
  "mark.yaml": "case: x\nnote: a\u200fb\n",
  "bom.yaml": "\ufeff\ufeffcase: x\n",
  "utf16.yaml": Uint8Array.from(Buffer.from("\ufeffcase: x\npig: {tag: 1}\n", "utf16le")),
  "utf16-no-mark.yaml": Uint8Array.from(Buffer.from("case: x\n", "utf16le")),
  "utf16-big.yaml": Uint8Array.from(Buffer.from("\ufeffcase: x\n", "utf16le").swap16()),
  "latin1.yaml": Uint8Array.from([...Buffer.from("case: x\nnote: m"), 0xe4, 10]),
  "nul.yaml": Uint8Array.from([...Buffer.from("case: x"), 0, 10]),
  "macintosh.yaml": "format: 1\rcase: x\r",
  "large.yaml": `case: x\nnote: >\n${"  words and words\n".repeat(150_000)}`,
  "schema.yaml": "# yaml-language-server: $schema=../schemas/case.schema.json\nnote: [\n",
  "comments.yaml": "# yaml-language-server: $schema=../schemas/case.schema.json\n# case: x\n",
  "deep.yaml": `pig: ${"[".repeat(500)}\n`,
  "visit-2026.yaml": "visit: v\ndate: [\n",
  "farm-alder.yaml": "farm: f\ngroups: [\n",
  "empty.yaml": "",
  "blank.yaml": "\n \n",
};

const readIn = (files: Readonly<Record<string, string | Uint8Array>>, ...paths: string[]) => {
  const root = temporaryFolder();
  put(root, files);
  return readCases(paths.length === 0 ? ["."] : paths, { from: root });
};
const names = (faults: readonly { readonly file: string }[]): string[] => [
  ...new Set(faults.map(({ file }) => file)),
];

describe("files of other tools", () => {
  it("are passed over and named, in a folder and by a pattern, and nothing is wrong", () => {
    for (const path of [".", "**/*.{yaml,yml}"]) {
      const archive = readIn({ ...others, "cases/pig.yaml": smallCase("p") }, path);
      expect(archive.unreadable).toEqual([]);
      expect(archive.cases.map(({ id }) => id)).toEqual(["p"]);
      expect(archive.passedOver).toEqual(Object.keys(others).sort());
      expect(archive.pathsWithoutCases).toEqual([]);
    }
  });

  it("are errors where they are named", () => {
    const root = temporaryFolder();
    put(root, others);
    const refused = Object.keys(others).filter((name) => {
      const { cases, unreadable, passedOver } = readCases([name], { from: root });
      expect(passedOver).toEqual([]);
      return unreadable.length > 0 || cases.some(({ faults }) => faults.length > 0);
    });
    expect(refused).toEqual(Object.keys(others));
  });

  it.each(["visit.yaml", "farm/visit.yaml"])("are errors beside a %s", (visit) => {
    const inside = Object.fromEntries(
      Object.entries(others).map(([name, text]) => [join(visit, "..", name), text]),
    );
    for (const text of ["format: 1\nvisit: v\ndate: 2026-04-20\n", "visit: [\n"]) {
      const archive = readIn({ ...inside, [visit]: text });
      const beside = Object.keys(inside).filter((name) => !name.includes("chart/"));
      const told = new Set([...names(archive.unreadable), ...archive.cases.map(({ file }) => file)]);
      expect(beside.filter((name) => !told.has(name))).toEqual([]);
      expect(archive.passedOver).toEqual(
        Object.keys(inside)
          .filter((name) => name.includes("chart/"))
          .sort(),
      );
    }
  });

  it("are no cases: a path that leads to nothing else leads to no case", () => {
    const archive = readIn({ "a/values.yaml": "replicas: 2\n" }, "a");
    expect([archive.passedOver, archive.pathsWithoutCases]).toEqual([["a/values.yaml"], ["a"]]);
  });
});

describe("a case that cannot be read", () => {
  every(
    "is told, wherever it lies",
    Object.entries(broken),
    ([name, text]) => {
      const archive = readIn({ [`cases/${name}`]: text, "cases/pig.yaml": smallCase("p") });
      expect([names(archive.unreadable), archive.passedOver]).toEqual([[`cases/${name}`], []]);
    },
    ([name]) => name,
  );

  it("is known by each key by which a case is known, and by no other", () => {
    const known = [
      "case",
      "pig",
      "selection",
      "death",
      "opened",
      "alarm_check",
      "external",
      "respiratory",
      "nervous",
    ];
    const unknown = [
      "name",
      "version",
      "steps",
      "note",
      "date",
      "groups",
      "safety",
      "history",
      "lungs",
      "piglets",
    ];
    const files = Object.fromEntries([...known, ...unknown].map((key) => [`${key}.yaml`, `${key}: [\n`]));
    const archive = readIn(files);
    expect(names(archive.unreadable)).toEqual(known.map((key) => `${key}.yaml`).sort());
    expect(archive.passedOver).toEqual(unknown.map((key) => `${key}.yaml`).sort());
  });
});

describe("files of ours that are no cases", () => {
  it("settings for --config and scales are read where they are named, and are not counted", () => {
    const archive = readIn({
      "strict.yaml": "format: 1\nrules: {treated-pig: error}\n",
      "scales/our.yaml": "format: 1\nid: our\norgan: respiratory.lungs\nparts: {}\n",
      "results.yaml": "format: 1\n",
      "pig.yaml": smallCase(),
    });
    expect([archive.unreadable, archive.passedOver]).toEqual([[], []]);
  });

  it("a visit or a farm under another name is told, and not passed over", () => {
    const archive = readIn({
      "march.yaml": "format: 1\nvisit: v\n",
      "alder.yaml": "farm: f\n",
      "p.yaml": smallCase(),
    });
    expect(archive.unreadable.map(({ file, message }) => `${file}: ${message}`)).toEqual([
      "alder.yaml: by its keys it is a farm, which is read only from a file called farm.yaml; rename it",
      "march.yaml: by its keys it is a visit, which is read only from a file called visit.yaml; rename it",
    ]);
  });

  it("a file with format: 1 and keys that nobody knows is a case with faults", () => {
    const archive = readIn({
      "a.yaml": "format: 1\ncsae: x\npgi: {}\n",
      "b.yaml": "Case: b\nPig: {tag: 1}\n",
    });
    expect(archive.cases.map(({ file, faults }) => [file, faults.length])).toEqual([
      ["a.yaml", 2],
      ["b.yaml", 3],
    ]);
  });
});
