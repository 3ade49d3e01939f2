/* Starts the app and takes the cover away. The service worker is the app's own business, unless the app
   cannot start. */

const root = document.documentElement;

async function start() {
  if (root.dataset.trouble) return;
  try {
    const { default: init } = await import("./shell.js");
    await init();
    document.getElementById("cover").remove();
  } catch (reason) {
    document.getElementById("cover-wait").hidden = true;
    document.getElementById("cover-reason").textContent = String(reason);
    document.getElementById("cover-stopped").hidden = false;
    await rescue();
    throw reason;
  }
}

/** Keeps the system's bar in the colour of the theme's ground. */
function follow() {
  const bar = document.querySelector('meta[name="theme-color"]');
  const paint = () => { bar.content = getComputedStyle(root).getPropertyValue("--ground").trim(); };
  paint();
  new MutationObserver(paint).observe(root, { attributeFilter: ["data-theme"] });
}

/** A version that cannot start makes way for the next one at once: nobody can be typing in it. */
async function rescue() {
  const { serviceWorker } = navigator;
  if (!serviceWorker) return;
  const registration = await serviceWorker.register("./sw.js", { updateViaCache: "none" });
  const advance = () => registration.waiting?.postMessage({ type: "switch" });
  const watch = () => registration.installing?.addEventListener("statechange", advance);
  serviceWorker.addEventListener("controllerchange", () => location.reload());
  registration.addEventListener("updatefound", watch);
  watch();
  advance();
  await registration.update();
}

follow();
await start();
