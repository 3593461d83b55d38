"""Ten layouts of old texts that the reader was written with."""

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from html import escape
from random import Random

from tests.importer.corpus.truth import Bake, Line
from tests.importer.corpus.wording import (
    LONG,
    TIGHT,
    amount,
    glyphs,
    pick,
    sentence,
    slashes,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """A file as it would be brought in. `keeps_words` is false where a layout cannot carry a line's own wording."""

    name: str
    data: str


Layout = Callable[[Bake, Random], Text]


def _parts(bake: Bake, write: Callable[[Line], str], head: Callable[[str], str]) -> list[str]:
    rows: list[str] = []
    for name, lines in bake.parts:
        if name and len(bake.parts) > 1:
            rows.append(head(name))
        rows += [write(line) for line in lines]
    return rows


def description(bake: Bake, random: Random) -> Text:
    """Under a video: everything at once, links before and after, chapters, hashtags."""
    write = pick(random)
    rows = [bake.title, "", bake.lead, "", "Printable recipe: https://pages.example/r/17", "", "INGREDIENTS"]
    rows += _parts(bake, lambda line: f"• {sentence(line, write)}", lambda name: f"\nFor the {name}:")
    rows += ["", "METHOD"] + [f"{n}. {step}" for n, step in enumerate(bake.steps, start=1)]
    rows += [
        "",
        f"Makes: {bake.makes}",
        f"Keeps: {bake.keeps}",
        "",
        "CHAPTERS",
        "0:00 Hello",
        "0:40 Weighing",
        "6:15 Oven",
    ]
    rows += [
        "",
        "My whisk (affiliate link): https://shop.example/whisk",
        "Music by Lark and Tin",
        "",
        "#baking #homemade #bread",
    ]
    return Text(name="description.txt", data="\n".join(rows) + "\n")


def emoji(bake: Bake, random: Random) -> Text:
    """Pictures for headings and no list marks."""
    write = pick(random)
    rows = [f"🍞 {bake.title} 🍞", bake.lead, "", "🛒 Ingredients:", ""]
    rows += _parts(bake, lambda line: sentence(line, write, LONG), lambda name: f"✨ {name.capitalize()} ✨")
    rows += ["", "👩‍🍳 How to make it:", ""] + [f"{n}) {step}" for n, step in enumerate(bake.steps, start=1)]
    rows += ["", f"❄️ Storage: {bake.keeps}", "", "Thanks for watching! 💛"]
    return Text(name="emoji.txt", data="\r\n".join(rows))


def markdown(bake: Bake, random: Random) -> Text:
    rows = [f"# {bake.title}", "", bake.lead, "", "## Ingredients", ""]
    rows += _parts(
        bake, lambda line: f"- {sentence(line, glyphs)}", lambda name: f"\n### {name.capitalize()}\n"
    )
    rows += ["", "## Instructions", ""] + [f"{n}. {step}" for n, step in enumerate(bake.steps, start=1)]
    rows += ["", "## Notes", "", "Weigh it, it is **worth** it. See [my tin](https://shop.example/tin)."]
    return Text(name="page.md", data="\ufeff" + "\n".join(rows) + "\n")


def json_ld(bake: Bake, random: Random) -> Text:
    write = pick(random)
    data = {
        "@context": "https://schema.org",
        "@type": ["Recipe"],
        "name": bake.title,
        "description": bake.lead,
        "recipeYield": bake.makes,
        "author": {"@type": "Person", "name": "Somebody Invented"},
        "recipeIngredient": [sentence(line, write) for line in bake.lines],
        "recipeInstructions": [{"@type": "HowToStep", "text": step} for step in bake.steps],
    }
    body = "".join(f"<li>{escape(sentence(line, write))}</li>" for line in bake.lines)
    page = f"""<!doctype html><html><head><title>{escape(bake.title)} | A page</title>
<script type="application/ld+json">{json.dumps(data)}</script></head>
<body><nav><a href="/">Home</a> <a href="/all">All recipes</a></nav>
<main><h1>{escape(bake.title)}</h1><p>{escape(bake.lead)}</p>
<h2>Ingredients</h2><ul>{body}</ul></main><footer>All rights kept</footer></body></html>"""
    return Text(name="page.html", data=page)


def graph(bake: Bake, random: Random) -> Text:
    """Data in @graph, steps in sections; the parts of the list stand on the page alone."""
    write = pick(random)
    half = max(len(bake.steps) // 2, 1)
    sections = [("Mix", bake.steps[:half]), ("Bake it", bake.steps[half:])]
    recipe = {
        "@type": "Recipe",
        "name": bake.title,
        "description": bake.lead,
        "recipeYield": ["8", "8 servings", bake.makes],
        "recipeIngredient": [sentence(line, write) for line in bake.lines],
        "recipeInstructions": [
            {
                "@type": "HowToSection",
                "name": name,
                "itemListElement": [{"@type": "HowToStep", "text": step} for step in steps],
            }
            for name, steps in sections
        ],
    }
    data = {"@context": "https://schema.org", "@graph": [{"@type": "WebSite", "name": "A page"}, recipe]}
    lists = "".join(
        f"<h4>For the {name or 'dough'}</h4><ul>"
        f"{''.join(f'<li>{escape(sentence(line, write))}</li>' for line in lines)}</ul>"
        for name, lines in bake.parts
    )
    page = f"""<html><head><script type='application/ld+json'>{json.dumps(data)}</script></head><body>
<article><h1>{escape(bake.title)}</h1><p>It was a windy day when I first made this.</p>
{lists}</article></body></html>"""
    return Text(name="graph.htm", data=page)


def bare_html(bake: Bake, random: Random) -> Text:
    rows = _parts(
        bake,
        lambda line: f"<li>{escape(sentence(line, glyphs))}",
        lambda name: f"</ul><h3>{name.capitalize()}</h3><ul>",
    )
    steps = "".join(f"<li><p>{escape(step)}</p></li>" for step in bake.steps)
    page = f"""<!DOCTYPE html><html><head><title>{escape(bake.title)}</title><style>p{{}}</style></head><body>
<header>A page of mine</header><h1>{escape(bake.title)}</h1><p><em>{escape(bake.lead)}</em>
<h2>Ingredients</h2><ul>{"".join(rows)}</ul>
<h2>Method</h2><ol>{steps}</ol><p>Makes {bake.makes}.</p></body></html>"""
    return Text(name="bare.html", data=page)


def trailing(bake: Bake, random: Random) -> Text:
    """The name first, its amount behind a colon."""

    def write(line: Line) -> str:
        if line.text:
            return line.text
        size = f" {line.size}" if line.size and line.size != "packed" else ""
        packed = "packed " if line.size == "packed" else ""
        cut = f", {line.preparation}" if line.preparation else ""
        return (
            f"{packed}{line.item.capitalize() if not packed else line.item}: "
            f"{amount(line, slashes, TIGHT, tight=True)}{size}{cut}"
        )

    rows = [bake.title, "=" * len(bake.title), "", "What you need", "-------------"]
    rows += _parts(bake, write, lambda name: f"\n{name.upper()}")
    rows += ["", "What to do", "----------"] + [f"- {step}" for step in bake.steps]
    return Text(name="trailing.txt", data="\n".join(rows))


def capitals(bake: Bake, random: Random) -> Text:
    write = pick(random)
    rows = [bake.title.upper(), "", f"Yield: {bake.makes}", "", "INGREDIENTS:"]
    rows += _parts(
        bake,
        lambda line: f"- {sentence(line, write, TIGHT, tight=True)}",
        lambda name: f"FOR THE {name.upper()}:",
    )
    rows += ["", "DIRECTIONS:"] + [f"Step {n}: {step}" for n, step in enumerate(bake.steps, start=1)]
    rows += ["", "NOTES:", "My oven runs hot.", "Source: a grandmother's tin of cards"]
    return Text(name="capitals.txt", data="\n".join(rows))


def headless(bake: Bake, random: Random) -> Text:
    """No heading anywhere."""
    write = pick(random)
    rows = [bake.title, ""]
    rows += _parts(bake, lambda line: sentence(line, write), lambda name: f"\n{name.capitalize()}:")
    rows += [""] + [f"{n}. {step}" for n, step in enumerate(bake.steps, start=1)]
    return Text(name="headless.txt", data="\n".join(rows))


def bakers(bake: Bake, random: Random) -> Text:
    """A bench sheet typed with tabs: name, amount, a share of the flour."""

    def write(line: Line) -> str:
        if line.text:
            return line.text
        cut = f", {line.preparation}" if line.preparation else ""
        size = f" {line.size}" if line.size else ""
        share = f"\t{random.randint(1, 100)} %" if line.measures and line.measures[0][2] == "g" else ""
        return f"{line.item}{cut}\t{amount(line, glyphs, TIGHT)}{size}{share}"

    rows = [f"Title: {bake.title}", bake.lead, "", "Formula", ""]
    rows += _parts(bake, write, lambda name: f"{name.capitalize()}:")
    rows += ["", "Procedure", ""]
    rows += bake.steps
    return Text(name="bench.txt", data="\n".join(rows))


OPEN: Mapping[str, Layout] = {
    "description": description,
    "emoji": emoji,
    "markdown": markdown,
    "json_ld": json_ld,
    "graph": graph,
    "bare_html": bare_html,
    "trailing": trailing,
    "capitals": capitals,
    "headless": headless,
    "bakers": bakers,
}
