// Offers to hide the bakes that list what is ticked. The table is complete without it.
(() => {
  "use strict";

  const place = document.querySelector("[data-allergens]");
  const rows = [...document.querySelectorAll(".allergens tbody tr")];
  const heads = [...document.querySelectorAll(".allergens thead [data-allergen]")];
  if (!place || !rows.length) return;

  const fieldset = document.createElement("fieldset");
  fieldset.className = "allergen-filter";
  const legend = document.createElement("legend");
  legend.textContent = _("Show only bakes whose declaration does not list");
  fieldset.append(legend);
  for (const head of heads) {
    const label = document.createElement("label");
    const box = document.createElement("input");
    box.type = "checkbox";
    box.value = head.dataset.allergen;
    label.append(box, head.textContent.trim());
    fieldset.append(label);
  }

  const warning = document.createElement("p");
  warning.className = "allergen-warning";
  warning.textContent =
    _("“Does not list” is no promise: traces may be in any bake of this kitchen. Ask the maker before you eat.");
  const count = document.createElement("p");
  count.className = "allergen-count";
  count.setAttribute("role", "status");

  const show = () => {
    const ticked = [...fieldset.querySelectorAll("input:checked")].map((box) => box.value);
    for (const row of rows) {
      const lists = row.dataset.lists.split(" ");
      row.hidden = ticked.some((key) => lists.includes(key));
    }
    const shown = rows.filter((row) => !row.hidden).length;
    const words = ticked.length
      ? _("{shown} of {all} bakes do not list what is ticked. Ask first: this is no promise.")
      : _("All {all} bakes are shown.");
    count.textContent = words.replace("{shown}", shown).replace("{all}", rows.length);
  };
  fieldset.addEventListener("change", show);
  place.append(fieldset, warning, count);
  show();
})();
