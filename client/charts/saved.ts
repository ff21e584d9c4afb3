import type { Picture } from "./picture.ts";

/** What a drawing takes from the page's style sheet; a saved one must carry it itself. */
const STYLES = [
  "fill",
  "fill-opacity",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linejoin",
  "stroke-linecap",
  "paint-order",
  "opacity",
  "font-family",
  "font-size",
  "font-weight",
  "text-anchor",
] as const;

const PNG_SCALE = 2;
/** Saved pictures are as wide as this whatever the screen, so that every name stands in them [px]. */
const WIDTH = 960;
/** Round a saved picture [px]. */
const BORDER = 12;

function carryStyles(from: Element, to: Element): void {
  const computed = getComputedStyle(from);
  for (const name of STYLES) to.setAttribute(name, computed.getPropertyValue(name));
  for (let i = 0; i < from.children.length; i++) carryStyles(from.children[i], to.children[i]);
}

export interface Saved {
  readonly picture: Picture;
  readonly height: (width: number) => number;
  /** what it shows, in words; stands in the file as well */
  readonly sentence: string;
  /** where the page's styles hold */
  readonly place: Element;
}

interface Document {
  readonly text: string;
  readonly width: number;
  readonly height: number;
}

function element<T extends "svg" | "rect" | "title">(name: T): SVGElementTagNameMap[T] {
  return document.createElementNS("http://www.w3.org/2000/svg", name);
}

function paper(width: number, height: number): SVGRectElement {
  const rect = element("rect");
  const place = {
    x: -BORDER,
    y: -BORDER,
    width,
    height,
    fill: getComputedStyle(document.body).backgroundColor,
  };
  for (const [name, value] of Object.entries(place)) rect.setAttribute(name, String(value));
  return rect;
}

/** @returns the chart as a document of its own, colours and type included, on the page's paper */
export function svgDocument({ picture, height, sentence, place }: Saved): Document {
  const inner = { width: WIDTH, height: height(WIDTH) };
  const [whole, tall] = [inner.width + 2 * BORDER, inner.height + 2 * BORDER];
  const drawn = element("svg");
  drawn.setAttribute("visibility", "hidden");
  drawn.style.position = "absolute";
  place.append(drawn);
  try {
    picture(inner).draw(drawn);
    const copy = drawn.cloneNode(true) as SVGSVGElement;
    carryStyles(drawn, copy);
    copy.removeAttribute("style");
    copy.removeAttribute("visibility");
    copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
    copy.setAttribute("width", String(whole));
    copy.setAttribute("height", String(tall));
    copy.setAttribute("viewBox", `${-BORDER} ${-BORDER} ${whole} ${tall}`);
    const title = element("title");
    title.textContent = sentence;
    copy.prepend(title, paper(whole, tall));
    return { text: new XMLSerializer().serializeToString(copy), width: whole, height: tall };
  } finally {
    drawn.remove();
  }
}

/** @returns the chart as a PNG at twice its size @throws {Error} when the browser cannot draw it */
export async function pngOf(saved: Saved): Promise<Blob> {
  const { text, width, height } = svgDocument(saved);
  const address = URL.createObjectURL(new Blob([text], { type: "image/svg+xml" }));
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
