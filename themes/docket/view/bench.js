// The bench: one line at a time, and entries that are sent in their order, each once, whenever there is a connection.
(() => {
  "use strict";
  const root = document.getElementById("bench");
  const { name } = root.dataset;
  const place = `bench ${name}`;
  const by = (id) => document.getElementById(id);
  const rows = [...document.querySelectorAll(".ticks li")];
  const box = (row) => row.querySelector("input");
  const fresh = () => ({ day: root.dataset.day, size: root.dataset.size, ticks: [], queue: [], log: [], at: 0, begun: false });
  let keeps = true;
  let state = fresh();
  let older = null;
  const aWhile = 18 * 3600 * 1000;
  try {
    const before = JSON.parse(localStorage.getItem(place));
    // What waits is sent, however old it is; ticks are of one day and one size.
    if (before && (before.queue.length || ([before.day, before.goesOn].includes(state.day) && before.begun))) state = before;
    else if (before && before.begun && Date.now() - before.last < aWhile) older = before;
  } catch {
    // Nothing was kept.
  }
  const keep = () => {
    try {
      state.last = Date.now();
      localStorage.setItem(place, JSON.stringify(state));
      keeps = true;
    } catch {
      keeps = false;
    }
    line();
  };
  const line = () => {
    const words = by("line-state");
    const waits = state.queue.length;
    words.classList.toggle("waits", waits > 0);
    words.textContent = !state.begun ? "" : !keeps ? words.dataset.lost : waits ? `${waits} ${waits === 1 ? words.dataset.one : words.dataset.waiting}` : words.dataset.sent;
    drawLog();
  };
  const newId = () => [...crypto.getRandomValues(new Uint8Array(12))].map((each) => each.toString(16).padStart(2, "0")).join("");

  // ---- Sending ----
  let sending = null;
  const settle = (answer, ids) => {
    const refused = new Map(answer.refused || []);
    const done = new Set(answer.done || []);
    state.queue = state.queue.filter((each) => !done.has(each.id) && !refused.has(each.id));
    for (const each of state.log) {
      if (done.has(each.id)) each.sent = true;
      if (refused.has(each.id)) each.refused = refused.get(each.id);
      if (refused.has(each.out)) {
        desk.tell(refused.get(each.out));
        each.out = "";
      }
    }
    if (answer.told && answer.told.length) desk.tell(...answer.told);
    return ids.some((id) => done.has(id) || refused.has(id));
  };
  const photo = async (entry) => {
    // Decoded by hand: the policy of the desk lets nothing be fetched but the desk.
    const data = Uint8Array.from(atob(entry.photo.split(",")[1]), (letter) => letter.charCodeAt(0));
    const answer = await fetch(`/desk/bench/${name}/photo?day=${state.day}&id=${entry.id}`, { method: "POST", headers: { "Content-Type": "image/jpeg", "X-Desk-Token": desk.token }, body: data });
    const words = await answer.text();
    return answer.ok ? JSON.parse(words) : { ok: false, told: [words.slice(0, 300)] };
  };
  const flushAll = async () => {
    while (state.queue.length) {
      // Pictures come last: one that cannot be sent keeps no words waiting.
      const words = state.queue.filter((each) => !each.photo).slice(0, 100);
      const some = words.length ? words : state.queue.slice(0, 1);
      const answer = some[0].photo ? await photo(some[0]) : await desk.send(`/desk/bench/${name}/entries`, { day: state.day, entries: some.map(({ id, kind, text }) => ({ id, kind, text })) });
      if (!answer.ok) {
        desk.tell(...answer.told);
        return;
      }
      if (!settle(answer, some.map((each) => each.id))) return;
      keep();
    }
  };
  const flush = () => {
    sending = sending || flushAll().catch(() => {}).finally(() => {
      sending = null;
      line();
    });
    return sending;
  };
  const put = (kind, text, extra = {}) => {
    const entry = { id: newId(), kind, text, ...extra };
    state.queue.push(entry);
    if (kind !== "start" && kind !== "drop") state.log.push({ id: entry.id, kind, text });
    keep();
    flush();
    return entry.id;
  };
  addEventListener("online", flush);
  setInterval(() => { if (state.queue.length) flush(); }, 4000);

  const drawLog = () => {
    const list = by("log");
    list.replaceChildren(...state.log.map((each) => {
      const row = document.createElement("li");
      const said = document.createElement("span");
      const words = each.words || (each.kind === "add" ? `+ ${each.text}` : each.kind === "photo" ? each.text : `${by("facts").elements[each.kind]?.dataset.word || each.kind}: ${each.text}`);
      said.textContent = `${words} · ${each.refused || (each.out ? list.dataset.out : each.sent ? list.dataset.sent : list.dataset.waiting)}`;
      row.append(said);
      if (each.refused) row.className = "refused";
      else if (each.out) row.className = "out";
      else if (each.kind === "add") row.append(takeBack(each, list.dataset.remove));
      return row;
    }));
  };
  // A hand with flour on it presses twice: what was entered by mistake is taken out of the record again.
  const takeBack = (each, words) => {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "tidy";
    button.textContent = words;
    button.setAttribute("aria-label", `${words}: ${each.text}`);
    button.addEventListener("click", () => {
      each.out = put("drop", each.text);
      keep();
      by("more").querySelector("[data-more]").focus();
    });
    return button;
  };

  // ---- Weighing ----
  const isIn = (at) => state.ticks.includes(at);
  const show = (focus = true) => {
    const row = rows[state.at];
    by("now-part").textContent = row.dataset.part;
    by("now-amount").textContent = row.dataset.amount;
    by("now-item").textContent = row.querySelector("span").textContent;
    by("now-more").textContent = row.dataset.more;
    by("what").value = row.dataset.what;
    by("back").disabled = state.at === 0;
    by("on").disabled = state.at === rows.length - 1;
    by("tick").textContent = isIn(state.at) ? by("tick").dataset.out : by("tick").dataset.in;
    by("count").textContent = by("count").dataset.of.replace("{n}", state.ticks.length).replace("{all}", rows.length);
    rows.forEach((each, at) => { box(each).checked = isIn(at); });
    if (focus) by("now").focus({ preventScroll: true });
    by("done").hidden = state.ticks.length < rows.length;
  };
  const tick = (at, on) => {
    state.ticks = state.ticks.filter((each) => each !== at);
    if (on) state.ticks.push(at);
    keep();
  };
  by("tick").addEventListener("click", (event) => {
    // The second half of a double press would tick a line that nobody has read.
    if (event.detail > 1) return;
    const on = !isIn(state.at);
    tick(state.at, on);
    if (on) {
      const order = [...rows.keys()];
      const next = [...order.slice(state.at + 1), ...order.slice(0, state.at)].find((at) => !isIn(at));
      if (next !== undefined) state.at = next;
    }
    keep();
    show();
  });
  const turn = (by_) => {
    state.at = Math.min(rows.length - 1, Math.max(0, state.at + by_));
    keep();
    show();
  };
  by("back").addEventListener("click", () => turn(-1));
  by("on").addEventListener("click", () => turn(1));
  rows.forEach((row, at) => box(row).addEventListener("change", () => {
    tick(at, box(row).checked);
    show(false);
  }));

  // ---- More of it ----
  const when = () => (by("when").value.trim() ? `, ${by("when").value.trim()}` : "");
  for (const each of document.querySelectorAll("[data-more]")) if (each.matches("button")) each.addEventListener("click", () => put("add", `${each.dataset.more} ${by("what").value}${when()}`));
  by("more").addEventListener("submit", (event) => {
    event.preventDefault();
    const text = by("other").value.trim();
    if (!text) return by("other").focus();
    put("add", `${text}${when()}`);
    by("other").value = "";
  });
  by("facts").addEventListener("submit", (event) => {
    event.preventDefault();
    for (const field of event.target.elements) if (field.name && field.value.trim()) {
      put(field.name, field.value.trim());
      field.value = "";
    }
  });
  by("photo").addEventListener("change", async (event) => {
    const [file] = event.target.files;
    if (!file) return;
    try {
      // Made smaller here, so that it can wait for a connection; the desk reads and writes it anew besides.
      const picture = await createImageBitmap(file);
      const scale = Math.min(1, 1600 / Math.max(picture.width, picture.height));
      const canvas = document.createElement("canvas");
      canvas.width = Math.max(1, Math.round(picture.width * scale));
      canvas.height = Math.max(1, Math.round(picture.height * scale));
      canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
      put("photo", file.name, { photo: canvas.toDataURL("image/jpeg", 0.85) });
    } catch {
      desk.tell(`${file.name}: ${event.target.dataset.unread}`);
    }
    event.target.value = "";
  });
  for (const each of document.querySelectorAll("[data-timer]")) each.addEventListener("click", () => timers.start(each.dataset.timer, root.querySelector("h1").textContent, name, Number(each.dataset.low), Number(each.dataset.high)));

  // ---- The sum ----
  const text = (element, words, kind) => {
    const made = document.createElement(element);
    made.textContent = words;
    if (kind) made.className = kind;
    return made;
  };
  const offer = ({ command, ...values }) => {
    const made = text("div", "", "offer");
    made.append(text("p", `${values.what.split("/").pop()}: ${values.new}`, "offer-new"), text("p", values.why));
    const button = text("button", by("summed").dataset.correct, "door");
    button.type = "button";
    button.addEventListener("click", async () => {
      button.disabled = true;
      const answer = await desk.send(`/desk/correct/${name}`, values).catch((error) => ({ told: [String(error)] }));
      desk.tell(...answer.told);
      button.disabled = false;
      if (answer.ok) made.replaceChildren(...answer.told.map((each) => text("p", each)));
    });
    made.append(text("code", command), button);
    return made;
  };
  by("sum").addEventListener("click", async () => {
    await flush();
    if (state.queue.length) return desk.tell(by("line-state").textContent);
    const answer = await (await fetch(`/desk/bench/${name}/sum.json?day=${state.day}`)).json();
    if (!answer.ok) return desk.tell(...answer.told);
    const forgotten = rows.filter((row, at) => !isIn(at)).map((row) => row.querySelector("span").textContent);
    by("summed").replaceChildren(
      text("p", answer.summary),
      ...answer.alarms.map((each) => text("p", each, "alarm")),
      ...(forgotten.length ? [text("p", `${by("summed").dataset.forgotten}: ${forgotten.join(", ")}`, "alarm")] : []),
      ...answer.facts.map(([label, words]) => text("p", `${label}: ${words}`)),
      ...answer.remarks.map((each) => text("p", each)),
      ...answer.offered.map(offer),
      ...(answer.no_offer ? [text("p", answer.no_offer)] : []),
    );
  });
  by("finish").addEventListener("click", async () => {
    await flush();
    if (state.queue.length) return desk.tell(by("line-state").textContent);
    localStorage.removeItem(place);
    location.href = "/desk/";
  });

  // ---- Beginning ----
  let lock = null;
  const stayAwake = async () => {
    try {
      lock = await navigator.wakeLock.request("screen");
    } catch {
      lock = null;
    }
  };
  document.addEventListener("visibilitychange", () => { if (state.begun && document.visibilityState === "visible") stayAwake(); });
  const begin = () => {
    by("setup").hidden = true;
    for (const each of ["weigh", "added", "lines", "clocks", "how", "end"]) if (by(each)) by(each).hidden = false;
    root.classList.add("begun");
    by("lines").before(by("cautions"));
    stayAwake();
    show();
    by("weigh").scrollIntoView();
  };
  const goOn = () => {
    if (state.size !== root.dataset.size) return location.replace(`?size=${encodeURIComponent(state.size)}`);
    for (const each of document.querySelectorAll("[data-on-day]")) each.textContent = state.day;
    begin();
    flush();
  };
  // A bake may go on past midnight: then both are offered, and nothing is taken for granted.
  if (older) {
    const button = by("resume");
    button.hidden = false;
    button.textContent = `${button.dataset.words} ${older.day}`;
    button.addEventListener("click", () => {
      state = { ...older, goesOn: root.dataset.day };
      keep();
      goOn();
    });
  }
  by("start").addEventListener("click", () => {
    state = { ...fresh(), begun: true };
    begin();
    put("start", state.size);
    if (root.dataset.scale) put("note", root.dataset.scale);
  });
  if (state.begun) goOn();
  line();
})();
