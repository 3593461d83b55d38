// Bringing in: the source beside the recipe file, accepted line by line.
(() => {
  "use strict";
  const bring = document.getElementById("bring");
  if (bring) bring.addEventListener("submit", async (event) => {
    event.preventDefault();
    const answer = await desk.send("/desk/bring", { text: bring.elements.text.value });
    desk.tell(...answer.told);
    if (answer.ok) location.href = answer.ids.length === 1 ? `/desk/review/${answer.ids[0]}` : "/desk/bring";
  });
  const review = document.getElementById("review");
  if (!review) return;
  const rows = [...review.querySelectorAll(".result li")];
  const text = (row) => row.querySelector("textarea");
  const tick = (row) => row.querySelector("[type=checkbox]");
  const write = document.getElementById("write");
  const left = document.getElementById("left");
  const sources = (row) => row.dataset.sources.split(" ").filter(Boolean).map((each) => document.getElementById(`source-${each}`)).filter(Boolean);
  const count = () => {
    const open = rows.filter((row) => !tick(row).checked).length;
    write.disabled = open > 0;
    left.textContent = open ? `${open} ${left.dataset.words}` : "";
  };
  // A line is as tall as its words: nobody accepts what is cut off.
  const fit = (field) => {
    field.style.height = "auto";
    field.style.height = `${field.scrollHeight + 2}px`;
  };
  const fitAll = () => rows.forEach((row) => fit(text(row)));
  addEventListener("resize", fitAll);
  document.fonts.ready.then(fitAll);
  const asks = (row) => /(^|\s)(# |<!-- )\?/.test(text(row).value);
  rows.forEach((row, at) => {
    const from = document.createElement("small");
    from.className = "came-from";
    from.setAttribute("aria-hidden", "true");
    from.textContent = sources(row).map((each) => each.querySelector(".number + span").textContent).join(" ");
    row.append(from);
    row.classList.toggle("asks", asks(row));
    text(row).addEventListener("input", () => {
      text(row).value = text(row).value.replace(/[\r\n]+/g, " ");
      fit(text(row));
      row.classList.toggle("asks", asks(row));
    });
    text(row).addEventListener("keydown", (event) => {
      if (event.key !== "Enter" || event.isComposing) return;
      event.preventDefault();
      tick(row).checked = true;
      count();
      const next = rows[at + 1];
      (next ? text(next) : document.getElementById("name")).focus();
    });
  });
  for (const row of rows) {
    row.addEventListener("focusin", () => {
      for (const each of review.querySelectorAll(".meant")) each.classList.remove("meant");
      for (const each of sources(row)) {
        each.classList.add("meant");
        const list = each.closest("section").getBoundingClientRect();
        if (list.left !== row.closest("section").getBoundingClientRect().left) each.scrollIntoView({ block: "nearest" });
      }
    });
    row.addEventListener("change", count);
  }
  document.getElementById("all-plain").addEventListener("click", () => {
    for (const row of rows) if (!asks(row) && !sources(row).some((each) => each.matches(".doubtful"))) tick(row).checked = true;
    count();
  });
  write.addEventListener("click", async () => {
    const lines = rows.map((row) => text(row).value);
    const added = document.getElementById("rows");
    const name = document.getElementById("name").value;
    const answer = await desk.send(`/desk/review/${review.dataset.id}/write`, { lines, name, rows: !!added && added.checked });
    desk.tell(...answer.told);
    rows.forEach((row, at) => row.classList.toggle("wrong", (answer.lines || []).includes(at + 1)));
    if (answer.ok) location.href = `/desk/edit/${name}`;
  });
  count();
})();
