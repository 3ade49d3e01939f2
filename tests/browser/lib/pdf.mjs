// A PDF seen from outside, by poppler: its pages, its fonts, where its words stand, where there is ink.
// All lengths are millimetres from the top left corner of the page.

import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const MM_PER_POINT = 25.4 / 72;
const MM_PER_INCH = 25.4;

/** What pdfinfo says, with `width` and `height` of the page. */
export function info(file) {
  const lines = run("pdfinfo", [file]).split("\n").filter((line) => line.includes(":"));
  const fields = Object.fromEntries(lines.map((line) => {
    const at = line.indexOf(":");
    return [line.slice(0, at), line.slice(at + 1).trim()];
  }));
  const [width, height] = fields["Page size"].split(" x ").map((part) => Number.parseFloat(part) * MM_PER_POINT);
  return { ...fields, pages: Number(fields.Pages), width, height };
}

/** Each font: {name, type, embedded, subset, unicode}. */
export function fonts(file) {
  const [, rule, ...rows] = run("pdffonts", [file]).trimEnd().split("\n");
  const ends = [];
  for (const column of rule.matchAll(/-+/g)) ends.push([column.index, column.index + column[0].length]);
  return rows.map((row) => {
    const [name, type, , embedded, subset, unicode] = ends.map(([from, to]) => row.slice(from, to).trim());
    return { name, type, embedded: embedded === "yes", subset: subset === "yes", unicode: unicode === "yes" };
  });
}

/** The pages, each {width, height, lines}; a line is {text, words, box}, a word {text, box}, a box {left, top, right, bottom}. */
export function pages(file) {
  const html = run("pdftotext", ["-bbox-layout", file, "-"]);
  return html.split("<page ").slice(1).map((page) => ({
    width: attribute(page, "width"),
    height: attribute(page, "height"),
    lines: page.split("<line ").slice(1).map(lineOf),
  }));
}

function lineOf(line) {
  const words = [...line.matchAll(/<word ([^>]*)>([^<]*)<\/word>/g)]
    .map(([, attributes, text]) => ({ text: unescaped(text), box: boxOf(attributes) }));
  return { text: words.map((word) => word.text).join(" "), words, box: boxOf(line.slice(0, line.indexOf(">"))) };
}

function boxOf(text) {
  const [left, top, right, bottom] = ["xMin", "yMin", "xMax", "yMax"].map((name) => attribute(text, name));
  return { left, top, right, bottom };
}

function attribute(text, name) {
  return Number(text.match(new RegExp(`${name}="([^"]*)"`))[1]) * MM_PER_POINT;
}

function unescaped(text) {
  return text.replace(/&lt;/g, "<").replace(/&gt;/g, ">").replace(/&quot;/g, '"').replace(/&amp;/g, "&");
}

/** A page as grey dots; `page` counts from 1. */
export function raster(file, { page = 1, dpi = 600 } = {}) {
  const folder = mkdtempSync(join(tmpdir(), "glassine-raster-"));
  try {
    run("pdftoppm", ["-gray", "-r", String(dpi), "-f", String(page), "-l", String(page), file, join(folder, "page")]);
    return new Raster(readFileSync(join(folder, readdirSync(folder)[0])), dpi);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export class Raster {
  #grey;

  /** From the bytes of a binary PGM of 8 bits. */
  constructor(bytes, dpi) {
    const head = bytes.subarray(0, 64).toString("latin1").match(/^P5\s+(\d+)\s+(\d+)\s+255\s/);
    this.width = Number(head[1]);
    this.height = Number(head[2]);
    this.dots = dpi / MM_PER_INCH;
    this.#grey = bytes.subarray(head[0].length);
  }

  /** Grey from 0 (black) to 255 (white) of the dot at column, row; white outside the page. */
  dot(column, row) {
    if (column < 0 || row < 0 || column >= this.width || row >= this.height) return 255;
    return this.#grey[row * this.width + column];
  }

  /** How many dots within `radius` of the place are darker than `below`. */
  ink(x, y, radius, below = 200) {
    const [column, row, reach] = [x, y, radius].map((length) => length * this.dots);
    let count = 0;
    for (let r = Math.floor(row - reach); r <= row + reach; r += 1) {
      for (let c = Math.floor(column - reach); c <= column + reach; c += 1) {
        const inside = Math.hypot(c + 0.5 - column, r + 0.5 - row) <= reach;
        if (inside && this.dot(c, r) < below) count += 1;
      }
    }
    return count;
  }

  /** How many dots in a box are darker than `below`. */
  inkIn({ left, top, right, bottom }, below = 200) {
    let count = 0;
    for (let r = Math.ceil(top * this.dots); r < bottom * this.dots; r += 1) {
      for (let c = Math.ceil(left * this.dots); c < right * this.dots; c += 1) if (this.dot(c, r) < below) count += 1;
    }
    return count;
  }
}

function run(program, words) {
  return execFileSync(program, words, { encoding: "utf8", maxBuffer: 256 * 1024 * 1024 });
}
