// What is put into every page from outside before it starts: a stopwatch that stands beside the page's own code.
// Runs in the page, so it can use nothing of this file's surroundings.

/**
 * Notes when things are first seen and painted, when events come, and how long each writing transaction takes.
 * `first` maps names to [selector, pattern]: `stopwatch.first[name]` is the time of the frame that showed it.
 */
export function stopwatch({ first }) {
  const PATIENCE = 200_000;
  const watch = { first: {}, writes: [], bytes: [], at: {}, keys: [] };
  window.stopwatch = watch;

  // Memories are kept as modules come: the debugger is not asked for them, it may not answer.
  window.memories = [];
  for (const way of ["instantiate", "instantiateStreaming"]) {
    const made = WebAssembly[way];
    WebAssembly[way] = async (...words) => {
      const answer = await made.apply(WebAssembly, words);
      const { memory } = (answer.instance ?? answer).exports;
      if (memory) window.memories.push(memory);
      return answer;
    };
  }

  /** After the frame that is being made has been painted. */
  const painted = (tell) => requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => tell(performance.now());
    port2.postMessage(null);
  });
  const stands = (selector, pattern) => [...document.querySelectorAll(selector)]
    .some((element) => !element.closest("[hidden]") && pattern.test(element.textContent));
  const seen = (selector, pattern, tell) => {
    if (stands(selector, pattern)) return painted(tell);
    const observer = new MutationObserver(() => {
      if (!stands(selector, pattern)) return;
      observer.disconnect();
      painted(tell);
    });
    observer.observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
  };
  for (const [name, [selector, pattern]] of Object.entries(first)) {
    seen(selector, new RegExp(pattern), (time) => { watch.first[name] = time; });
  }

  /** Resolves with the time of the frame that shows a text. */
  watch.seen = (selector, pattern) => new Promise((done, failed) => {
    setTimeout(() => failed(new Error(`waited for ${pattern} in ${selector}`)), PATIENCE);
    seen(selector, new RegExp(pattern), done);
  });
  /** Types a question as one change; resolves with the milliseconds until its answer is painted. */
  watch.ask = async (id, text, selector, pattern) => {
    const input = document.getElementById(id);
    const start = performance.now();
    input.value = text;
    input.dispatchEvent(new Event("input", { bubbles: true }));
    return (await watch.seen(selector, pattern)) - start;
  };

  for (const kind of ["click", "change", "submit"]) {
    addEventListener(kind, (event) => { watch.at[kind] = event.timeStamp; }, true);
  }
  addEventListener("keydown", (event) => painted((time) => watch.keys.push(time - event.timeStamp)), true);

  const transaction = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (...words) {
    const made = transaction.apply(this, words);
    const start = performance.now();
    if (words[1] === "readwrite") made.addEventListener("complete", () => watch.writes.push(performance.now() - start));
    return made;
  };
  for (const name of ["add", "put"]) {
    const write = IDBObjectStore.prototype[name];
    IDBObjectStore.prototype[name] = function (value, ...key) {
      if (value.byteLength) watch.bytes.push(value.byteLength);
      return write.call(this, value, ...key);
    };
  }
}
