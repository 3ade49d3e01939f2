// Medians, and the table that is printed.

export function median(numbers) {
  const sorted = numbers.toSorted((a, b) => a - b);
  const middle = sorted.length / 2;
  return sorted.length % 2 ? sorted[Math.floor(middle)] : (sorted[middle - 1] + sorted[middle]) / 2;
}

/** Three digits that count. */
function figure(number, unit) {
  if (number === undefined) return "";
  const text = number >= 100 ? number.toFixed(0) : number >= 10 ? number.toFixed(1) : number.toFixed(2);
  return `${text.replace(/\B(?=(\d{3})+$)/g, ",")} ${unit}`;
}

/** The names of the columns of measures, and their keys. */
const COLUMNS = [["app", "app"], ["twin, rows", "rows"], ["twin, JSON segments", "segments"], ["raw put", "raw"]];

/** Collects lines and prints them as they come, so that a long run can be watched. */
export class Table {
  #lines = [];

  head() {
    console.log(`| what | ${COLUMNS.map(([name]) => name).join(" | ")} | app ÷ rows | app ÷ segments | aim |`);
    console.log(`|---|${"---:|".repeat(COLUMNS.length + 2)}---|`);
  }

  /** Prints a line: `values` by column; `aim` {column, times} or {most} is checked and said. */
  line(what, unit, values, aim) {
    const ratio = (column) => (values[column] && values.app !== undefined ? `${(values.app / values[column]).toFixed(2)} ×` : "");
    const said = aim ? judged(values, aim, unit) : "";
    this.#lines.push({ what, unit, values, said });
    console.log(`| ${what} | ${COLUMNS.map(([, key]) => figure(values[key], unit)).join(" | ")} | ${ratio("rows")} | ${ratio("segments")} | ${said} |`);
  }

  /** How many aims were missed. */
  missed() {
    return this.#lines.filter(({ said }) => said.endsWith("missed"));
  }
}

function judged(values, { most, column, times }, unit) {
  const limit = most ?? times * values[column];
  const words = most === undefined ? `≤ ${times} × ${COLUMNS.find(([, key]) => key === column)[0]}` : `≤ ${most} ${unit}`;
  return `${words}: ${values.app <= limit ? "met" : "missed"}`;
}
