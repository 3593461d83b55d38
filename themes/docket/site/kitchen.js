// The kitchen view: the page's own steps, one a screen, and timers made of their durations.
// It computes no amount and words nothing: steps are copied as they stand, words come from the page's template.
(() => {
  "use strict";

  const recipe = document.querySelector("[data-docket]");
  // The pieces of kitchen-pieces.html: the words stand at the head of this script as it is published.
  const holder = document.createElement("template");
  holder.innerHTML = kitchenPieces;
  const pieces = holder.content;
  const door = document.querySelector(".kitchen-offer button");
  const piece = (selector) => pieces.querySelector(selector).cloneNode(true);
  const place = `kitchen ${recipe.dataset.recipe}`;

  // A browser may forbid the store, for instance for pages opened from a disk: then nothing is remembered.
  const recall = (store, key, otherwise) => {
    try {
      return JSON.parse(window[store].getItem(key)) ?? otherwise;
    } catch {
      return otherwise;
    }
  };
  const keep = (store, key, value) => {
    try {
      if (value === null) window[store].removeItem(key);
      else window[store].setItem(key, JSON.stringify(value));
    } catch {
      // See above.
    }
  };

  // ---- Timers: moments of the clock, so that they outlive a reload. ----
  const panel = piece(".timers");
  const list = panel.querySelector("ul");
  const rows = new Map();
  let timers = recall("localStorage", "timers", []).filter((each) => Number.isFinite(each.high));
  let sound = null;

  const saveTimers = () => keep("localStorage", "timers", timers.length ? timers : null);
  const beep = () => {
    if (!sound || sound.state !== "running") return;
    for (const start of [0, 0.25, 0.5]) {
      const tone = sound.createOscillator();
      const loudness = sound.createGain();
      tone.frequency.value = 880;
      loudness.gain.value = 0.4;
      tone.connect(loudness).connect(sound.destination);
      tone.start(sound.currentTime + start);
      tone.stop(sound.currentTime + start + 0.15);
    }
  };
  // A browser lets a page ring only after a touch or a key.
  const wakeSound = () => {
    const Sound = window.AudioContext || window.webkitAudioContext;
    if (!Sound) return;
    sound = sound || new Sound();
    if (sound.state !== "running") sound.resume();
  };
  const clock = (seconds) => {
    const two = (number) => String(number).padStart(2, "0");
    const hours = Math.floor(seconds / 3600);
    const minutes = Math.floor((seconds % 3600) / 60);
    return hours ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
  };

  const addRow = (timer) => {
    const row = piece(".timer");
    const elsewhere = timer.recipe !== recipe.dataset.recipe;
    row.querySelector(".timer-name").textContent = elsewhere ? `${timer.name}: ${timer.title}` : timer.name;
    row.querySelector(".timer-stop").addEventListener("click", () => {
      timers = timers.filter((each) => each.id !== timer.id);
      saveTimers();
      tick();
    });
    row.querySelector(".timer-quiet").addEventListener("click", () => {
      timer.heard = timer.state;
      saveTimers();
      tick();
    });
    for (const button of row.querySelectorAll("button")) button.setAttribute("aria-label", `${button.textContent}: ${timer.name}`);
    list.append(row);
    rows.set(timer.id, row);
  };
  const showTimer = (timer, now) => {
    if (!rows.has(timer.id)) addRow(timer);
    const row = rows.get(timer.id);
    const said = row.querySelector(".timer-said");
    timer.state = now >= timer.high ? "up" : now >= timer.low ? "look" : "";
    row.querySelector(".timer-left").textContent = clock(Math.max(0, Math.ceil((timer.high - now) / 1000)));
    const words = timer.state ? said.dataset[timer.state] : "";
    if (said.textContent !== words) said.textContent = words;
    const rings = timer.state !== "" && timer.heard !== timer.state;
    row.classList.toggle("timer-rings", rings);
    row.querySelector(".timer-quiet").hidden = !rings;
    return rings;
  };
  const title = document.title;
  let running = null;
  const tick = () => {
    const now = Date.now();
    for (const [id, row] of rows) {
      if (timers.some((each) => each.id === id)) continue;
      row.remove();
      rows.delete(id);
    }
    const ringing = timers.filter((each) => showTimer(each, now));
    panel.hidden = timers.length === 0;
    document.title = ringing.length ? `! ${ringing[0].name}` : title;
    if (ringing.length && Math.floor(now / 1000) % 2 === 0) {
      beep();
      if (navigator.vibrate) navigator.vibrate([200, 100, 200]);
    }
    if (timers.length && running === null) running = setInterval(tick, 1000);
    if (!timers.length && running !== null) {
      clearInterval(running);
      running = null;
    }
  };
  const startTimer = (name, low, high) => {
    const now = Date.now();
    const id = `${now} ${Math.random()}`;
    const { dataset } = recipe;
    timers.push({ id, name, recipe: dataset.recipe, title: recipe.querySelector("h1").textContent, low: now + low * 1000, high: now + high * 1000, heard: "" });
    saveTimers();
    wakeSound();
    tick();
  };
  // Another page of this publication may start or stop one.
  addEventListener("storage", (event) => {
    if (event.key !== "timers") return;
    timers = recall("localStorage", "timers", []);
    tick();
  });

  // ---- Leaves: what stands on each screen. ----
  const copy = (element) => {
    const made = element.cloneNode(true);
    for (const each of [made, ...made.querySelectorAll("[id]")]) each.removeAttribute("id");
    for (const each of made.querySelectorAll("a[href^='#']")) each.replaceWith(...each.childNodes);
    return made;
  };
  const stepsOf = (section) => {
    const leaves = [];
    let before = [];
    for (const element of section ? section.children : []) {
      if (element.matches(".step")) {
        leaves.push({ step: element, before, after: [] });
        before = [];
      } else if (element.matches(".loading")) leaves.push({ loading: element, before: [], after: [] });
      else if (element.matches(".caution, .between, h4")) {
        // A caution between two steps is told with both.
        if (element.matches(".caution") && leaves.length) leaves[leaves.length - 1].after.push(element);
        before.push(element);
      }
    }
    if (before.length && leaves.length) {
      const last = leaves[leaves.length - 1];
      last.after.push(...before.filter((each) => !last.after.includes(each)));
    }
    return leaves;
  };
  const ways = [...recipe.querySelectorAll("[data-way]")];
  const shown = () => ways.filter((way) => !way.hidden);
  let way = shown().length === 1 ? shown()[0] : null;
  const leavesNow = () => {
    const cautions = recipe.querySelector(":scope > .caution");
    const start = cautions || ways.length > 1 ? [{ start: cautions }] : [];
    const common = recipe.querySelector(".way-common") || (ways.length ? null : recipe.querySelector(".method"));
    return [...start, ...(ways.length > 1 && !way ? [] : stepsOf(way || ways[0])), ...(ways.length > 1 && !way ? [] : stepsOf(common))];
  };

  // ---- The view itself. ----
  const view = piece(".kitchen");
  const part = (name) => view.querySelector(`.kitchen-${name}`);
  let leaves = [];
  let at = 0;

  const offerTimers = (leaf, number) => {
    for (const line of leaf.querySelectorAll("[data-seconds]")) {
      const [low, high] = line.dataset.seconds.split(" ").map(Number);
      const button = piece(".timer-start");
      const name = button.dataset.timer.replace("{kind}", line.dataset.kind).replace("{n}", number);
      button.textContent = button.dataset.words;
      button.setAttribute("aria-label", `${button.dataset.words}: ${line.textContent.trim()}`);
      button.addEventListener("click", () => startTimer(name, low, high));
      line.append(button);
    }
  };
  const offerWays = (leaf) => {
    if (ways.length < 2) return;
    const choice = piece(".kitchen-ways");
    for (const each of ways) {
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = each.dataset.way;
      button.setAttribute("aria-pressed", String(each === way));
      button.addEventListener("click", () => {
        way = each;
        turn(1);
      });
      choice.append(button);
    }
    leaf.append(choice);
  };
  const stepNumber = () => leaves.filter((each) => each.step).indexOf(leaves[at]) + 1;
  const stepWords = () => {
    const all = leaves.filter((each) => each.step).length;
    return part("place").dataset.step.replace("{n}", stepNumber()).replace("{all}", all);
  };
  const placeWords = (leaf) => {
    if (!leaf.step) return part("place").dataset[leaf.loading ? "loading" : "start"];
    const section = leaf.step.closest("[data-way]");
    return section ? `${stepWords()}, ${section.dataset.way}` : stepWords();
  };
  const show = () => {
    const leaf = leaves[at];
    const words = placeWords(leaf);
    const body = part("leaf");
    const inside = leaf.step || leaf.loading || leaf.start;
    body.replaceChildren(...[...(leaf.before || []), ...(inside ? [inside] : []), ...(leaf.after || [])].map(copy));
    if (leaf.step) offerTimers(body, stepNumber());
    if (!leaf.step && !leaf.loading) offerWays(body);
    part("place").textContent = words;
    part("back").disabled = at === 0;
    const on = part("on");
    on.textContent = at === leaves.length - 1 && !(ways.length > 1 && !way) ? on.dataset.last : on.dataset.next;
    on.disabled = ways.length > 1 && !way;
    body.scrollTop = 0;
    body.focus();
    keep("sessionStorage", place, { at, way: way ? way.id : "" });
  };
  const turn = (to) => {
    leaves = leavesNow();
    if (to >= leaves.length) return view.close();
    at = Math.max(0, to);
    show();
  };

  let lock = null;
  const stayAwake = async () => {
    try {
      lock = await navigator.wakeLock.request("screen");
      part("awake").textContent = part("awake").dataset.on;
    } catch {
      part("awake").textContent = part("awake").dataset.off;
    }
  };
  const open = (from) => {
    if (view.open) return;
    view.showModal();
    part("timers").append(panel);
    stayAwake();
    turn(from);
  };
  view.addEventListener("close", () => {
    if (lock) lock.release();
    lock = null;
    keep("sessionStorage", place, null);
    document.body.append(panel);
    door.focus();
  });
  document.addEventListener("visibilitychange", () => {
    if (view.open && document.visibilityState === "visible") stayAwake();
    tick();
  });
  part("close").addEventListener("click", () => view.close());
  part("back").addEventListener("click", () => turn(at - 1));
  part("on").addEventListener("click", () => turn(at + 1));
  part("on").dataset.next = part("on").textContent;
  view.addEventListener("keydown", (event) => {
    if (event.key === "ArrowRight" && !part("on").disabled) turn(at + 1);
    if (event.key === "ArrowLeft") turn(at - 1);
  });
  addEventListener("pointerdown", wakeSound);
  addEventListener("keydown", wakeSound);

  document.body.append(view, panel);
  door.addEventListener("click", () => open(0));
  tick();
  const before = recall("sessionStorage", place, null);
  if (before) {
    way = ways.find((each) => each.id === before.way) || way;
    open(before.at);
  } else if (door === document.activeElement) open(0);
})();
