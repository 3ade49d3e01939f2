/* Starts the app, takes the cover away, and looks after the service worker.
   The page asks for the switch to a new version by posting {type: "switch"} to the waiting worker;
   every tab then loads itself again, once, because the old version's files have left the cache. */

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

async function serve() {
  if (!("serviceWorker" in navigator)) return;
  const { serviceWorker } = navigator;
  const registration = await serviceWorker.register("./sw.js", { updateViaCache: "none" });
  let known = registration.active !== null;
  serviceWorker.addEventListener("controllerchange", () => {
    if (known) location.reload();
    known = true;
  });
  const look = () => { if (document.visibilityState === "visible") registration.update().catch(() => {}); };
  document.addEventListener("visibilitychange", look);
}

follow();
// A version that cannot start still looks for the next one.
start().finally(() => serve().catch((reason) => console.info("No service worker:", reason)));
