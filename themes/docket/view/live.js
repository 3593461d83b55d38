// Loads a page of the publication again when the folder changes, and shows what is wrong in it. The words are the check's.
(() => {
  "use strict";
  let number = null;
  const show = ({ errors, head: words }) => {
    let panel = document.getElementById("desk-live");
    if (!errors.length) return panel && panel.remove();
    if (!panel) {
      panel = document.createElement("section");
      panel.id = "desk-live";
      panel.setAttribute("role", "status");
      document.body.append(panel);
    }
    const list = document.createElement("ul");
    for (const each of errors.slice(0, 30)) {
      const row = document.createElement("li");
      const recipe = /^recipes\/([^/]+)\.md$/.exec(each.path);
      const where = document.createElement(recipe ? "a" : "span");
      if (recipe) where.href = `/desk/edit/${recipe[1]}`;
      where.textContent = `${each.path}:${each.line}:${each.column}`;
      row.append(where, ` ${each.code} ${each.message}. ${each.hint}`);
      list.append(row);
    }
    const head = document.createElement("a");
    head.href = "/desk/";
    head.textContent = words;
    panel.replaceChildren(head, list);
  };
  const look = async () => {
    const answer = await fetch("/desk/state.json");
    if (!answer.ok) return;
    const state = await answer.json();
    show(state);
    if (number !== null && state.number !== number) location.reload();
    number = state.number;
  };
  const listen = new EventSource("/desk/events");
  listen.addEventListener("message", () => look().catch(() => {}));
  look().catch(() => {});
})();
