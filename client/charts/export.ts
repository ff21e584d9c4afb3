/** What a drawing takes from the page's style sheet; a saved one must carry it itself. */
const STYLES = [
  "fill",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linejoin",
  "paint-order",
  "opacity",
  "font-family",
  "font-size",
  "font-weight",
  "text-anchor",
] as const;

const PNG_SCALE = 2;

function carryStyles(from: Element, to: Element): void {
  const computed = getComputedStyle(from);
  for (const name of STYLES) to.setAttribute(name, computed.getPropertyValue(name));
  for (let i = 0; i < from.children.length; i++) carryStyles(from.children[i], to.children[i]);
}

/** @returns the chart as a document of its own, colours and type included, on the page's paper */
export function svgText(svg: SVGSVGElement): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  carryStyles(svg, copy);
  for (const unseen of copy.querySelectorAll("[data-unsaved]")) unseen.remove();
  const { width, height } = svg.getBoundingClientRect();
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  copy.setAttribute("viewBox", `0 0 ${width} ${height}`);
  const paper = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  paper.setAttribute("width", "100%");
  paper.setAttribute("height", "100%");
  paper.setAttribute("fill", getComputedStyle(document.body).backgroundColor);
  copy.prepend(paper);
  return new XMLSerializer().serializeToString(copy);
}

/** @returns the chart as a PNG at twice its size on the screen @throws {Error} when the browser cannot draw it */
export async function pngOf(svg: SVGSVGElement): Promise<Blob> {
  const { width, height } = svg.getBoundingClientRect();
  const address = URL.createObjectURL(new Blob([svgText(svg)], { type: "image/svg+xml" }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(width * PNG_SCALE);
    canvas.height = Math.round(height * PNG_SCALE);
    canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise((resolve, reject) => {
      canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("The picture could not be made."))));
    });
  } finally {
    URL.revokeObjectURL(address);
  }
}
