// Remembers what has been ticked off and which way was chosen, and opens the kitchen view.
// The page is complete without it.
(() => {
  "use strict";

  const recipe = document.querySelector("[data-docket]");
  if (!recipe) return;
  const key = `docket ${recipe.dataset.docket}`;

  // A browser may forbid the store, for instance for pages opened from a disk.
  const recall = () => {
    try {
      return JSON.parse(localStorage.getItem(key)) || {};
    } catch {
      return {};
    }
  };
  const keep = (change) => {
    try {
      localStorage.setItem(key, JSON.stringify({ ...recall(), ...change }));
    } catch {
      // Nothing is remembered then; everything else still works.
    }
  };

  const boxes = [...recipe.querySelectorAll(".lines input")];
  const ticked = () => boxes.filter((box) => box.checked).map((box) => box.id);

  const offerClearing = () => {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "tidy";
    button.textContent = _("Clear all ticks");
    button.addEventListener("click", () => {
      for (const box of boxes) box.checked = false;
      keep({ ticks: [] });
      show();
    });
    const show = () => {
      button.disabled = ticked().length === 0;
    };
    recipe.querySelector(".parts").append(button);
    return show;
  };

  const rememberTicks = () => {
    const before = new Set(recall().ticks || []);
    for (const box of boxes) box.checked = before.has(box.id);
    const show = offerClearing();
    show();
    recipe.addEventListener("change", (event) => {
      if (!boxes.includes(event.target)) return;
      keep({ ticks: ticked() });
      show();
    });
  };

  const offerWays = () => {
    const ways = [...recipe.querySelectorAll("[data-way]")];
    const place = recipe.querySelector(".ways");
    if (ways.length < 2 || !place) return;
    const choice = document.createElement("fieldset");
    const legend = document.createElement("legend");
    legend.textContent = _("Show");
    choice.append(legend);

    const show = (wanted) => {
      const known = ways.some((way) => way.id === wanted) ? wanted : "";
      for (const way of ways) way.hidden = known !== "" && way.id !== known;
      for (const input of choice.querySelectorAll("input")) input.checked = input.value === known;
    };
    for (const [value, words] of [["", _("every way")], ...ways.map((way) => [way.id, way.dataset.way])]) {
      const label = document.createElement("label");
      const input = document.createElement("input");
      input.type = "radio";
      input.name = "way";
      input.value = value;
      label.append(input, words);
      choice.append(label);
    }
    choice.addEventListener("change", (event) => {
      keep({ way: event.target.value });
      show(event.target.value);
    });
    // A link into a way that is not shown must still lead there.
    const follow = () => {
      const target = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
      const way = target && target.closest("[data-way][hidden]");
      if (!way) return;
      show(way.id);
      target.scrollIntoView();
    };
    const group = document.createElement("div");
    group.className = "ways";
    group.append(choice);
    place.replaceWith(group);
    show(recall().way || "");
    addEventListener("hashchange", follow);
    follow();
  };

  // The kitchen view is fetched when it is asked for, or when one of its timers runs or it stood open before.
  const offerKitchen = () => {
    const pieces = document.getElementById("leaf-kitchen");
    if (!pieces) return;
    const offer = pieces.content.querySelector(".kitchen-offer");
    const button = offer.querySelector("button");
    const fetchKitchen = () => {
      const style = document.createElement("link");
      style.rel = "stylesheet";
      style.href = button.dataset.style;
      const script = document.createElement("script");
      script.src = button.dataset.script;
      document.head.append(style, script);
    };
    pieces.before(offer);
    button.addEventListener("click", fetchKitchen, { once: true });
    try {
      if (localStorage.getItem("timers") || sessionStorage.getItem(`kitchen ${recipe.dataset.recipe}`)) fetchKitchen();
    } catch {
      // Without a store there is nothing to go on with.
    }
  };

  if (boxes.length) rememberTicks();
  offerWays();
  offerKitchen();
})();
