/** The compiled schema of scale files: few repositories have any, so it is read only where there is one. */
import { createRequire } from "node:module";
import type { Validator } from "../generated/validators.js";

/**
 * The validator of a scale file (schemas/scale.schema.json). The built program keeps it in `generated` as well, beside the
 * folder of its chunks.
 */
export function scaleValidator(): Validator {
  const { scaleFile } = createRequire(import.meta.url)("../generated/scale-validator.cjs") as {
    scaleFile: Validator;
  };
  return scaleFile;
}
