// The editor: proofreads while one types, and saves what was changed. The words of every finding are the check's own.
(() => {
  "use strict";
  const root = document.getElementById("edit");
  const address = `/desk/edit/${root.dataset.name}`;
  const text = document.getElementById("text");
  const found = document.getElementById("found");
  const difference = document.getElementById("difference");
  const meanwhile = document.getElementById("meanwhile");
  let there = {};
  let asked = 0;
  let saved = text.value;
  let last = [];
  // The same text behind the field, its letters unseen: what a finding points at is marked where it stands.
  const marks = document.getElementById("marks");
  const mark = () => {
    const begins = new Map(last.map((each) => [each.line, Math.max(0, each.column - 1)]));
    marks.replaceChildren(...text.value.split("\n").flatMap((line, at) => {
      const from = begins.get(at + 1);
      if (from === undefined) return [`${line}\n`];
      const marked = document.createElement("mark");
      marked.textContent = line.slice(from) || " ";
      return [line.slice(0, from), marked, "\n"];
    }), " ");
    marks.style.width = `${text.clientWidth}px`;
    marks.scrollTop = text.scrollTop;
  };
  text.addEventListener("scroll", () => { marks.scrollTop = text.scrollTop; });
  addEventListener("resize", mark);
  const show = (findings) => {
    const rows = findings.map((each) => {
      const row = document.createElement("li");
      row.className = `finding finding-${each.severity}`;
      const jump = document.createElement("button");
      jump.type = "button";
      jump.className = "tidy";
      jump.textContent = `${each.line}:${each.column}`;
      jump.addEventListener("click", () => {
        const lines = text.value.split("\n");
        const at = lines.slice(0, each.line - 1).reduce((sum, line) => sum + line.length + 1, 0) + each.column - 1;
        text.focus();
        text.setSelectionRange(at, at + 1);
        text.scrollTop = (each.line - 4) * parseFloat(getComputedStyle(text).lineHeight);
      });
      const kind = document.createElement("b");
      kind.textContent = ` ${each.severity} ${each.code} `;
      const hint = document.createElement("small");
      hint.textContent = each.hint;
      row.append(jump, kind, each.message, hint);
      return row;
    });
    if (!rows.length) {
      const row = document.createElement("li");
      row.textContent = found.dataset.none;
      rows.push(row);
    }
    found.replaceChildren(...rows);
    last = findings;
    mark();
  };
  const check = async () => {
    const mine = ++asked;
    const answer = await desk.send(`${address}/check`, { text: text.value }).catch(() => null);
    if (answer && answer.ok && mine === asked) show(answer.found);
  };
  let waiting = null;
  text.addEventListener("input", () => {
    mark();
    clearTimeout(waiting);
    waiting = setTimeout(check, 350);
  });
  const taken = (answer) => {
    desk.tell(...answer.told);
    meanwhile.hidden = !answer.difference;
    difference.textContent = answer.difference || "";
    there = answer;
    if (answer.difference && !answer.ok) {
      meanwhile.scrollIntoView();
      difference.focus({ preventScroll: true });
    }
    if (!answer.ok) return;
    root.dataset.base = answer.base;
    if (answer.text !== undefined) saved = text.value = answer.text;
    first = values();
    const page = document.querySelector("iframe");
    if (page) page.contentWindow.location.reload();
    // A reader of PDF does not let itself be asked to load again; its frame does.
    const card = document.querySelector("#card[open] iframe");
    if (card) card.src = card.src;
    check();
  };
  const failed = (error) => desk.tell(String(error));
  const save = () => desk.send(`${address}/save`, { base: root.dataset.base, text: text.value }).then(taken, failed);
  document.getElementById("save").addEventListener("click", save);
  addEventListener("keydown", (event) => {
    if ((event.ctrlKey || event.metaKey) && event.key === "s") {
      event.preventDefault();
      save();
    }
  });
  const fields = document.getElementById("fields");
  const values = () => Object.fromEntries(new FormData(fields));
  let first = values();
  fields.addEventListener("submit", (event) => {
    event.preventDefault();
    if (text.value !== saved) {
      desk.tell(document.querySelector(".proof").dataset.first);
      return document.getElementById("save").focus();
    }
    const changed = Object.fromEntries(Object.entries(values()).filter(([key, value]) => value !== first[key]));
    desk.send(`${address}/fields`, { base: root.dataset.base, fields: changed }).then(taken, failed);
  });
  // The difference stays in sight, so that what was typed can be put in again.
  document.getElementById("take").addEventListener("click", () => {
    root.dataset.base = there.base;
    saved = text.value = there.there;
    text.focus();
    check();
  });
  const record = document.getElementById("record");
  if (record) record.addEventListener("submit", async (event) => {
    event.preventDefault();
    const answer = await desk.send(`${address}/record`, { why: record.elements.why.value });
    desk.tell(...answer.told);
    if (answer.ok) record.remove();
  });
  check();
  addEventListener("beforeunload", (event) => { if (text.value !== saved) event.preventDefault(); });
})();
