// Plan a bench test: the tests that suit the chosen part stand first, the others behind them.
(() => {
  const form = document.querySelector(".trial-form");
  if (!form) {
    return;
  }

  const { part, kind } = form.elements, groups = [...kind.querySelectorAll("optgroup")];
  const suits = group => group.dataset.suits === "" || group.dataset.suits.split(" ").includes(part.selectedOptions[0].dataset.kind);
  const says = form.querySelector(".f-says"), tell = () => {
    const chosen = kind.selectedOptions[0], group = chosen?.parentElement;
    says.textContent = (chosen?.textContent.replace(/^[^:]*: /, "") ?? "") + (group && !suits(group) ? ` It is done ${group.dataset.on}: is another part or another test meant?` : "");
  };
  let picked = false;
  kind.addEventListener("change", () => { picked = true; tell(); });
  part.addEventListener("change", () => {
    const chosen = kind.value;
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
