// The entry line at the bench: understood while it is typed, kept without leaving the page, safe from a lost connection; and the stopwatch beside it.
(() => {
  const entry = document.getElementById("entry");
  if (!entry) {
    return;
  }

  const form = entry.querySelector("form.entry"), line = form.elements.line, echo = form.querySelector(".echo"), remark = entry.querySelector(".live-remark");
  const trial = entry.dataset.trial, page = `/trials/${encodeURIComponent(trial)}`;
  let run = entry.dataset.run;
  const store = {
    get: name => { try { return localStorage.getItem(`heatwright ${trial} ${name}`); } catch { return null; } },
    set: (name, value) => { try { value === null ? localStorage.removeItem(`heatwright ${trial} ${name}`) : localStorage.setItem(`heatwright ${trial} ${name}`, value); } catch { /* a browser that keeps nothing still types */ } },
  };
  const make = (tag, name, text) => { const one = document.createElement(tag); one.className = name; one.textContent = text; return one; };

  // Each tab has lines of its own: two of them on one trial must not send each other's. A tab that is gone leaves its lines to the next one.
  const alive = tab => Date.now() - Number(localStorage.getItem(`heatwright alive ${tab}`) ?? 0) < 10000;
  const beat = at => { try { localStorage.setItem(`heatwright alive ${tab}`, String(at)); } catch { /* then nothing is left behind either */ } };
  const newTab = () => Math.random().toString(36).slice(2, 10);
  let tab = newTab();
  try {
    const before = sessionStorage.getItem("heatwright tab");
    tab = before && !alive(before) ? before : tab; // a copied tab brings the name of one that lives
    sessionStorage.setItem("heatwright tab", tab);
  } catch { /* a browser that keeps nothing has one tab */ }

  const waiting = () => JSON.parse(store.get(`waiting ${tab}`) ?? "[]");
  const wait = lines => store.set(`waiting ${tab}`, lines.length > 0 ? JSON.stringify(lines) : null);
  const inherit = first => {
    try {
      const start = `heatwright ${trial} waiting `;
      for (const key of Object.keys(localStorage).filter(one => one.startsWith(start))) {
        const other = key.slice(start.length);
        if (other !== tab && !alive(other)) {
          wait([...waiting(), ...JSON.parse(localStorage.getItem(key))]);
          localStorage.removeItem(key);
        }
      }

      // A line half typed when its tab was lost goes on here, unless another is begun.
      const half = first && Object.keys(localStorage).find(one => one.startsWith(`heatwright ${trial} typed `) && !alive(one.slice(`heatwright ${trial} typed `.length)) && !one.endsWith(` ${tab}`));
      if (half && line.value === "" && !store.get(`typed ${tab}`)) {
        line.value = localStorage.getItem(half);
        store.set(`typed ${tab}`, line.value || null);
        localStorage.removeItem(half);
      }
    } catch { /* nothing was kept, so nothing was left */ }
  };
  beat(Date.now());
  setInterval(() => {
    beat(Date.now());
    inherit(false);
    if (waiting().length > 0) {
      send();
    }
  }, 2000);
  addEventListener("pagehide", () => beat(0));
  inherit(true);
  let sending = false, asked = 0, timer = 0;

  // What was typed and not sent survives a reload and a crash.
  if (line.value === "" && store.get(`typed ${tab}`)) {
    line.value = store.get(`typed ${tab}`);
  }

  const say = fields => echo.replaceChildren(...fields.flatMap(field => [make("span", "", field.column + " "), make("b", "", field.understood)]));
  const hang = (words, kind) => {
    if (!words) {
      remark.replaceChildren();
      return;
    }

    const box = make("div", `remark ${kind}`, ""), text = make("p", "", "");
    text.append(make("b", "word", kind === "cannot" ? "Cannot be" : "Look again"), " " + words);
    box.append(text);
    remark.replaceChildren(box);
  };
  const told = (answer, prefix) => {
    if (answer.problem) {
      echo.replaceChildren(make("span", "", `${answer.problem.what} ${answer.problem.next}`));
      hang("", "");
      return;
    }

    say(answer.fields);
    if (prefix) {
      echo.prepend(make("span", "", prefix));
    }

    const news = answer.remarks[0];
    hang(news ? (news.reading && news.reading !== answer.number ? `reading ${news.reading}: ` : "") + news.words : "", news && news.leftOut ? "cannot" : "look");
  };

  const look = async () => {
    const typed = line.value, mine = ++asked;
    if (!typed.trim() || !run) {
      return;
    }

    try {
      const answer = await (await fetch(`${page}/look?run=${encodeURIComponent(run)}&line=${encodeURIComponent(typed)}`)).json();
      if (mine === asked && line.value === typed) {
        told(answer, "");
      }
    } catch { /* the line is understood when the connection is back */ }
  };
  line.addEventListener("input", () => {
    store.set(`typed ${tab}`, line.value || null);
    clearTimeout(timer);
    timer = setTimeout(look, 120);
  });

  const count = number => {
    form.elements.number.value = number;
    form.querySelector(".no").textContent = number;
  };
  const refresh = async () => {
    const text = await (await fetch(page)).text();
    const next = new DOMParser().parseFromString(text, "text/html");
    const live = next.getElementById("live");
    if (live) {
      document.getElementById("live").replaceWith(live);
      form.elements.token.value = next.querySelector("#entry form.entry input[name=token]").value;
      const there = next.getElementById("entry");
      if (there.dataset.run !== run && waiting().length === 0) {
        location.reload();
      } else if (waiting().length === 0) {
        count(next.querySelector("#entry form.entry input[name=number]").value);
      }
    }
  };

  // Lines go one after the other. One whose answer is lost is sent again with its number, and is taken once.
  const send = async () => {
    if (sending) {
      return;
    }

    sending = true;
    try {
      while (waiting().length > 0) {
        const [next, ...rest] = waiting();
        const body = new URLSearchParams({ token: form.elements.token.value, run: next.run, number: next.number, line: next.line, id: next.id, first: next.sent ? "" : "yes" });
        wait([{ ...next, sent: true }, ...rest]);
        const response = await fetch(form.action, { method: "POST", body, headers: { Accept: "application/json" } });
        if (response.status === 400) {
          await refresh(); // the server began anew and gives another token
          throw new Error("again");
        }

        if (response.status === 401) {
          throw new Error("This device is not paired with the bench any more.");
        }

        if (response.status !== 200 && response.status !== 422) {
          throw new Error("The bench could not take the line.");
        }

        const answer = await response.json();
        if (answer.problem) {
          // Not understood: back into the line, so that it can be mended; nothing typed is dropped.
          wait(waiting().slice(1));
          line.value = line.value || next.line;
          store.set(`typed ${tab}`, line.value);
          told(answer, "");
        } else {
          wait(waiting().slice(1).map((one, i) => ({ ...one, run: answer.run, number: answer.number + 1 + i })));
          if (!run) {
            location.reload();
            return;
          }

          count(answer.number + 1 + waiting().length);
          told(answer, `kept as ${answer.number}: `);
        }
      }

      refresh().catch(() => { /* the bench is away; its state comes with the next connection */ });
    } catch (error) {
      const lost = error instanceof TypeError || error.message === "again" ? "The connection is lost." : error.message; // a fetch that reaches nobody is a TypeError
      echo.replaceChildren(make("span", "", `${lost} Go on typing: ${waiting().length === 1 ? "1 line waits" : waiting().length + " lines wait"} in this browser.`));
      setTimeout(send, 500);
    } finally {
      sending = false;
    }
  };
  form.addEventListener("submit", event => {
    event.preventDefault();
    const typed = line.value;
    if (!typed.trim()) {
      return;
    }

    const number = Number(form.elements.number.value);
    wait([...waiting(), { run, number, line: typed, id: newTab() + newTab(), sent: false }]);
    line.value = "";
    store.set(`typed ${tab}`, null);
    if (run) {
      count(number + 1);
    }

    send();
  });
  if (waiting().length > 0) {
    send();
  }

  // Changes of others, another tab, the command line; and findings, when they are worked out.
  addEventListener("bench-changed", event => {
    event.preventDefault();
    if (!sending) {
      refresh().catch(() => { /* the bench is away; its state comes with the next connection */ });
    }
  });

  // The stopwatch: its start is kept, so a reload does not stop it. A split writes the seconds into their place in the line.
  const watch = entry.querySelector(".watch"), place = entry.dataset.time;
  if (place !== "") {
    const shown = watch.querySelector("output"), go = watch.querySelector("[data-watch=go]"), stop = watch.querySelector("[data-watch=stop]");
    const seconds = () => store.get("began") ? (Date.now() - Number(store.get("began"))) / 1000 : null;
    const draw = () => {
      const now = seconds();
      shown.textContent = (now ?? Number(store.get("stopped") ?? 0)).toFixed(1);
      go.textContent = now === null ? "Start" : "Split";
      stop.disabled = now === null;
    };
    const split = () => {
      if (seconds() === null) {
        store.set("began", String(Date.now()));
      } else {
        const fields = line.value.split(/\s+/).filter(Boolean);
        fields.splice(Number(place), 0, seconds().toFixed(1));
        line.value = fields.join(" ") + " ";
        store.set(`typed ${tab}`, line.value);
        line.focus();
      }

      draw();
    };
    watch.hidden = false;
    go.addEventListener("click", split);
    stop.addEventListener("click", () => {
      store.set("stopped", (seconds() ?? 0).toFixed(1));
      store.set("began", null);
      draw();
    });
    line.addEventListener("keydown", event => {
      if (event.key === " " && line.value === "") {
        event.preventDefault();
        split();
      }
    });
    setInterval(draw, 100);
    draw();
  }
})();
