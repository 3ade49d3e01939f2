/* Runs before the first paint, in any browser however old: sets the theme, and says so when the
   browser is too old or the address is not secure. Plain old syntax on purpose. */
(function () {
  "use strict";
  var root = document.documentElement;

  function prefers(query) {
    return !!window.matchMedia && window.matchMedia(query).matches;
  }

  function chosen() {
    try {
      var theme = JSON.parse(localStorage.getItem("glassine/theme"));
      return /^(paper|sun|dark|lamp)$/.test(theme) ? theme : null;
    } catch (_) {
      return null;
    }
  }

  function dress() {
    var system = prefers("(prefers-contrast: more)") ? "sun" : prefers("(prefers-color-scheme: dark)") ? "dark" : "paper";
    root.setAttribute("data-theme", chosen() || system);
  }

  /* Safari 16.4 and Firefox 113 brought CompressionStream, Chrome 108 the dvh unit, Firefox 115 Array.fromAsync
     (browser-compat-data, from memory). */
  function recent() {
    var gecko = "mozInnerScreenX" in window;
    return typeof WebAssembly === "object" && typeof CompressionStream === "function"
      && !!window.CSS && CSS.supports("height", "1dvh") && (!gecko || "fromAsync" in Array);
  }

  dress();
  ["(prefers-contrast: more)", "(prefers-color-scheme: dark)"].forEach(function (query) {
    var list = window.matchMedia && window.matchMedia(query);
    if (list && list.addEventListener) list.addEventListener("change", dress);
  });

  var trouble = recent() ? (window.isSecureContext ? null : "cover-plain") : "cover-old";
  if (!trouble) return;
  root.setAttribute("data-trouble", trouble);
  document.addEventListener("DOMContentLoaded", function () {
    document.getElementById("cover-wait").hidden = true;
    document.getElementById(trouble).hidden = false;
  });
})();
