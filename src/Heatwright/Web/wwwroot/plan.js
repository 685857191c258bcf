// Plan a bench test: the tests that suit the chosen part stand first, the others behind them.
(() => {
  const form = document.querySelector(".trial-form");
  if (!form) {
    return;
  }

  const { part, kind } = form.elements, groups = [...kind.querySelectorAll("optgroup")];
  const says = form.querySelector(".f-says"), tell = () => { says.textContent = kind.selectedOptions[0]?.textContent.replace(/^[^:]*: /, "") ?? ""; };
  let picked = false;
  kind.addEventListener("change", () => { picked = true; tell(); });
  part.addEventListener("change", () => {
    const chosen = kind.value, suits = group => group.dataset.suits === "" || group.dataset.suits.split(" ").includes(part.selectedOptions[0].dataset.kind);
    const place = group => !suits(group) ? 2 : group.dataset.suits === "" ? 1 : 0;
    for (const group of [...groups].sort((a, b) => place(a) - place(b))) {
      group.label = (suits(group) ? "" : "other: ") + group.dataset.on;
      kind.append(group);
    }

    if (picked) {
      kind.value = chosen;
    } else {
      kind.selectedIndex = 0;
    }

    tell();
  });
})();
