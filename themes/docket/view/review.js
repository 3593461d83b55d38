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
  const tick = (row) => row.querySelector("[type=checkbox]");
  const write = document.getElementById("write");
  const left = document.getElementById("left");
  const sources = (row) => row.dataset.sources.split(" ").filter(Boolean).map((each) => document.getElementById(`source-${each}`)).filter(Boolean);
  const count = () => {
    const open = rows.filter((row) => !tick(row).checked).length;
    write.disabled = open > 0;
    left.textContent = open ? `${open} ${left.dataset.words}` : "";
  };
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
    for (const row of rows) if (!row.querySelector("[type=text]").value.includes("# ?") && !sources(row).some((each) => each.matches(".doubtful"))) tick(row).checked = true;
    count();
  });
  write.addEventListener("click", async () => {
    const lines = rows.map((row) => row.querySelector("[type=text]").value);
    const added = document.getElementById("rows");
    const name = document.getElementById("name").value;
    const answer = await desk.send(`/desk/review/${review.dataset.id}/write`, { lines, name, rows: !!added && added.checked });
    desk.tell(...answer.told);
    rows.forEach((row, at) => row.classList.toggle("wrong", (answer.lines || []).includes(at + 1)));
    if (answer.ok) location.href = `/desk/edit/${name}`;
  });
  count();
})();
