// What all pages of the desk share: sending a change with its token, telling the answer, copying, printing, reloading.
"use strict";
const desk = (() => {
  const token = document.querySelector("meta[name='desk-token']").content;
  const said = document.getElementById("desk-said");
  let told = 0;
  const tell = (...words) => {
    said.textContent = words.filter(Boolean).join("\n");
    told = Date.now();
  };
  // What was read may go: at the next press elsewhere, or with Escape. It lies over the timers.
  addEventListener("pointerdown", () => { if (Date.now() - told > 2000) said.textContent = ""; });
  addEventListener("keydown", (event) => { if (event.key === "Escape") said.textContent = ""; });
  const send = async (address, values) => {
    const answer = await fetch(address, { method: "POST", headers: { "Content-Type": "application/json", "X-Desk-Token": token }, body: JSON.stringify(values) });
    const text = await answer.text();
    try {
      return { status: answer.status, told: [], ...JSON.parse(text) };
    } catch {
      return { status: answer.status, ok: false, told: [text] };
    }
  };
  const copy = async (text) => {
    try {
      await navigator.clipboard.writeText(text);
    } catch {
      // Without a secure connection a browser copies only what is selected.
      const field = document.createElement("textarea");
      field.value = text;
      document.body.append(field);
      field.select();
      const done = document.execCommand("copy");
      field.remove();
      if (!done) return false;
    }
    return true;
  };
  const copied = async (text, button) => tell((await copy(text)) ? `✓ ${button.textContent}` : text);
  document.addEventListener("click", async (event) => {
    const button = event.target.closest("button");
    if (!button) return;
    const { copyFrom, copy: text, print, send: address, ...values } = button.dataset;
    if (copyFrom) {
      const found = await fetch(copyFrom);
      const words = await found.text();
      if (found.ok) copied(words, button);
      else tell(words);
    }
    if (text !== undefined) copied(text, button);
    if (print) {
      const paper = window.open(print);
      if (paper) paper.addEventListener("load", () => paper.print());
    }
    if (address) {
      const answer = await send(address, values).catch((error) => ({ told: [String(error)] }));
      tell(...answer.told);
      if (answer.ok) {
        sessionStorage.setItem("said", answer.told.join("\n"));
        location.reload();
      }
    }
  });
  const before = sessionStorage.getItem("said");
  if (before) tell(before);
  sessionStorage.removeItem("said");
  const seek = document.getElementById("seek");
  if (seek) seek.addEventListener("input", () => {
    for (const each of document.querySelectorAll(".bake")) each.hidden = !each.dataset.words.includes(seek.value.trim().toLowerCase());
  });
  const enter = document.getElementById("enter");
  if (enter) {
    enter.elements.code.value = location.hash.slice(1);
    history.replaceState(null, "", location.pathname);
    enter.addEventListener("submit", async (event) => {
      event.preventDefault();
      const answer = await send("/desk/enter", { code: enter.elements.code.value });
      if (answer.ok) location.href = "/desk/";
      else tell(...answer.told);
    });
  } else {
    const listen = new EventSource("/desk/events");
    listen.addEventListener("message", () => document.dispatchEvent(new Event("folder-changed")));
    // Only lists load again by themselves: nobody's typing may be lost.
    if (document.querySelector(".bakes")) document.addEventListener("folder-changed", () => setTimeout(() => {
      if (!document.activeElement || !document.activeElement.matches("input")) location.reload();
    }, 300));
  }
  return { send, tell, token };
})();
