// Light or dark: taken from the machine until a maker chooses, then remembered in this browser only.
(() => {
  const root = document.documentElement;
  const asked = matchMedia("(prefers-color-scheme: dark)");
  const read = () => { try { return localStorage.getItem("heatwright-theme"); } catch { return null; } };
  const keep = theme => { try { localStorage.setItem("heatwright-theme", theme); } catch { /* a browser that keeps nothing still switches */ } };
  const dark = () => (root.dataset.theme ?? (asked.matches ? "dark" : "light")) === "dark";
  const chosen = read();
  if (chosen === "dark" || chosen === "light") {
    root.dataset.theme = chosen;
  }

  // The script that looks into pictures comes only where there is one: the start page stays light.
  const pictures = () => {
    if (document.querySelector("script[src='/picture.js']")) {
      document.dispatchEvent(new Event("heatwright:pictures"));
    } else if (document.querySelector("figure.pic, .loop, table.takes, .drawing img")) {
      document.head.append(...["/picture.js", "/larger.js"].map(src => Object.assign(document.createElement("script"), { src, async: false })));
    }
  };

  addEventListener("DOMContentLoaded", () => {
    pictures();
    new MutationObserver(pictures).observe(document.getElementById("work") ?? document.body, { childList: true, subtree: true }); // a page that follows the study brings new ones
    const button = document.getElementById("theme");
    const name = () => { button.textContent = dark() ? "Light" : "Dark"; };
    button.hidden = false;
    name();
    asked.addEventListener("change", name);
    button.addEventListener("click", () => {
      root.dataset.theme = dark() ? "light" : "dark";
      keep(root.dataset.theme);
      name();
    });
  });
})();
