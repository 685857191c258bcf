// The live page: figures and curves from the server's events. Everything heard is put into the page as text, never as markup.
(() => {
  const most = 3000;
  const channels = new Map();
  const place = document.getElementById("live"), notes = document.getElementById("notes"), state = document.getElementById("state"), none = document.getElementById("none"), hold = document.getElementById("hold");
  let held = false, over = false, due = false, newest = 0;

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
    const old = make("p", "note live-silent");
    section.append(head, value, curve, range, old);
    place.append(section);
    const one = { section, figure, unit, curve, range, old, points: [], said, beat: 0, seen: 0 };
    channels.set(key, one);
    return one;
  };

  // Digits as the reading's size needs them; the whole number stands in the record.
  const shown = value => Math.abs(value) >= 1e5 || (value !== 0 && Math.abs(value) < 1e-3) ? value.toExponential(3) : String(Number(value.toPrecision(5)));

  const long = seconds => seconds < 100 ? `${seconds.toFixed(seconds < 10 ? 1 : 0)} s` : seconds < 6000 ? `${Math.round(seconds / 60)} min` : `${(seconds / 3600).toFixed(1)} h`;

  // A figure that no longer comes must not look like one that does.
  const age = one => {
    const silent = (performance.now() - one.seen) / 1000, stale = over || silent > Math.max(3, 4 * one.beat);
    one.section.classList.toggle("live-old", stale);
    one.old.textContent = stale ? (over ? "the session has ended" : `no reading for ${long(silent)}`) : "";
  };

  const draw = one => {
    age(one);
    one.figure.textContent = one.said.text || shown(one.said.value);
    one.figure.classList.toggle("live-over", one.said.text === "OL" && one.said.value === null);
    one.unit.textContent = one.said.value === null ? "" : one.said.unit;
    const ratio = devicePixelRatio || 1, wide = one.curve.clientWidth * ratio, high = one.curve.clientHeight * ratio;
    one.curve.hidden = one.points.length === 0;
    if (one.points.length < 2 || wide === 0) { return; }
    one.curve.width = wide;
    one.curve.height = high;
    let low = Infinity, top = -Infinity;
    for (const [, y] of one.points) { if (!Number.isNaN(y)) { low = Math.min(low, y); top = Math.max(top, y); } }
    const from = one.points[0][0], to = one.points[one.points.length - 1][0], room = (top - low || Math.abs(top) || 1) * 0.08;
    const pen = one.curve.getContext("2d");
    pen.strokeStyle = getComputedStyle(one.curve).color;
    pen.lineWidth = 2 * ratio;
    pen.lineJoin = "round";
    pen.beginPath();
    let down = false;
    for (const [x, y] of one.points) {
      const across = (x - from) / (to - from || 1) * wide;
      if (Number.isNaN(y)) { down = false; continue; }
      const level = high - (y - low + room) / (top - low + 2 * room) * high;
      if (down) { pen.lineTo(across, level); } else { pen.moveTo(across, level); }
      down = true;
    }
    pen.stroke();
    one.range.textContent = low === top ? `${shown(low)} ${one.said.unit} throughout, ${long(to - from)}` : `${shown(low)} to ${shown(top)} ${one.said.unit} in ${long(to - from)}`;
  };

  const redraw = () => { due = false; if (!held) { channels.forEach(draw); } };

  // Of each four points the least, the greatest and a gap: peaks stay.
  const thin = points => {
    const kept = [];
    for (let at = 0; at < points.length; at += 4) {
      const four = points.slice(at, at + 4), numbers = four.filter(([, y]) => !Number.isNaN(y)).sort((a, b) => a[1] - b[1]);
      kept.push(...four.filter(one => Number.isNaN(one[1]) || one === numbers[0] || one === numbers[numbers.length - 1]));
    }
    return kept;
  };

  const take = message => {
    newest = Math.max(newest, ...message.channels.map(said => said.atS));
    none.hidden = none.hidden || message.channels.length > 0;
    for (const said of message.channels) {
      const key = said.source + "\u001f" + said.name;
      const one = channels.get(key) ?? add(key, said);
      const beats = said.points.length || 1;
      one.beat = one.seen ? 0.7 * one.beat + 0.3 * Math.max(0, said.atS - one.said.atS) / beats : 0;
      one.seen = performance.now() - 1000 * (newest - said.atS);
      one.said = said;
      one.points.push(...said.points.map(([x, y]) => [x, Number(y)]));
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
  setInterval(() => { if (!held) { channels.forEach(age); } }, 1000);
  const events = new EventSource("/events");
  events.addEventListener("open", () => { state.textContent = "live"; channels.clear(); place.replaceChildren(); notes.replaceChildren(); });
  events.addEventListener("message", event => take(JSON.parse(event.data)));
  events.addEventListener("error", () => { state.textContent = over ? "the session has ended" : "connection lost, trying again"; if (over) { events.close(); } });
})();
