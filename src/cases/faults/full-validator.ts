/** The compiled schemas with all that explains an error: read only for a file that does not fit. */
import { createRequire } from "node:module";
import type { ErrorObject } from "ajv";

export type ValidatedKind = "case" | "visit" | "farm" | "results" | "settings" | "baseline" | "scale";

/** Whether a value fits; if not, `errors` says every reason. */
interface Validator {
  (value: unknown): boolean;
  errors?: readonly ErrorObject[] | null;
}

/** The validator of one kind of file, as the build keeps it; `package.json` says where. */
function fullValidator(kind: ValidatedKind): Validator {
  const module = createRequire(import.meta.url)(`#validators/${kind}-validator.cjs`);
  return (module as Record<string, Validator>)[`${kind}File`] as Validator;
}

/** Every error of a value; none when it fits. */
export function errorsOf(kind: ValidatedKind, value: unknown): readonly ErrorObject[] {
  const validator = fullValidator(kind);
  return validator(value) ? [] : (validator.errors ?? []);
}
