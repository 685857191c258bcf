// Pictures can be looked into and taken away: values under the pointer or the arrow keys, a stretch drawn larger, and the picture as SVG, as PNG of 1920 by 1080, and as CSV.
// The numbers stand beside each picture in the page; nothing is asked of the server, and without this script the table behind each picture says the same.
(() => {
  const wide = 860, high = 484, enlarged = 1920 / wide; // 16:9; text of 12.5 px becomes 28
  const svgName = "http://www.w3.org/2000/svg";
  const fine = value => Number(value.toPrecision(4)).toString().replace("-", "−");
  const numbers = text => text.split(" ").map(one => one === "" ? NaN : Number(one));
  const node = (name, attributes, text) => {
    const one = document.createElementNS(svgName, name);
    Object.entries(attributes).forEach(([key, value]) => one.setAttribute(key, value));
    if (text !== undefined) {
      one.textContent = text;
    }

    return one;
  };
  const make = (tag, name, text) => { const one = document.createElement(tag); one.className = name; one.textContent = text; return one; };

  // 1. What a picture shows, as the page says it.
  const read = figure => {
    const series = [...figure.querySelectorAll("[data-series]")].map(one => ({
      name: one.dataset.series, form: one.dataset.form, look: one.dataset.look,
      x: numbers(one.dataset.x), y: one.dataset.y ? numbers(one.dataset.y) : [], low: one.dataset.low ? numbers(one.dataset.low) : [], high: one.dataset.high ? numbers(one.dataset.high) : [],
    }));
    const limits = [...figure.querySelectorAll("[data-limit]")].map(one => ({ name: one.dataset.limit, at: Number(one.dataset.at) }));
    const uprights = [...figure.querySelectorAll("[data-upright]")].map(one => ({ name: one.dataset.upright, at: Number(one.dataset.at) }));
    const marks = [...figure.querySelectorAll("[data-mark]")].map(one => ({ name: one.dataset.mark, x: Number(one.dataset.x), y: Number(one.dataset.y) }));
    return { left: figure.dataset.limits === "left", x: figure.dataset.across, y: figure.dataset.up, series, limits, uprights, marks };
  };

  const range = (values, room) => {
    const all = values.filter(Number.isFinite);
    let low = Math.min(...all), top = Math.max(...all);
    if (all.length === 0) {
      [low, top] = [0, 1];
    }

    const more = top > low ? (room ? 0.06 * (top - low) : 0) : Math.max(1, Math.abs(low)) * 0.1;
    return [low - more, top + more];
  };
  const ticks = ([low, top], about) => {
    const rough = (top - low) / about, power = 10 ** Math.floor(Math.log10(rough)), share = rough / power;
    const step = power * (share < 1.5 ? 1 : share < 3.5 ? 2 : share < 7.5 ? 5 : 10), found = [];
    for (let i = Math.ceil(low / step); i * step <= top; i++) {
      found.push(Number((i * step).toPrecision(12)));
    }

    return found;
  };

  // 2. A curve picture of any size and stretch, in the classes of the style sheet.
  const plot = (data, width, height, stretch) => {
    const left = 46, top = 24, right = width - 8, bottom = height - 40; // as the server draws it
    const inside = one => !stretch || (one >= stretch[0] && one <= stretch[1]);
    const seen = (xs, ys) => ys.filter((_, i) => inside(xs[i]));
    const across = stretch ?? range(data.series.flatMap(one => one.x), false);
    const up = range([...data.series.flatMap(one => [...seen(one.x, one.y), ...seen(one.x, one.low), ...seen(one.x, one.high)]), ...data.limits.map(one => one.at), ...data.marks.filter(one => inside(one.x)).map(one => one.y)], true);
    const at = x => left + (x - across[0]) / (across[1] - across[0]) * (right - left), level = y => bottom - (y - up[0]) / (up[1] - up[0]) * (bottom - top);
    const put = number => number.toFixed(1), place = (x, y) => `${put(at(x))} ${put(level(y))}`;
    const parts = [], path = (look, d) => parts.push(node("path", { class: look, d })), words = (x, y, anchor, look, text) => parts.push(node("text", { x: put(x), y: put(y), "text-anchor": anchor, class: look }, text));
    const box = `M${left} ${top}H${right}V${bottom}H${left}Z`;
    path("plot", box);
    ticks(up, 5).forEach(one => { path("grid", `M${left} ${put(level(one))}H${right}`); words(left - 6, level(one) + 4.5, "end", "", fine(one)); });
    ticks(across, Math.max(3, width / 110)).forEach(one => { path("grid", `M${put(at(one))} ${top}V${bottom}`); words(at(one), bottom + 16, "middle", "", fine(one)); });
    const line = (xs, ys) => {
      let d = "", pen = false;
      xs.forEach((x, i) => {
        const there = Number.isFinite(ys[i]) && inside(x);
        d += there ? `${pen ? "L" : "M"}${place(x, ys[i])}` : "";
        pen = there;
      });
      return d;
    };
    data.series.forEach(one => {
      if (one.low.length > 0) {
        const there = one.x.map((x, i) => i).filter(i => Number.isFinite(one.low[i]) && Number.isFinite(one.high[i]) && inside(one.x[i]));
        if (there.length > 1) {
          path(`band ${one.look}`, `M${[...there.map(i => place(one.x[i], one.high[i])), ...there.reverse().map(i => place(one.x[i], one.low[i]))].join("L")}Z`);
        }
      } else if (one.form === "points") {
        path("dots", one.x.map((x, i) => Number.isFinite(one.y[i]) && inside(x) ? `M${place(x, one.y[i])}h.01` : "").join(""));
      } else {
        path(`curve ${one.look}`, line(one.x, one.y));
      }
    });
    data.limits.forEach(one => {
      path("limit", `M${left} ${put(level(one.at))}H${right}`);
      words(data.left ? left + 6 : right - 6, level(one.at) + (level(one.at) < top + 18 ? 15 : -5), data.left ? "start" : "end", "strong halo", `${one.name} ${fine(one.at)}`);
    });
    data.uprights.filter(one => one.at >= across[0] && one.at <= across[1]).forEach((one, i) => {
      const turned = at(one.at) > right - 0.3 * (right - left);
      path("limit", `M${put(at(one.at))} ${top}V${bottom}`);
      words(at(one.at) + (turned ? -5 : 5), top + 15 + 16 * i, turned ? "end" : "start", "strong halo", `${one.name} ${fine(one.at)}`);
    });
    data.marks.filter(one => inside(one.x)).sort((a, b) => a.x - b.x).forEach((one, i, all) => {
      const side = i === 0 ? -1 : i === all.length - 1 ? 1 : 0;
      path("dots", `M${place(one.x, one.y)}h.01`);
      words(at(one.x) + 8 * side, level(one.y) + (side === 0 ? 32 : 17), side < 0 ? "end" : side > 0 ? "start" : "middle", "halo", one.name);
    });
    path("frame", box);
    words(left, top - 9, "start", "", data.y);
    words(right, height - 5, "end", "", data.x);
    return { parts, across, at, left, right, top, bottom };
  };

  // 3. Tables that draw: loop and bars. Each cell's words, each small drawing in its place.
  const table = source => {
    const rows = source.matches(".loop")
      ? [[...source.querySelectorAll(".head-col .cell")].map(cell => ({ cell })), ...[...source.querySelectorAll(":scope > ul > li")].map(row => [...row.querySelectorAll(".cell")].map(cell => ({ cell })))]
      : [...source.querySelectorAll("tr")].map(row => [...row.children].map(cell => ({ cell })));
    return rows.map(row => row.map(({ cell }) => ({ text: words(cell), drawing: cell.querySelector("svg[preserveAspectRatio=none]"), cell })));
  };
  const words = cell => {
    const copy = cell.cloneNode(true);
    copy.querySelectorAll(".off, svg, .origin").forEach(one => one.remove());
    copy.querySelectorAll("small, mark").forEach(one => one.before(" "));
    return copy.textContent.replace(/\s+/g, " ").trim();
  };
  const laid = (source, parts) => {
    const rows = table(source), loop = source.matches(".loop");
    const columns = loop ? rows[0].length : Math.max(...rows.map(row => row.length)), lines = loop ? rows.length : columns;
    const grid = loop ? rows[0].map((_, i) => rows.map(row => row[i])) : rows; // the loop stands upright: one element a column
    const widths = Array.from({ length: lines }, (_, i) => Math.max(...grid.map(row => row[i] ? Math.max(...[row[i].text.length], row[i].drawing ? 14 : 3) : 3)));
    const whole = widths.reduce((sum, one) => sum + Math.min(one, 34), 0), step = Math.min(54, (high - 30) / grid.length);
    grid.forEach((row, i) => {
      let x = 20;
      row.forEach((cell, j) => {
        const room = (wide - 40) * Math.min(widths[j], 34) / whole, y = 34 + i * step;
        if (cell?.drawing) {
          const box = cell.drawing.viewBox.baseVal, tall = Math.min(step - 16, box.height < 12 ? 10 : 40), down = box.height < 12 && cell.text ? y + 5 : y - tall / 2 - 4;
          parts.push({ drawing: cell.drawing, matrix: [(room - 10) / box.width, 0, 0, tall / box.height, x, down] });
        }

        if (cell?.text) {
          parts.push({ text: cell.text.length > 34 ? cell.text.slice(0, 33) + "…" : cell.text, x, y, strong: i === 0 || cell.cell.matches("th, .name") });
        }

        x += room;
      });
    });
    return parts;
  };

  // 4. Taking away: every element as the style sheet draws it in the light, on any ground.
  const inLight = work => {
    const root = document.documentElement, was = root.dataset.theme;
    root.dataset.theme = "light";
    try {
      return work();
    } finally {
      if (was === undefined) {
        delete root.dataset.theme;
      } else {
        root.dataset.theme = was;
      }
    }
  };
  const styled = one => {
    const look = getComputedStyle(one), asked = { fill: look.fill, opacity: look.opacity };
    return one.tagName === "text"
      ? { ...asked, text: one.textContent, x: Number(one.getAttribute("x")), y: Number(one.getAttribute("y")), anchor: one.getAttribute("text-anchor") ?? "start", size: parseFloat(look.fontSize), weight: look.fontWeight, halo: look.paintOrder.startsWith("stroke") ? look.stroke : "" }
      : { ...asked, d: one.getAttribute("d"), stroke: look.stroke, width: parseFloat(look.strokeWidth), dash: look.strokeDasharray === "none" ? "" : look.strokeDasharray, cap: look.strokeLinecap, join: look.strokeLinejoin, fixed: look.vectorEffect === "non-scaling-stroke" };
  };
  const items = figure => inLight(() => {
    const drawn = figure.matches("figure") ? figure.querySelector("svg") : null;
    if (figure.querySelector("[data-series]")) {
      const svg = node("svg", { class: "probe", viewBox: `0 0 ${wide} ${high}`, "aria-hidden": "true" });
      svg.append(...plot(read(figure), wide, high, figure.stretch).parts);
      figure.append(svg);
      const found = [...svg.children].map(styled);
      svg.remove();
      return found;
    }

    if (drawn) {
      const box = drawn.viewBox.baseVal, scale = Math.min(wide / box.width, high / box.height), matrix = [scale, 0, 0, scale, (wide - scale * box.width) / 2, (high - scale * box.height) / 2];
      return [...drawn.querySelectorAll("path, text")].map(one => ({ ...styled(one), matrix }));
    }

    const ink = getComputedStyle(document.body).color;
    return laid(figure, []).flatMap(one => one.drawing ? [...one.drawing.querySelectorAll("path")].map(path => ({ ...styled(path), matrix: one.matrix, fixed: true }))
      : [{ fill: ink, opacity: "1", text: one.text, x: one.x, y: one.y, anchor: "start", size: 12.5, weight: one.strong ? "700" : "400", halo: "" }]);
  });
  const face = () => getComputedStyle(document.body).fontFamily;
  const svgText = figure => {
    const svg = node("svg", { xmlns: svgName, viewBox: `0 0 ${wide} ${high}`, width: 1920, height: 1080, "font-family": face() });
    items(figure).forEach(one => {
      const moved = one.matrix ? { transform: `matrix(${one.matrix.map(part => Number(part.toFixed(4))).join(" ")})` } : {};
      svg.append(one.text !== undefined
        ? node("text", { x: one.x, y: one.y, "text-anchor": one.anchor, "font-size": one.size, "font-weight": one.weight, fill: one.fill, ...(one.halo ? { stroke: one.halo, "stroke-width": 4, "paint-order": "stroke", "stroke-linejoin": "round" } : {}), ...moved }, one.text)
        : node("path", { d: one.d, fill: one.fill, stroke: one.stroke, "stroke-width": one.width, opacity: one.opacity, "stroke-linecap": one.cap, "stroke-linejoin": one.join, ...(one.dash ? { "stroke-dasharray": one.dash } : {}), ...(one.matrix && one.fixed ? { "vector-effect": "non-scaling-stroke" } : {}), ...moved }));
    });
    return new XMLSerializer().serializeToString(svg);
  };
  const paint = figure => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [1920, 1080];
    const pen = canvas.getContext("2d"), font = face();
    pen.fillStyle = "#ffffff";
    pen.fillRect(0, 0, 1920, 1080);
    pen.scale(enlarged, enlarged);
    items(figure).forEach(one => {
      pen.save();
      pen.globalAlpha = Number(one.opacity);
      if (one.text !== undefined) {
        pen.transform(...(one.matrix ?? [1, 0, 0, 1, 0, 0]));
        pen.font = `${one.weight} ${one.size}px ${font}`;
        pen.textAlign = { start: "left", middle: "center", end: "right" }[one.anchor];
        if (one.halo) {
          [pen.strokeStyle, pen.lineWidth, pen.lineJoin] = [one.halo, 4, "round"];
          pen.strokeText(one.text, one.x, one.y);
        }

        pen.fillStyle = one.fill;
        pen.fillText(one.text, one.x, one.y);
      } else if (one.d) {
        // A small drawing is stretched to its place, its strokes are not.
        const path = new Path2D();
        path.addPath(new Path2D(one.d), one.matrix ? new DOMMatrix(one.matrix) : undefined);
        if (one.fill !== "none") {
          pen.fillStyle = one.fill;
          pen.fill(path);
        }

        if (one.stroke !== "none" && one.width > 0) {
          [pen.strokeStyle, pen.lineWidth, pen.lineCap, pen.lineJoin] = [one.stroke, one.width, one.cap, one.join];
          pen.setLineDash(one.dash ? one.dash.split(/[ ,]+/).map(parseFloat) : []);
          pen.stroke(path);
        }
      }

      pen.restore();
    });
    return canvas;
  };
  const field = text => /[",\n]/.test(text) ? `"${text.replaceAll("\"", "\"\"")}"` : text;
  const csv = figure => {
    if (!figure.querySelector("[data-series]")) {
      const source = figure.matches("figure") ? figure.parentElement.querySelector("details.behind table") : figure;
      const rows = source ? table(source).map(row => row.filter(one => !one.cell.matches(".sym, .share")).map(one => one.text.replaceAll("−", "-"))) : [];
      if (figure.matches(".loop")) {
        rows[0][0] = "before it";
      }

      return rows.map(row => row.slice(0, rows[0].length).map(field).join(",") + "\n").join(""); // a sum has no share
    }

    const data = read(figure), number = one => Number.isFinite(one) ? String(one) : "";
    const columns = one => one.low.length > 0 ? [[`${one.name}, low`, one.low], [`${one.name}, high`, one.high]] : [[one.name, one.y]];
    const groups = Object.values(Object.groupBy(data.series, one => one.x.join(" ")));
    return groups.map(group => {
      const all = group.flatMap(columns);
      return [[data.x, ...all.map(([name]) => `${name} (${data.y})`)].map(field).join(","), ...group[0].x.map((x, i) => [x, ...all.map(([, values]) => values[i])].map(number).join(","))].join("\n");
    }).join("\n\n") + "\n";
  };
  const named = figure => (figure.dataset.called ?? figure.closest(".piece")?.querySelector("h2, h3")?.textContent ?? figure.dataset.up ?? "picture").trim().toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "");
  const take = (figure, ending, blob) => {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(blob);
    link.download = `${document.title.split(" · ")[0].toLowerCase().replace(/[^a-z0-9]+/g, "-")}-${named(figure)}.${ending}`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  };

  // 5. Looking into a curve picture: the reading line, and a stretch drawn larger.
  const look = figure => {
    const said = make("p", "reads note", ""), data = read(figure);
    said.setAttribute("role", "status");
    const places = [...new Set(data.series.flatMap(one => one.x))].filter(Number.isFinite).sort((a, b) => a - b);
    const whole = range(places, false);
    let index = -1, drawn = null, from = null;
    const svgs = () => [...figure.querySelectorAll(":scope > svg")];
    const shown = () => svgs().find(one => one.clientWidth > 0 || one.getBoundingClientRect().width > 0);
    const redraw = () => {
      svgs().forEach(svg => {
        const box = svg.viewBox.baseVal, next = plot(data, box.width, box.height, figure.stretch);
        svg.replaceChildren(...next.parts);
        svg.geometry = next;
      });
      mark();
    };
    const geometry = svg => svg.geometry ??= plot(data, svg.viewBox.baseVal.width, svg.viewBox.baseVal.height, figure.stretch);
    const nearest = (xs, x) => xs.reduce((best, one, i) => Math.abs(one - x) < Math.abs(xs[best] - x) ? i : best, 0);
    const mark = () => {
      drawn?.remove();
      drawn = null;
      if (index < 0) {
        return;
      }

      const x = places[index], svg = shown(), space = svg ? geometry(svg) : null;
      if (space && x >= space.across[0] && x <= space.across[1]) {
        drawn = node("path", { class: "reading", d: `M${space.at(x).toFixed(1)} ${space.top}V${space.bottom}` });
        svg.append(drawn);
      }

      said.textContent = `${data.x.split(", ")[0]} ${fine(x)}${data.x.includes(", ") ? " " + data.x.split(", ")[1] : ""}: ` + data.series.map(one => {
        const i = nearest(one.x, x), unit = data.y.includes(", ") ? " " + data.y.split(", ").pop() : "";
        return one.low.length > 0 ? (Number.isFinite(one.low[i]) ? `${one.name} ${fine(one.low[i])} to ${fine(one.high[i])}${unit}` : "") : Number.isFinite(one.y[i]) ? `${one.name} ${fine(one.y[i])}${unit}` : "";
      }).filter(Boolean).join("; ");
    };
    const go = next => {
      index = Math.min(places.length - 1, Math.max(0, next));
      mark();
    };
    const zoom = stretch => {
      const [low, top] = stretch ?? whole, lean = Math.max(low, whole[0]), end = Math.min(top, whole[1]);
      if (stretch && places.filter(one => one >= lean && one <= end).length < 3) {
        return;
      }

      figure.stretch = !stretch || (lean <= whole[0] && end >= whole[1]) ? undefined : [lean, end];
      redraw();
      tools.querySelector("[data-do=whole]").disabled = !figure.stretch;
    };
    const by = factor => {
      const [low, top] = figure.stretch ?? whole, middle = index >= 0 ? Math.min(top, Math.max(low, places[index])) : (low + top) / 2, half = (top - low) / 2 * factor;
      zoom([middle - half, middle + half]);
    };
    const place = event => {
      const svg = shown(), frame = svg.getBoundingClientRect(), space = geometry(svg), x = (event.clientX - frame.left) / frame.width * svg.viewBox.baseVal.width;
      return space.across[0] + (x - space.left) / (space.right - space.left) * (space.across[1] - space.across[0]);
    };
    figure.addEventListener("pointermove", event => { if (event.target.closest("svg")) { go(nearest(places, place(event))); } });
    figure.addEventListener("pointerdown", event => {
      from = event.target.closest("svg") && event.pointerType === "mouse" ? place(event) : null;
      if (event.target.closest("svg")) {
        go(nearest(places, place(event)));
      }
    });
    figure.addEventListener("pointerup", event => {
      const to = from !== null && event.target.closest("svg") ? place(event) : null;
      if (to !== null && Math.abs(to - from) > 0.02 * ((figure.stretch ?? whole)[1] - (figure.stretch ?? whole)[0])) {
        zoom([Math.min(from, to), Math.max(from, to)]);
      }

      from = null;
    });
    figure.addEventListener("keydown", event => {
      const step = event.shiftKey ? 10 : 1, act = { ArrowRight: () => go(index + step), ArrowLeft: () => go(index < 0 ? places.length - 1 : index - step), Home: () => go(0), End: () => go(places.length - 1), "+": () => by(0.5), "-": () => by(2), 0: () => zoom(null) }[event.key];
      if (act && event.target === figure) {
        event.preventDefault();
        act();
      }
    });
    figure.tabIndex = 0;
    figure.setAttribute("role", "group");
    figure.setAttribute("aria-label", `${data.y} against ${data.x}: arrow keys read values, plus and minus draw a stretch larger or smaller, nought the whole`);
    const tools = bar(figure, [["closer", "Closer", () => by(0.5)], ["whole", "Whole", () => zoom(null)]]);
    tools.querySelector("[data-do=whole]").disabled = true;
    return [said, tools];
  };
  const ways = figure => [["csv", "CSV", () => take(figure, "csv", new Blob([csv(figure)], { type: "text/csv" }))], ["svg", "SVG", () => take(figure, "svg", new Blob([svgText(figure)], { type: "image/svg+xml" }))],
    ["png", "PNG", () => paint(figure).toBlob(blob => take(figure, "png", blob), "image/png")]];
  // A drawing that is a file of its own: as it is, or fitted into 16:9.
  const waysOfDrawing = (figure, image) => [["svg", "SVG", async () => take(figure, "svg", await (await fetch(image.src)).blob())], ["png", "PNG", () => {
    const canvas = document.createElement("canvas"), scale = Math.min(1920 / image.naturalWidth, 1080 / image.naturalHeight);
    [canvas.width, canvas.height] = [1920, 1080];
    const pen = canvas.getContext("2d");
    pen.fillStyle = "#ffffff";
    pen.fillRect(0, 0, 1920, 1080);
    pen.drawImage(image, (1920 - scale * image.naturalWidth) / 2, (1080 - scale * image.naturalHeight) / 2, scale * image.naturalWidth, scale * image.naturalHeight);
    canvas.toBlob(blob => take(figure, "png", blob), "image/png");
  }]];
  const bar = (figure, more, own = ways(figure)) => {
    const tools = make("div", "pic-tools", "");
    [...more, ...own].forEach(([name, text, act]) => {
      const button = make("button", "btn", text);
      button.type = "button";
      button.dataset.do = name;
      button.setAttribute("aria-label", `${text}: ${named(figure).replaceAll("-", " ")}`);
      button.addEventListener("click", act);
      tools.append(button);
    });
    return tools;
  };
  const furnish = () => document.querySelectorAll("figure.pic, .loop, table.takes, .drawing:has(img)").forEach(figure => {
    if (!figure.furnished) {
      figure.furnished = true;
      const image = figure.matches(".drawing") ? figure.querySelector("img") : null;
      figure.after(...figure.querySelector("[data-series]") ? look(figure) : [image ? bar(figure, [], waysOfDrawing(figure, image)) : bar(figure, [])]);
    }
  });
  document.addEventListener("heatwright:pictures", furnish); // a piece of the page has come anew
  furnish();
})();
