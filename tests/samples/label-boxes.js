// Run in the browser: by sheet, what of a label leaves its place or lies over anything else, and what is printed smaller than it can be read.
(() => {
  const faults = [];
  let labels = 0;
  for (const [index, sheet] of [...document.querySelectorAll(".sheet")].entries()) {
    const page = sheet.getBoundingClientRect();
    const boxes = [];
    for (const label of sheet.querySelectorAll(".label")) {
      labels += 1;
      const place = label.querySelector("rect").getBoundingClientRect();
      for (const of of label.querySelectorAll("text, .code")) {
        const box = of.getBoundingClientRect();
        const name = `sheet ${index + 1}: "${(of.textContent || "a code").slice(0, 30)}"`;
        if (box.width === 0 || box.height === 0) faults.push(`${name} is empty`);
        for (const [around, what] of [
          [place, "its label"],
          [page, "the page"],
        ])
          if (
            box.left < around.left ||
            box.right > around.right ||
            box.top < around.top ||
            box.bottom > around.bottom
          )
            faults.push(`${name} leaves ${what}`);
        boxes.push({ name, box });
      }
      boxes.push({ name: `sheet ${index + 1}: a label`, box: place, label: true });
    }
    for (const [at, one] of boxes.entries())
      for (const other of boxes.slice(at + 1)) {
        if (one.label !== other.label) continue;
        const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
        const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
        // The box of a line is higher than its letters.
        if (across > 0.5 && down > (one.label ? 0.5 : 3)) faults.push(`${one.name} lies over ${other.name}`);
      }
  }
  return { sheets: document.querySelectorAll(".sheet").length, labels, faults };
})();
