// Shows the recipe in the size, the measure and the scale of heat that were chosen, and remembers the choice.
// It computes nothing: every string comes from the page's own data. The page is complete without it.
(() => {
  "use strict";

  const block = document.getElementById("leaf-choices");
  const recipe = document.querySelector("[data-docket]");
  const panel = recipe && recipe.querySelector(".choices");
  if (!block || !panel) return;
  const data = JSON.parse(block.textContent);
  const unit = new RegExp(`(${data.unit})`, "u");
  const figures = ".first, .part-weight";

  // A browser may forbid the store, for instance for pages opened from a disk.
  const recall = (key) => {
    try {
      return JSON.parse(localStorage.getItem(key)) || {};
    } catch {
      return {};
    }
  };
  const keep = (key, change) => {
    try {
      localStorage.setItem(key, JSON.stringify({ ...recall(key), ...change }));
    } catch {
      // Nothing is remembered then; everything else still works.
    }
  };
  const own = `size ${recipe.dataset.recipe}`;
  const everywhere = "reading";

  const size = panel.querySelector("select");
  const radios = (name) => [...panel.querySelectorAll(`[name="leaf-${name}"]`)];
  const chosen = (name) => {
    const radio = radios(name).find((each) => each.checked);
    return radio ? radio.value : "";
  };

  const spanned = (name, text) => {
    const span = document.createElement("span");
    span.className = name;
    span.textContent = text;
    return span;
  };
  const write = (element, text) => {
    if (element.textContent === text) return;
    if (!element.matches(figures)) element.textContent = text;
    else if (text && !/\p{N}/u.test(text)) element.replaceChildren(spanned("worded", text));
    else {
      const pieces = text.split(unit);
      element.replaceChildren(...pieces.map((piece, at) => (at % 2 ? spanned("unit", piece) : piece)));
    }
  };

  const sized = [...recipe.querySelectorAll("[data-n]")];
  const heated = [...recipe.querySelectorAll("[data-h]")];
  const status = recipe.querySelector(".chosen");
  const show = () => {
    const at = Math.max(0, data.sizes.findIndex((each) => each.id === size.value));
    const byVolume = chosen("measure") === "volume";
    for (const element of sized) {
      const [weight, volume = weight] = element.dataset.n.split(" ");
      const column = data.columns[byVolume ? volume : weight];
      write(element, data.words[column[column.length > 1 ? at : 0]]);
    }
    const scale = ["", "f", "c"].indexOf(chosen("heat"));
    for (const element of heated) write(element, data.heats[element.dataset.h][scale]);
    tell(data.sizes[at]);
  };
  const tell = (offer) => {
    const lines = offer.scale ? [offer.scale, ...offer.notes.map((note) => data.notes[note])] : [];
    status.replaceChildren(
      ...lines.map((line, at) => {
        const paragraph = document.createElement("p");
        paragraph.append(at ? line : spanned("scale", line));
        return paragraph;
      }),
    );
    for (const words of recipe.querySelectorAll(".as-written")) words.hidden = !offer.scale;
  };

  const restore = () => {
    const wanted = recall(own).size;
    if (data.sizes.some((each) => each.id === wanted)) size.value = wanted;
    const reading = recall(everywhere);
    for (const name of ["measure", "heat"]) {
      // A browser may have kept another choice of its own over a reload.
      const wanted = radios(name).find((radio) => radio.value === reading[name]);
      const radio = wanted || radios(name).find((each) => each.defaultChecked);
      if (radio) radio.checked = true;
    }
  };

  panel.addEventListener("change", (event) => {
    if (event.target === size) keep(own, { size: size.value });
    else keep(everywhere, { [event.target.name.replace("leaf-", "")]: event.target.value });
    show();
  });
  panel.hidden = false;
  restore();
  show();
})();
