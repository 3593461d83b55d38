"""Five more layouts, written after the faults of the first five were mended, and measured once too."""

import json
import textwrap
from collections.abc import Mapping
from html import escape
from random import Random

from tests.importer.corpus.layouts import Layout, Text
from tests.importer.corpus.truth import Bake, Line
from tests.importer.corpus.wording import LONG, SHORT, TIGHT, amount, glyphs, pick, sentence, slashes


def paragraphs_html(bake: Bake, random: Random) -> Text:
    """A page of bare paragraphs with line breaks, headings in bold."""
    write = pick(random)
    lists = "".join(
        f"<p><b>{escape((name or 'dough').capitalize())}</b><br>\n"
        + "<br>\n".join(escape(sentence(line, write)) for line in lines)
        + "</p>"
        for name, lines in bake.parts
    )
    steps = "".join(f"<p>{number}. {escape(step)}</p>" for number, step in enumerate(bake.steps, start=1))
    page = f"""<html><head><title>{escape(bake.title)} — My pages</title></head>
<body><table><tr><td><h1>{escape(bake.title)}</h1>
<p>{escape(bake.lead)}</p><h3>What you'll need</h3>{lists}
<h3>Directions</h3>{steps}
<p><i>Posted on a Tuesday</i></p></td></tr></table></body></html>"""
    return Text(name="old-page.html", data=page)


def quoted_mail(bake: Bake, random: Random) -> Text:
    """A mail that was answered: every line quoted."""
    write = pick(random)
    rows = [f"Subject: {bake.title}", "", bake.lead, "", "Ingredients:"]
    for name, lines in bake.parts:
        if name and len(bake.parts) > 1:
            rows += [f"{name.capitalize()}:"]
        rows += [f"- {sentence(line, write)}" for line in lines]
    rows += ["", "Instructions:"] + [f"{n}. {step}" for n, step in enumerate(bake.steps, start=1)]
    return Text(
        name="mail.txt", data="\n".join(f"> {row}".rstrip() for row in rows) + "\n\nLovely, thank you!\n"
    )


def howto_steps_list(bake: Bake, random: Random) -> Text:
    """Data for machines whose steps are one text, whose list is keyed the old way, in an array of things."""
    write = pick(random)
    recipe = {
        "@type": "https://schema.org/Recipe",
        "name": bake.title,
        "description": f"<p>{bake.lead}</p>",
        "recipeYield": [bake.makes],
        "ingredients": [sentence(line, write, LONG).replace("½", "&frac12;") for line in bake.lines],
        "recipeInstructions": "".join(f"<p>{step}</p>" for step in bake.steps),
        "keywords": "baking, oven",
    }
    data = json.dumps([{"@type": "BreadcrumbList"}, recipe])
    page = (
        f'<html><head><title>x</title><script type="application/ld+json">{data}</script></head>'
        f"<body><h1>{escape(bake.title)}</h1></body></html>"
    )
    return Text(name="array.html", data=page)


def two_columns(bake: Bake, random: Random) -> Text:
    """Typed on a machine: amounts in a column of their own, names after wide gaps, sections underlined."""

    def row(line: Line) -> str:
        if line.text:
            return line.text
        cut = f", {line.preparation}" if line.preparation else ""
        size = f"{line.size} " if line.size else ""
        return f"{amount(line, slashes, TIGHT):<24}{size}{line.item}{cut}"

    rows = [bake.title.upper(), "", textwrap.fill(bake.lead, 60), "", "INGREDIENTS", "===========", ""]
    for name, lines in bake.parts:
        if name and len(bake.parts) > 1:
            rows += ["", f"-- {name.capitalize()} --", ""]
        rows += [row(line) for line in lines]
    rows += ["", "METHOD", "======", ""]
    for number, step in enumerate(bake.steps, start=1):
        rows += [textwrap.fill(f"({number}) {step}", 62, subsequent_indent="    ", break_on_hyphens=False)]
    return Text(name="typed.txt", data="\n".join(rows))


def note_app(bake: Bake, random: Random) -> Text:
    """Out of an app for notes: bold headings, tick boxes, numbers with brackets, a link at the end."""
    rows = [f"**{bake.title}**", "", bake.lead, "", "**Ingredients**"]
    for name, lines in bake.parts:
        if name and len(bake.parts) > 1:
            rows += ["", f"*{name.capitalize()}*", ""]
        rows += [f"- [ ] {sentence(line, glyphs, SHORT)}" for line in lines]
    rows += ["", "**Steps**"] + [f"{n}) {step}" for n, step in enumerate(bake.steps, start=1)]
    rows += ["", f"Makes {bake.makes}", "", "Found in <https://pages.example/notes/12>"]
    return Text(name="note.md", data="\n".join(rows) + "\n")


LATER: Mapping[str, Layout] = {
    "paragraphs_html": paragraphs_html,
    "quoted_mail": quoted_mail,
    "howto_steps_list": howto_steps_list,
    "two_columns": two_columns,
    "note_app": note_app,
}
