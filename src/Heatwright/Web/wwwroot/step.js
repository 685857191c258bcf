// Keeps an open page in step with the study, and what is typed into its forms safe: through a reload, a lost connection, a bench that was killed.
(() => {
  const root = document.documentElement, work = document.getElementById("work"), lamp = document.getElementById("live-state");
  if (!root.dataset.start || !work) {
    return;
  }

  const make = (tag, name, text) => { const one = document.createElement(tag); one.className = name; one.textContent = text; return one; };
  const store = {
    get: key => { try { return JSON.parse(localStorage.getItem(key)); } catch { return null; } },
    set: (key, value) => { try { value === null ? localStorage.removeItem(key) : localStorage.setItem(key, JSON.stringify(value)); } catch { /* a browser that keeps nothing still types */ } },
    keys: () => { try { return Object.keys(localStorage); } catch { return []; } },
  };

  // 1. Drafts: what was touched in a form and not taken yet. The entry line of a trial has its own.
  const prefix = "heatwright draft ";
  const forms = () => [...work.querySelectorAll("form[method=post]")].filter(form => !form.closest("#entry[data-trial]") || !form.classList.contains("entry"));
  const keyOf = form => `${prefix}${form.getAttribute("action")}`;
  const fields = form => [...form.elements].filter(one => one.name && !["hidden", "file", "submit", "button"].includes(one.type));
  const isTick = one => one.type === "checkbox" || one.type === "radio";
  const nameOf = one => isTick(one) ? `${one.name}\n${one.value}` : one.name;
  const valueOf = one => isTick(one) ? one.checked : one.value;
  const usual = one => isTick(one) ? one.defaultChecked : one.options ? ([...one.options].find(option => option.defaultSelected) ?? one.options[0])?.value ?? "" : one.defaultValue;
  const differs = form => fields(form).some(one => valueOf(one) !== usual(one));
  const note = (form, words, button, act) => {
    form.querySelector(":scope > .draft-note")?.remove();
    if (words) {
      const box = make("p", "draft-note", words + " ");
      box.setAttribute("role", "status");
      if (button) {
        const press = make("button", "btn", button);
        press.type = "button";
        press.addEventListener("click", act);
        box.append(press);
      }

      form.append(box);
    }
  };

  // A form that was taken says so by the name of its draft.
  const mark = `heatwright-kept-${root.dataset.start}=`, taken = document.cookie.split("; ").find(one => one.startsWith(mark))?.slice(mark.length);
  if (taken) {
    document.cookie = `${mark}; path=/; max-age=0; samesite=strict`;
    store.keys().filter(key => key.startsWith(prefix) && store.get(key)?.id === taken).forEach(key => store.set(key, null));
  }

  const restore = () => forms().forEach(form => {
    const draft = store.get(keyOf(form));
    const lost = draft ? fields(form).filter(one => nameOf(one) in draft.typed && draft.typed[nameOf(one)] !== valueOf(one)) : [];
    if (lost.length === 0) {
      return;
    }

    lost.forEach(one => { isTick(one) ? one.checked = draft.typed[nameOf(one)] : one.value = draft.typed[nameOf(one)]; });
    for (let fold = form.closest("details"); fold; fold = fold.parentElement.closest("details")) {
      fold.open = true;
    }

    note(form, "What you typed here was not taken yet: it is back.", "Let it go", () => {
      store.set(keyOf(form), null);
      form.reset();
      note(form, "");
    });
  });
  const typed = event => {
    const form = event.target.form;
    if (!form || !forms().includes(form) || !fields(form).includes(event.target)) {
      return;
    }

    const draft = store.get(keyOf(form)) ?? { id: Math.random().toString(36).slice(2, 14), typed: {} };
    draft.typed[nameOf(event.target)] = valueOf(event.target);
    if (!root.dataset.refused && valueOf(event.target) === usual(event.target)) {
      delete draft.typed[nameOf(event.target)];
    }

    store.set(keyOf(form), Object.keys(draft.typed).length > 0 ? draft : null);
  };
  work.addEventListener("input", typed);
  work.addEventListener("change", typed);

  // Sent only when the bench is there, and with a token of the bench that is there.
  const send = (form, by) => {
    const hide = (name, value) => { const one = make("input", "", ""); Object.assign(one, { type: "hidden", name, value }); form.append(one); };
    const draft = store.get(keyOf(form));
    form.querySelectorAll("input[name=draft]").forEach(one => one.remove()); // of a time before that came to nothing
    if (draft) {
      hide("draft", draft.id);
    }

    if (by?.name) {
      hide(by.name, by.value);
    }

    if (by?.hasAttribute("formaction")) {
      form.action = by.formAction;
    }

    HTMLFormElement.prototype.submit.call(form);
  };
  const renew = async start => {
    const next = new DOMParser().parseFromString(await (await fetch("/brief")).text(), "text/html");
    const token = next.querySelector("input[name=token]").value;
    document.querySelectorAll("input[name=token]").forEach(one => { one.value = token; });
    root.dataset.start = start;
  };
  document.addEventListener("submit", async event => {
    const form = event.target;
    if (event.defaultPrevented || form.method !== "post" || !work.contains(form)) {
      return;
    }

    event.preventDefault();
    if (form.dataset.sending) {
      return;
    }

    form.dataset.sending = "yes";
    try {
      const answer = await fetch("/state");
      if (answer.status === 401) {
        delete form.dataset.sending;
        note(form, "This device is not paired with the bench any more. What you typed is kept in this browser.");
        return;
      }

      const now = await answer.json();
      if (now.start !== root.dataset.start) {
        await renew(now.start);
      }

      send(form, event.submitter);
    } catch {
      delete form.dataset.sending;
      note(form, "The bench does not answer. What you typed is kept in this browser: send it again when the bench is back.");
    }
  });
  addEventListener("pageshow", event => {
    if (event.persisted) {
      forms().forEach(form => { delete form.dataset.sending; });
    }
  });
  restore();

  // 2. Lines that were still on their way when their trial's page was left: each page sends on what waits in this browser, unless a page of that trial or another living tab does.
  const tell = (words, href, link) => {
    const box = make("p", "behind-now sent-on", words + " "), way = make("a", "", link);
    way.href = href;
    box.setAttribute("role", "status");
    box.append(way);
    work.after(box);
  };
  let sendingOn = false;
  const sendOn = async () => {
    if (sendingOn) {
      return;
    }

    sendingOn = true;
    const here = document.getElementById("entry")?.dataset.trial, own = (() => { try { return sessionStorage.getItem("heatwright tab"); } catch { return null; } })();
    const left = store.keys().map(key => ({ key, named: /^heatwright (.+) waiting (\S+)$/.exec(key) })).filter(one => one.named && one.named[1] !== here && (one.named[2] === own || Date.now() - Number(store.get(`heatwright alive ${one.named[2]}`) ?? 0) >= 10000));
    try {
      for (const { key, named: [, trial, tab] } of left) {
        const page = `/trials/${encodeURIComponent(trial)}`, token = new DOMParser().parseFromString(await (await fetch(page)).text(), "text/html").querySelector("#entry form.entry input[name=token]")?.value;
        let kept = 0;
        for (let lines = store.get(key) ?? []; lines.length > 0 && token; lines = store.get(key) ?? []) {
          const [next, ...rest] = lines;
          store.set(key, [{ ...next, sent: true }, ...rest]);
          const response = await fetch(`${page}/line`, { method: "POST", headers: { Accept: "application/json" }, body: new URLSearchParams({ token, run: next.run, number: next.number, line: next.line, id: next.id, first: next.sent ? "" : "yes" }) });
          if (response.status !== 200 && response.status !== 422) {
            return; // it goes on waiting
          }

          const answer = await response.json();
          if (answer.problem) {
            localStorage.setItem(`heatwright ${trial} typed ${tab}`, next.line);
            tell(`A line typed at ${trial} was not understood, and waits in its field: ${next.line}.`, page, "Mend it");
          }

          kept += answer.problem ? 0 : 1;
          store.set(key, rest.length > 0 ? rest.map((one, i) => ({ ...one, run: answer.run ?? one.run, number: answer.problem ? one.number : answer.number + 1 + i })) : null);
        }

        if (kept > 0) {
          tell(kept === 1 ? `The last line typed at ${trial} is kept.` : `The last ${kept} lines typed at ${trial} are kept.`, page, "Look");
        }
      }
    } catch { /* the bench is away: they wait for the next connection */ } finally {
      sendingOn = false;
    }
  };
  sendOn();

  // 3. In step: one live connection while the page is looked at. What somebody types into is never taken from under his hands.
  let source = null, busy = false, again = false;
  const isTyped = () => forms().some(differs) || work.querySelector("script[src]") !== null || root.dataset.refused;
  const fold = one => `${one.querySelector("summary")?.textContent}`;
  const renewPage = async () => {
    const response = await fetch(location.href);
    const next = new DOMParser().parseFromString(await response.text(), "text/html"), fresh = next.getElementById("work");
    if (!response.ok || !fresh || isTyped()) {
      return;
    }

    const open = [...work.querySelectorAll("details")].filter(one => one.open).map(fold), focus = [...work.querySelectorAll("a, button, input, select, textarea, summary")], at = focus.indexOf(document.activeElement);
    work.replaceChildren(...fresh.childNodes);
    work.querySelectorAll("details").forEach(one => { one.open = one.open || open.includes(fold(one)); });
    if (at >= 0) {
      work.querySelectorAll("a, button, input, select, textarea, summary")[at]?.focus({ preventScroll: true });
    }

    document.querySelector(".rule")?.replaceWith(next.querySelector(".rule"));
    root.dataset.state = next.documentElement.dataset.state;
    lamp.replaceChildren(...next.getElementById("live-state").childNodes);
    restore();
  };
  const behind = () => {
    if (!document.querySelector(".behind-now:not(.sent-on)")) {
      const box = make("p", "behind-now", "The study was changed elsewhere. "), press = make("button", "btn", "Show it");
      press.type = "button";
      press.addEventListener("click", () => { location.href = root.dataset.refused ? document.querySelector(".rule [aria-current=page]")?.href ?? "/" : location.href.split("#")[0]; });
      box.setAttribute("role", "status");
      box.append(press);
      work.after(box);
    }
  };
  const follow = async state => {
    if (state === root.dataset.state) {
      return;
    }

    if (busy) {
      again = true;
      return;
    }

    busy = true;
    try {
      if (!dispatchEvent(new CustomEvent("bench-changed", { cancelable: true, detail: state }))) {
        root.dataset.state = state; // the page follows by itself
      } else if (!isTyped()) {
        await renewPage();
      } else if (state.split(" ")[0] !== root.dataset.state.split(" ")[0]) {
        behind();
      }
    } catch { /* the bench is away; its state comes with the next connection */ }

    busy = false;
    if (again) {
      again = false;
      reconnect();
    }
  };
  const away = () => {
    if (lamp && !lamp.querySelector(".lost")) {
      lamp.replaceChildren(make("span", "live-dot lost", ""), "the bench does not answer; what you type waits here");
    }
  };
  const shut = () => {
    source?.close();
    source = null;
  };
  const listen = () => {
    if (source || document.hidden) {
      return;
    }

    source = new EventSource("/changes");
    const own = source;
    own.onmessage = message => {
      if (lamp?.querySelector(".lost")) {
        lamp.replaceChildren(make("span", "live-dot", ""), "in step again");
        sendOn();
      }

      follow(JSON.parse(message.data).state);
    };
    own.onerror = () => {
      away();
      if (own.readyState === EventSource.CLOSED) {
        shut();
        setTimeout(listen, 1000);
      }
    };
  };
  const reconnect = () => {
    shut();
    listen();
  };
  document.addEventListener("visibilitychange", () => document.hidden ? shut() : listen());
  addEventListener("pagehide", shut);
  addEventListener("pageshow", listen);
  listen();
})();
