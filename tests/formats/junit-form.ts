/**
 * What the JUnit XML schema for Ant's JUnit tasks (Windy Road Technology 2011) demands, in our own words: which
 * elements stand where, how many, with which attributes of which type.
 */
import type { Element } from "./xml.ts";

const token = /^\S(?:.*\S)?$/su;
const whole = /^-?\d+$/;
const decimal = /^-?\d+(?:\.\d+)?$/;
const time = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}$/;
const any = /^/;

interface Form {
  readonly required: Readonly<Record<string, RegExp>>;
  readonly optional?: Readonly<Record<string, RegExp>>;
  /** Names of the children, in order; the pattern is matched against them joined by commas. */
  readonly children: RegExp;
  readonly text?: true;
}

const result: Form = { required: { type: any }, optional: { message: any }, children: /^$/, text: true };

const forms: Readonly<Record<string, Form>> = {
  testsuites: { required: {}, children: /^(?:testsuite,)*$/ },
  testsuite: {
    required: {
      name: token,
      timestamp: time,
      hostname: token,
      tests: whole,
      failures: whole,
      errors: whole,
      time: decimal,
      package: token,
      id: whole,
    },
    optional: { skipped: whole },
    children: /^properties,(?:testcase,)*system-out,system-err,$/,
  },
  properties: { required: {}, children: /^(?:property,)*$/ },
  testcase: {
    required: { name: token, classname: token, time: decimal },
    children: /^(?:skipped,|error,|failure,)?$/,
  },
  skipped: { required: {}, optional: { message: any }, children: /^$/, text: true },
  error: result,
  failure: result,
  "system-out": { required: {}, children: /^$/, text: true },
  "system-err": { required: {}, children: /^$/, text: true },
};

/** What does not fit, as sentences; an empty list when all does. */
export function junitFaults(element: Element): string[] {
  const { name, attributes, children, text } = element;
  const form = forms[name];
  if (form === undefined) return [`there is no element ${name}`];
  const known = { ...form.required, ...form.optional };
  const order = children.map((child) => `${child.name},`).join("");
  return [
    ...Object.keys(form.required)
      .filter((key) => !(key in attributes))
      .map((key) => `${name} lacks ${key}`),
    ...Object.entries(attributes)
      .filter(([key, value]) => known[key]?.test(value) !== true)
      .map(([key, value]) => `${name} has ${key}="${value}"`),
    ...(form.children.test(order) ? [] : [`${name} holds ${order}`]),
    ...(form.text || text.trim() === "" ? [] : [`${name} holds text`]),
    ...children.flatMap(junitFaults),
  ];
}
