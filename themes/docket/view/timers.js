// Named timers: moments of the clock, kept where the kitchen view of the publication keeps its own, so that both ring.
"use strict";
const timers = (() => {
  const panel = document.getElementById("timers");
  const list = panel.querySelector("ul");
  const words = panel.dataset;
  let sound = null;
  const read = () => {
    try {
      return (JSON.parse(localStorage.getItem("timers")) || []).filter((each) => Number.isFinite(each.high));
    } catch {
      return [];
    }
  };
  let all = read();
  const keep = () => {
    try {
      localStorage.setItem("timers", JSON.stringify(all));
    } catch {
      // Then they last as long as the page.
    }
  };
  const wake = () => {
    const Sound = window.AudioContext || window.webkitAudioContext;
    if (!Sound) return;
    sound = sound || new Sound();
    if (sound.state !== "running") sound.resume();
  };
  const beep = () => {
    if (!sound || sound.state !== "running") return;
    const tone = sound.createOscillator();
    tone.frequency.value = 880;
    tone.connect(sound.destination);
    tone.start();
    tone.stop(sound.currentTime + 0.3);
  };
  const two = (number) => String(number).padStart(2, "0");
  const clock = (seconds) => `${Math.floor(seconds / 3600) ? `${Math.floor(seconds / 3600)}:` : ""}${two(Math.floor((seconds % 3600) / 60))}:${two(seconds % 60)}`;
  const change = (work) => {
    work();
    keep();
    draw();
  };
  const rows = new Map();
  const row = (timer) => {
    const made = document.createElement("li");
    const name = document.createElement("b");
    name.textContent = `${timer.name} · ${timer.title}`;
    const left = document.createElement("span");
    left.className = "left";
    left.setAttribute("role", "timer");
    const said = document.createElement("span");
    said.setAttribute("role", "alert");
    const button = (text, work) => {
      const each = document.createElement("button");
      each.type = "button";
      each.textContent = text;
      each.setAttribute("aria-label", `${text}: ${timer.name}`);
      each.addEventListener("click", () => change(work));
      return each;
    };
    const quiet = button(words.quiet, () => { const now = all.find((each) => each.id === timer.id); now.heard = now.state; });
    made.append(name, left, said, quiet, button(words.stop, () => { all = all.filter((each) => each.id !== timer.id); }));
    list.append(made);
    return { made, left, said, quiet };
  };
  const draw = () => {
    const now = Date.now();
    for (const [id, each] of rows) if (!all.some((timer) => timer.id === id)) {
      each.made.remove();
      rows.delete(id);
    }
    let ringing = false;
    for (const timer of all) {
      if (!rows.has(timer.id)) rows.set(timer.id, row(timer));
      const each = rows.get(timer.id);
      timer.state = now >= timer.high ? "up" : now >= timer.low ? "look" : "";
      const rings = timer.state !== "" && timer.heard !== timer.state;
      each.left.textContent = clock(Math.max(0, Math.ceil((timer.high - now) / 1000)));
      const told = timer.state ? words[timer.state] : "";
      if (each.said.textContent !== told) each.said.textContent = told;
      each.made.classList.toggle("rings", rings);
      each.quiet.hidden = !rings;
      ringing = ringing || rings;
    }
    panel.hidden = !all.length;
    if (ringing && Math.floor(now / 1000) % 2 === 0) {
      beep();
      if (navigator.vibrate) navigator.vibrate([200, 100, 200]);
    }
  };
  addEventListener("storage", (event) => { if (event.key === "timers") { all = read(); draw(); } });
  addEventListener("pointerdown", wake);
  addEventListener("keydown", wake);
  setInterval(draw, 1000);
  draw();
  return {
    start: (name, title, recipe, low, high) => change(() => {
      const now = Date.now();
      all.push({ id: `${now} ${Math.random()}`, name, title, recipe, low: now + low * 1000, high: now + high * 1000, heard: "" });
    }),
  };
})();
