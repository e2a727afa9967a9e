/** The steps of the ramp with what each stands for, side by side. */
import { type Drawing, label, rect, widthOf } from "./canvas.ts";
import { ramp } from "./ramp.ts";

/** @param names what the steps stand for, from the first */
export function legend(names: readonly string[], most: number): Drawing {
  let x = 0;
  let y = 0;
  const parts = names.flatMap((name, step) => {
    const wide = 22 + widthOf(name, 11) + 14;
    if (x > 0 && x + wide > most) {
      x = 0;
      y += 20;
    }
    const at = x;
    x += wide;
    return [
      rect(at, y, 16, 12, `style="fill:${ramp[step] ?? ramp[0]};stroke:#4f463e"`),
      label(at + 22, y + 10, name, { class: "small" }),
    ];
  });
  return { width: most, height: y + 16, body: parts.join("\n") };
}
