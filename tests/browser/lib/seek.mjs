// Finds elements in a page by selector or by role and accessible name. What is exported runs in the page: each answer
// is a pair [function, target], to be handed to an engine's `evaluate`.

/** Runs in the page. The element of a target and what was asked of it. */
function ask(target, question, value) {
  const ROLES = {
    button: "button, [role=button], input[type=submit]",
    link: "a[href]",
    heading: "h1, h2, h3, [role=heading]",
    field: "input, textarea, select",
    radio: "input[type=radio], [role=radio]",
    any: "button, a[href], input, select, textarea, summary, [role]",
  };
  const clean = (text) => (text ?? "").replace(/\s+/g, " ").trim();
  const shown = (element) => element.getClientRects().length > 0 && getComputedStyle(element).visibility !== "hidden";
  // The steps of the accessible name that this house uses, in their order.
  const name = (element) => {
    const by = element.getAttribute("aria-labelledby");
    if (by) return clean(by.split(/\s+/).map((id) => document.getElementById(id)?.textContent).join(" "));
    if (element.getAttribute("aria-label")) return clean(element.getAttribute("aria-label"));
    if (element.labels?.length) return clean([...element.labels].map((label) => label.textContent).join(" "));
    return clean(element.textContent || element.value || element.title);
  };
  const fits = (element) => (target.pattern ? new RegExp(target.pattern).test(name(element)) : name(element) === target.name);
  const found = typeof target === "string"
    ? [...document.querySelectorAll(target)]
    : [...document.querySelectorAll(ROLES[target.role])].filter(fits);
  const element = found.find(shown) ?? found[0];
  if (question === "element") return element;
  if (question === "visible") return element !== undefined && shown(element);
  if (question === "ready") return element !== undefined && shown(element) && !element.disabled;
  if (question === "there") return element !== undefined;
  if (question === "text") return clean(element.value ?? element.innerText);
  element.focus();
  const byKeys = element.tagName === "TEXTAREA" || (element.tagName === "INPUT" && !/^(date|time|datetime-local)$/.test(element.type));
  const kind = { INPUT: HTMLInputElement, TEXTAREA: HTMLTextAreaElement, SELECT: HTMLSelectElement }[element.tagName];
  Object.getOwnPropertyDescriptor(kind.prototype, "value").set.call(element, byKeys ? "" : value);
  element.dispatchEvent(new Event("input", { bubbles: true }));
  if (!byKeys || value === "") element.dispatchEvent(new Event("change", { bubbles: true }));
  return !byKeys || value === "";
}

/** A target as it travels into the page: patterns as text. */
function packed(target) {
  return target.name instanceof RegExp ? { role: target.role, pattern: target.name.source } : target;
}

const asking = (question) => (target, value) => [ask, packed(target), question, value];

export const seek = {
  element: asking("element"),
  visible: asking("visible"),
  /** Seen, and takes a press. */
  ready: asking("ready"),
  there: asking("there"),
  text: asking("text"),
  /** Empties a field to be typed into (answers false), or sets it at once (answers true). */
  set: asking("set"),
};
