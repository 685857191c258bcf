// Try a change: sliders and fields say what is tried, the server works it out, the page shows what comes of it. The draws follow behind, and stop when something else is tried.
(() => {
  const form = document.getElementById("dials");
  if (!form) {
    return;
  }

  const seen = document.getElementById("seen"), told = document.getElementById("told"), keep = document.getElementById("keep"), kept = document.getElementById("kept");
  const page = new URL(form.action).pathname, fields = [...form.querySelectorAll("[data-was]")];
  const quiet = 250;
  let asking = false, again = false, leaving = false, drawing = null, timer = 0;

  const isMoved = field => field.value.trim() !== "" && field.value.trim() !== field.dataset.was;
  const tried = () => fields.filter(isMoved).map(field => [field.name, field.value.trim()]);
  const slider = field => form.querySelector(`[data-of="${field.id}"]`);

  const mark = field => {
    const knob = field.closest(".knob"), moved = isMoved(field), range = slider(field);
    knob.classList.toggle("moved", moved);
    knob.querySelector(".was button").hidden = !moved;
    if (range) {
      range.setAttribute("aria-valuetext", field.value);
    }

    const group = field.closest("details"), own = [...group.querySelectorAll("[data-was]")], count = own.filter(isMoved).length;
    group.querySelector(".aside").textContent = count > 0 ? `${count} of ${own.length} moved` : String(own.length);
  };

  const show = html => {
    const next = new DOMParser().parseFromString(html, "text/html");
    const open = [...seen.querySelectorAll("details[open] > summary")].map(one => one.textContent);
    seen.replaceChildren(...next.body.childNodes);
    seen.querySelectorAll("details > summary").forEach(one => { one.parentElement.open = open.includes(one.textContent); });
    const main = seen.querySelector("[data-told]"), button = keep.querySelector("button");
    told.textContent = main ? main.dataset.told : "This cannot be tried; see below what stands in its way.";
    button.disabled = !main || main.dataset.moved === "0";
    button.textContent = main ? main.dataset.keep : "Nothing to keep yet";
  };

  const ask = async () => {
    drawing?.abort();
    clearTimeout(timer);
    if (asking) {
      again = true;
      return;
    }

    asking = true;
    try {
      do {
        again = false;
        const values = tried(), query = new URLSearchParams(values).toString();
        history.replaceState(null, "", page + (query ? `?${query}` : ""));
        kept.replaceChildren(...values.map(([name, value]) => Object.assign(document.createElement("input"), { type: "hidden", name, value })));
        show(await (await fetch(`${page}/seen?${query}`)).text());
      } while (again);
      timer = setTimeout(draw, quiet);
    } catch {
      told.textContent = "The connection is lost. What you moved stays in this page; it is asked again every second.";
      timer = setTimeout(ask, 1000);
    } finally {
      asking = false;
    }
  };

  const draw = async () => {
    const bar = seen.querySelector("progress");
    if (!bar) {
      return;
    }

    const mine = drawing = new AbortController(), query = new URLSearchParams(tried()).toString();
    try {
      const reader = (await fetch(`${page}/draws?${query}`, { signal: mine.signal })).body.pipeThrough(new TextDecoderStream()).getReader();
      for (let part = await reader.read(); !part.done; part = await reader.read()) {
        const [done, of] = part.value.trim().split("\n").pop().split(" ");
        bar.value = Number(done);
        seen.querySelector(".drawing output").textContent = `${done} of at most ${of}`;
      }

      const text = await (await fetch(`${page}/seen?${query}`, { signal: mine.signal })).text();
      if (!mine.signal.aborted) {
        show(text);
      }
    } catch { /* something else is tried, or the server is away: the next change asks again */ }
  };

  fields.forEach(field => {
    const range = slider(field);
    if (range) {
      range.parentElement.hidden = false;
      range.value = parseFloat(field.value.replace(",", "."));
      range.addEventListener("input", () => {
        field.value = range.value + (field.dataset.unit ? ` ${field.dataset.unit}` : "");
        mark(field);
        ask();
      });
    }

    field.addEventListener("input", () => {
      if (range && (/^[\s0-9.,+-]+$/.test(field.value) || field.value.trim().endsWith(field.dataset.unit))) {
        range.value = parseFloat(field.value.replace(",", "."));
      }

      mark(field);
      ask();
    });
    field.closest(".knob").querySelector(".was button").addEventListener("click", () => {
      field.value = field.dataset.was;
      if (range) {
        range.value = parseFloat(field.value);
      }

      mark(field);
      field.focus();
      ask();
    });
    mark(field);
  });
  if (matchMedia("(max-width: 700px)").matches) {
    // On a phone what comes of it should not lie far below: only the first group and what is moved stay open.
    [...form.querySelectorAll("details")].slice(1).forEach(group => { group.open = [...group.querySelectorAll("[data-was]")].some(isMoved); });
  }

  form.addEventListener("submit", event => {
    event.preventDefault();
    ask();
  });
  form.querySelector("button[type=submit]").hidden = true; // everything follows by itself
  seen.querySelector(".drawing a")?.remove();
  timer = setTimeout(draw, quiet);

  // Keeping changes the study, too: the page must not ask for itself anew while it is on its way to the clone.
  keep.addEventListener("submit", () => {
    leaving = true;
    drawing?.abort();
  });
  addEventListener("pageshow", () => { leaving = false; });

  // Changes of others: another tab, the command line. What is tried stands in the address and comes along.
  let state = null;
  setInterval(async () => {
    if (document.hidden || asking || leaving) {
      return;
    }

    try {
      const now = (await (await fetch("/state")).json()).state;
      if (state !== null && now !== state && !leaving) {
        location.reload();
      }

      state = now;
    } catch { /* the server is away; it is asked again */ }
  }, 1000);
})();
