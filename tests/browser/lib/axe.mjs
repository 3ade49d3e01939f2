// The automatic accessibility rules of axe-core on a page, target size included (it is off by itself).

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const SOURCE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** The violations on a Playwright page: one line each, rule and element. */
export async function violations(page) {
  await page.evaluate(SOURCE);
  const found = await page.evaluate((tags) => window.axe.run(document, {
    runOnly: { type: "tag", values: tags },
    rules: { "target-size": { enabled: true } },
    resultTypes: ["violations"],
  }), TAGS);
  return found.violations.flatMap((rule) => rule.nodes.map((node) =>
    `${rule.id}: ${node.target.join(" ")} (${node.any.concat(node.all, node.none)[0]?.message ?? rule.help})`));
}

/** Fails with the list of violations; `what` names the screen. */
export async function accessible(page, what) {
  assert.deepEqual(await violations(page), [], what);
}
