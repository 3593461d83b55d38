// Finds bakes by words, spelling mistakes forgiven, and by what is chosen. Everything it knows stands in the page.
(() => {
  "use strict";

  const block = document.getElementById("leaf-search");
  const form = document.getElementById("leaf-finder");
  if (!block || !form) return;
  const data = JSON.parse(block.textContent);
  const count = document.getElementById("leaf-count");
  const found = document.getElementById("leaf-found");
  const ways = document.getElementById("leaf-ways");
  const everything = document.getElementById("leaf-all");
  const said = count.dataset;
  const root = "../";

  // Folds words as the list of words was folded (present/search_words.py).
  const words = (text) => {
    const plain = text.normalize("NFKD").toLowerCase().replace(/\p{M}/gu, "").replace(/ß/g, "ss").replace(/[’']/g, "");
    return plain.match(/[\p{L}\p{N}]+/gu) || [];
  };

  // How many letters to add, leave out, change or swap with their neighbour until `one` is `other`; 9 for more than `most`.
  const distance = (one, other, most) => {
    if (Math.abs(one.length - other.length) > most) return 9;
    let [before, last] = [[], Array.from({ length: other.length + 1 }, (_, at) => at)];
    for (let i = 1; i <= one.length; i += 1) {
      const row = [i];
      for (let j = 1; j <= other.length; j += 1) {
        const same = one[i - 1] === other[j - 1] ? 0 : 1;
        row[j] = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + same);
        const swapped = i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1];
        if (swapped) row[j] = Math.min(row[j], before[j - 2] + 1);
      }
      if (Math.min(...row) > most) return 9;
      [before, last] = [last, row];
    }
    return last[other.length] > most ? 9 : last[other.length];
  };

  // Three letters must be right, in four one may be wrong, from five on two: what is right comes first anyhow.
  const allowed = (word) => (word.length < 4 ? 0 : word.length < 5 ? 1 : 2);
  const likeness = (asked, known) => {
    if (asked === known) return 10;
    if (known.startsWith(asked)) return 8;
    if (asked.length > 3 && known.includes(asked)) return 6;
    const most = allowed(asked);
    if (!most) return 0;
    const whole = distance(asked, known, most);
    // What is typed may be the beginning of a word, with a mistake in it.
    const start = known.length > asked.length ? distance(asked, known.slice(0, asked.length), most) : 9;
    const least = Math.min(whole, start + 0.5);
    return least > most ? 0 : 5 - least;
  };
  const best = (asked, list) => list.reduce((most, known) => Math.max(most, likeness(asked, known)), 0);
  const score = (entry, asked) => asked.map((word) => Math.max(2 * best(word, entry.names), best(word, entry.words)));

  const chosen = () => {
    const fields = new FormData(form);
    const one = (name) => String(fields.get(name) || "");
    return {
      q: one("q").trim(), kind: one("kind"), occasion: one("occasion"), time: one("time"), work: one("work"),
      method: one("method"), tin: one("tin"), without: fields.getAll("without").map(String),
    };
  };

  // Whatever is not known never meets a wish: no stated time, an unfinished label, a missing list.
  const inTime = (bake, wish) => {
    if (!wish.time && !wish.work) return true;
    return bake.times.some((each) =>
      (!wish.method || !each.method || each.method === wish.method) &&
      (!wish.time || each.total <= Number(wish.time)) && (!wish.work || (each.hands_on !== null && each.hands_on <= Number(wish.work))));
  };
  const lists = (bake, allergen) =>
    bake.finished !== true || bake.contains.includes(allergen) || bake.may_contain.includes(allergen);
  const meets = (bake, wish) =>
    (!wish.kind || wish.kind in bake.kinds) && (!wish.occasion || wish.occasion in bake.occasions) &&
    (!wish.method || wish.method in bake.methods) && (!wish.tin || bake.tins.some((tin) => tin.id === wish.tin)) &&
    inTime(bake, wish) && !wish.without.some((allergen) => lists(bake, allergen));
  const filtered = (wish) =>
    ["kind", "occasion", "time", "work", "method", "tin"].some((name) => wish[name]) || wish.without.length > 0;

  const search = (wish) => {
    const entries = [...data.bakes.filter((bake) => meets(bake, wish)), ...(filtered(wish) ? [] : data.pages)];
    const asked = words(wish.q);
    if (!asked.length) return { entries: filtered(wish) ? entries : [], near: false };
    const scored = entries.map((entry) => ({ entry, points: score(entry, asked) }));
    const hits = (points) => points.filter(Boolean).length;
    const sum = (points) => points.reduce((all, each) => all + each, 0);
    let kept = scored.filter(({ points }) => hits(points) === asked.length);
    const near = !kept.length;
    if (near) kept = scored.filter(({ points }) => hits(points));
    kept.sort((a, b) => hits(b.points) - hits(a.points) || sum(b.points) - sum(a.points));
    // One word that is right in some makes those with a mistake needless.
    const sure = kept.filter(({ points }) => points.every((each) => each >= 6));
    return { entries: (sure.length ? sure : kept).map(({ entry }) => entry), near: near && kept.length > 0 };
  };

  const element = (name, text, kind) => {
    const made = document.createElement(name);
    if (text) made.textContent = text;
    if (kind) made.className = kind;
    return made;
  };
  const row = (entry, wish) => {
    const item = element("li");
    const link = element("a", entry.title);
    link.href = encodeURI(`${root}${entry.path}index.html`);
    item.append(link);
    const tin = wish.tin && entry.tins.find((each) => each.id === wish.tin);
    const told = [entry.time || entry.day, tin && tin.amount].filter(Boolean).join(" · ");
    if (told) item.append(element("p", told, "stub"));
    if (entry.lead) item.append(element("p", entry.lead));
    return item;
  };
  const filled = (text, values) => text.replace(/\{(\w+)\}/g, (_, name) => values[name]);

  // What would be found if one of the wishes were dropped, as a button that drops it.
  const wayOut = (wish) => {
    const names = Object.keys(wish).filter((name) => wish[name].length);
    const offers = names.map((name) => {
      const rest = { ...wish, [name]: name === "without" ? [] : "" };
      const held = form.elements[name];
      const choice = name === "without" ? form.querySelector("legend").textContent
        : held.options ? held.selectedOptions[0].textContent : "";
      const open = filtered(rest) || rest.q;
      return { name, choice, number: open ? search(rest).entries.length : data.bakes.length };
    });
    const buttons = offers.filter((offer) => offer.number).map((offer) => {
      const text = filled(offer.name === "q" ? said.words : said.choice,
        { words: wish.q, choice: offer.choice, count: offer.number });
      const button = element("button", text);
      button.type = "button";
      button.addEventListener("click", () => {
        for (const box of form.querySelectorAll(`[name="${offer.name}"]`)) {
          if (box.type === "checkbox") box.checked = false;
          else box.value = "";
        }
        show();
        form.querySelector("[name=q]").focus();
      });
      return button;
    });
    ways.replaceChildren(...buttons, element("p", said.onward));
  };

  const remember = (wish) => {
    const query = new URLSearchParams();
    for (const [name, value] of Object.entries(wish)) for (const each of [value].flat()) if (each) query.append(name, each);
    const tail = query.toString();
    try {
      history.replaceState(null, "", tail ? `?${tail}` : location.pathname);
    } catch {
      // A page opened from a disk may not change its address; the search works all the same.
    }
  };

  const show = () => {
    const wish = chosen();
    const asked = Boolean(wish.q) || filtered(wish);
    const { entries, near } = asked ? search(wish) : { entries: [], near: false };
    const values = { count: entries.length, all: data.bakes.length, pages: data.pages.length };
    const told = [];
    if (!asked) told.push(filled(said.all, values));
    else if (near) told.push(said.near);
    else told.push(!entries.length ? said.none : filled(entries.length === 1 ? said.one : said.many, values));
    if (asked && entries.length && wish.without.length) told.push(said.lists);
    count.textContent = told.join(" ");
    found.replaceChildren(...entries.map((entry) => row(entry, wish)));
    found.hidden = !entries.length;
    ways.hidden = !asked || entries.length > 0;
    if (!ways.hidden) wayOut(wish);
    everything.hidden = asked && entries.length > 0;
    remember(wish);
  };

  const restore = () => {
    const query = new URLSearchParams(location.search);
    for (const field of form.elements) {
      if (!field.name) continue;
      if (field.type === "checkbox") field.checked = query.getAll(field.name).includes(field.value);
      else if (query.has(field.name)) {
        const wanted = query.get(field.name);
        if (!field.options || [...field.options].some((option) => option.value === wanted)) field.value = wanted;
      }
    }
  };

  form.addEventListener("input", show);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    show();
  });
  form.addEventListener("reset", () => setTimeout(show));
  const quick = document.getElementById("leaf-hands-off");
  const limits = { time: "120", work: "15" };
  const offered = ([name, value]) => form.querySelector(`[name="${name}"] option[value="${value}"]`);
  quick.hidden = !Object.entries(limits).every(offered);
  quick.addEventListener("click", () => {
    for (const [name, value] of Object.entries(limits)) form.elements[name].value = value;
    document.getElementById("leaf-narrow").open = true;
    show();
  });
  form.hidden = false;
  document.getElementById("leaf-no-script").hidden = true;
  restore();
  // What narrows the search is never out of sight.
  document.getElementById("leaf-narrow").open = filtered(chosen());
  show();
})();
