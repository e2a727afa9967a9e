// Run in the browser: what is wrong on a page of a report, at the width it has.
(() => {
  const faults = [];
  if (document.documentElement.scrollWidth > window.innerWidth)
    faults.push(`the page is ${document.documentElement.scrollWidth} px wide`);
  const words = [];
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) {
    const node = texts.currentNode;
    const of = node.parentElement;
    if (of === null || node.textContent?.trim() === "" || of.closest("style, title, desc") !== null) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects())
      words.push({ text: (node.textContent ?? "").trim().slice(0, 30), box, of });
  }
  for (const { text, box, of } of words) {
    for (let around = of; around !== null && around !== document.body; around = around.parentElement) {
      const look = getComputedStyle(around);
      if (look.overflowX === "visible" || look.overflowX === "auto") continue;
      const edge = around.getBoundingClientRect();
      if (box.left < edge.left - 1 || box.right > edge.right + 1) faults.push(`"${text}" is clipped`);
    }
    const svg = of.closest("svg");
    if (svg !== null) {
      const edge = svg.getBoundingClientRect();
      if (
        box.left < edge.left - 1 ||
        box.right > edge.right + 1 ||
        box.top < edge.top - 1 ||
        box.bottom > edge.bottom + 1
      )
        faults.push(`"${text}" leaves its figure`);
    }
  }
  // Only neighbours can lie over each other; words are looked at from the top down.
  const down = words.toSorted((a, b) => a.box.top - b.box.top);
  for (const [at, one] of down.entries())
    for (const other of down.slice(at + 1)) {
      if (other.box.top > one.box.bottom) break;
      if (one.of === other.of || one.of.hasAttribute("transform") || other.of.hasAttribute("transform"))
        continue;
      const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
      const high = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
      if (across > 1 && high > 0.35 * Math.min(one.box.height, other.box.height))
        faults.push(`"${one.text}" lies over "${other.text}"`);
    }
  for (const figure of document.querySelectorAll("figure svg"))
    if (figure.getBoundingClientRect().height < 40) faults.push("a figure is too small to see");
  for (const section of document.querySelectorAll("main section"))
    if ((section.textContent ?? "").trim().length < 5) faults.push(`section ${section.id} is empty`);
  return faults;
})();
