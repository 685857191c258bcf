// A picture without axes of its own (streams, sections, value against doubt) is looked at as large as the window, and scrolled where it is larger still.
(() => {
  const make = (tag, name, text) => Object.assign(document.createElement(tag), { className: name, textContent: text });
  const dialog = make("dialog", "larger", ""), close = make("button", "btn", "Close"), room = make("div", "room", "");
  close.type = "button";
  room.tabIndex = 0;
  room.setAttribute("role", "region");
  dialog.append(close, room);
  close.addEventListener("click", () => dialog.close());
  dialog.addEventListener("click", event => { if (event.target === dialog) { dialog.close(); } });

  const shown = figure => [...figure.querySelectorAll("svg, img")].find(one => one.getClientRects().length > 0);
  const open = figure => {
    const copy = shown(figure).cloneNode(true);
    room.replaceChildren(Object.assign(make("figure", figure.className, "")));
    room.firstChild.append(copy);
    dialog.setAttribute("aria-label", copy.getAttribute("aria-label") ?? copy.getAttribute("alt") ?? "picture");
    room.setAttribute("aria-label", dialog.getAttribute("aria-label"));
    if (!dialog.isConnected) {
      document.body.append(dialog);
    }

    dialog.showModal();
  };

  const furnish = () => document.querySelectorAll("#work figure.pic:not([data-across]), #work .drawing:has(img)").forEach(figure => {
    if (figure.larger || !shown(figure)) {
      return;
    }

    figure.larger = true;
    const button = make("button", "btn", "Larger");
    button.type = "button";
    button.dataset.do = "larger";
    button.addEventListener("click", () => open(figure));
    const tools = figure.nextElementSibling?.matches(".pic-tools") ? figure.nextElementSibling : make("div", "pic-tools", "");
    tools.prepend(button);
    if (!tools.isConnected) {
      figure.after(tools);
    }
  });
  document.addEventListener("heatwright:pictures", furnish);
  furnish();
})();
