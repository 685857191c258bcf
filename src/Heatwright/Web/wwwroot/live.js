// The live page: figures and curves from the server's events. Everything heard is put into the page as text, never as markup.
(() => {
  const most = 3000;
  const channels = new Map();
  const place = document.getElementById("live"), notes = document.getElementById("notes"), state = document.getElementById("state"), none = document.getElementById("none"), hold = document.getElementById("hold");
  let held = false, over = false, due = false;

  const make = (tag, name, text) => { const one = document.createElement(tag); if (name) { one.className = name; } if (text) { one.textContent = text; } return one; };

  const add = (key, said) => {
    const section = make("section", "live-one");
    const head = make("h2", "", said.source + " ");
    head.append(make("span", "", said.name));
    const value = make("p", "live-value"), figure = make("b"), unit = make("span", "", said.unit);
    value.append(figure, " ", unit);
    const curve = make("canvas", "live-curve");
    curve.setAttribute("aria-hidden", "true");
    const range = make("p", "note");
    section.append(head, value, curve, range);
    place.append(section);
    const one = { figure, unit, curve, range, points: [], said };
    channels.set(key, one);
    return one;
  };

  // Digits as the reading's size needs them; the whole number stands in the record.
  const shown = value => Math.abs(value) >= 1e5 || (value !== 0 && Math.abs(value) < 1e-3) ? value.toExponential(3) : String(Number(value.toPrecision(5)));

  const draw = one => {
    one.figure.textContent = one.said.value === null ? one.said.text : shown(one.said.value);
    one.figure.classList.toggle("live-over", one.said.text === "OL" && one.said.value === null);
    one.unit.textContent = one.said.value === null ? "" : one.said.unit;
    const ratio = devicePixelRatio || 1, wide = one.curve.clientWidth * ratio, high = one.curve.clientHeight * ratio;
    if (one.points.length < 2 || wide === 0) { return; }
    one.curve.width = wide;
    one.curve.height = high;
    let low = Infinity, top = -Infinity;
    for (const [, y] of one.points) { low = Math.min(low, y); top = Math.max(top, y); }
    const from = one.points[0][0], to = one.points[one.points.length - 1][0], room = (top - low || Math.abs(top) || 1) * 0.08;
    const pen = one.curve.getContext("2d");
    pen.strokeStyle = getComputedStyle(one.curve).color;
    pen.lineWidth = 2 * ratio;
    pen.lineJoin = "round";
    pen.beginPath();
    one.points.forEach(([x, y], i) => {
      const across = (x - from) / (to - from || 1) * wide, down = high - (y - low + room) / (top - low + 2 * room) * high;
      if (i === 0) { pen.moveTo(across, down); } else { pen.lineTo(across, down); }
    });
    pen.stroke();
    one.range.textContent = `${shown(low)} to ${shown(top)} ${one.said.unit} in ${shown(to - from)} s`;
  };

  const redraw = () => { due = false; if (!held) { channels.forEach(draw); } };

  const thin = points => points.filter((_, i) => i % 2 === 0 || i === points.length - 1);

  const take = message => {
    none.hidden = none.hidden || message.channels.length > 0;
    for (const said of message.channels) {
      const key = said.source + "\u001f" + said.name;
      const one = channels.get(key) ?? add(key, said);
      one.said = said;
      one.points.push(...said.points);
      if (one.points.length > most) { one.points = thin(one.points); }
    }
    for (const note of message.notes) {
      notes.prepend(make("li", "", `${note.atS.toFixed(1)} s  ${note.source}: ${note.words}`));
      while (notes.children.length > 30) { notes.lastChild.remove(); }
    }
    if (message.over) { over = true; state.textContent = "the session has ended"; }
    if (!due) { due = true; requestAnimationFrame(redraw); }
  };

  place.replaceChildren();
  hold.hidden = false;
  hold.addEventListener("click", () => { held = !held; hold.setAttribute("aria-pressed", String(held)); hold.textContent = held ? "Go on" : "Hold"; redraw(); });
  addEventListener("resize", redraw);
  const events = new EventSource("/events");
  events.addEventListener("open", () => { state.textContent = "live"; channels.clear(); place.replaceChildren(); notes.replaceChildren(); });
  events.addEventListener("message", event => take(JSON.parse(event.data)));
  events.addEventListener("error", () => { state.textContent = over ? "the session has ended" : "connection lost, trying again"; if (over) { events.close(); } });
})();
