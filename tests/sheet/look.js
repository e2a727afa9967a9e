// Run in the browser: what is wrong on the pages of a sheet, as it would be printed.
(() => {
  const faults = [];
  const pages = [...document.querySelectorAll(".page")];
  for (const [index, page] of pages.entries()) {
    const fault = (what) => faults.push(`page ${index + 1}: ${what}`);
    const edge = page.getBoundingClientRect();
    if (page.scrollHeight > page.clientHeight || page.scrollWidth > page.clientWidth) fault("is too full");
    const words = [];
    const texts = document.createTreeWalker(page, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) {
      const node = texts.currentNode;
      const of = node.parentElement;
      if (of === null || node.textContent?.trim() === "") continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const box of range.getClientRects()) words.push({ text: node.textContent ?? "", box, of });
    }
    for (const { text, box, of } of words) {
      // The box that holds a text: the next one around it with a border or a cell of its own.
      const around =
        of
          .closest(
            "li, td, th, .look, .row, .half > div, .facts > div, .drawings > div, svg, header, footer, div",
          )
          ?.getBoundingClientRect() ?? edge;
      if (
        box.left < around.left - 1 ||
        box.right > around.right + 1 ||
        box.top < around.top - 2 ||
        box.bottom > around.bottom + 2
      )
        fault(`"${text.slice(0, 40)}" runs out of its box`);
      if (
        box.right > edge.right - 18 ||
        box.left < edge.left + 18 ||
        box.bottom > edge.bottom - 18 ||
        box.top < edge.top + 18
      )
        fault(`"${text.slice(0, 40)}" is in the margin`);
    }
    const marks = [...page.querySelectorAll(".box, .blank")].map((of) => ({
      text: "a box",
      box: of.getBoundingClientRect(),
      of,
    }));
    const all = [...words, ...marks];
    for (const [at, one] of all.entries())
      for (const other of all.slice(at + 1)) {
        if (one.of === other.of || one.of.contains(other.of) || other.of.contains(one.of)) continue;
        const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
        // The box of a line is higher than its letters.
        const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
        if (across > 1 && down > 3)
          fault(`"${one.text.slice(0, 30)}" lies over "${other.text.slice(0, 30)}"`);
      }
    const blocks = [...page.children].filter((child) => !/^(?:header|footer)$/i.test(child.tagName));
    if (blocks.length === 0) fault("is empty");
    for (const [at, block] of blocks.entries()) {
      const box = block.getBoundingClientRect();
      if (box.height < 10 || block.textContent?.trim() === "") fault(`block ${at + 1} is empty`);
      const next = blocks[at + 1]?.getBoundingClientRect();
      if (next !== undefined && next.top < box.bottom - 0.5)
        fault(`block ${at + 2} lies over the one before`);
    }
    for (const drawing of page.querySelectorAll("svg"))
      if (drawing.getBoundingClientRect().height < 80) fault("a drawing is too small to shade");
    for (const row of page.querySelectorAll(".row:not(.head *), tbody tr"))
      if (row.getBoundingClientRect().height < 17) fault("a row is too low to write in");
  }
  return { pages: pages.length, faults };
})();
