"""Five layouts that were set aside: the reader was finished before it was run on them, and measured on them once."""

import csv
import io
import textwrap
from collections.abc import Mapping
from html import escape
from random import Random

from tests.importer.corpus.layouts import Layout, Text
from tests.importer.corpus.truth import Bake, Line
from tests.importer.corpus.wording import LONG, SHORT, amount, glyphs, pick, sentence, slashes


def microdata(bake: Bake, random: Random) -> Text:
    """Properties on the page's own elements, steps in an ordered list."""
    write = pick(random)
    items = "\n".join(
        f'<li class="i"><span itemprop="recipeIngredient">{escape(sentence(line, write))}</span></li>'
        for line in bake.lines
    )
    steps = "\n".join(f'<li itemprop="recipeInstructions">{escape(step)}</li>' for step in bake.steps)
    page = f"""<!DOCTYPE html><html lang="en"><head><meta charset="utf-8">
<title>{escape(bake.title)} - Kitchen pages</title></head>
<body><div class="menu"><a href="/">Start</a></div>
<div itemscope itemtype="http://schema.org/Recipe">
<h1 itemprop="name">{escape(bake.title)}</h1>
<p itemprop="description">{escape(bake.lead)}</p>
<p>By <span itemprop="author" itemscope itemtype="http://schema.org/Person">
<span itemprop="name">A. Baker</span></span></p>
<p>Makes <span itemprop="recipeYield">{escape(bake.makes)}</span>, ready in
<time itemprop="totalTime" datetime="PT2H">2 hours</time></p>
<h2>You need</h2><ul>{items}</ul><h2>Do this</h2><ol>{steps}</ol></div></body></html>"""
    return Text(name="microdata.html", data=page)


def letter(bake: Bake, random: Random) -> Text:
    """Out of an old letter: lines broken at 58 letters, stars for bullets, steps as paragraphs without numbers."""
    write = pick(random)

    def item(line: Line) -> str:
        return textwrap.fill(
            f"* {sentence(line, write)}", 58, subsequent_indent="    ", break_on_hyphens=False
        )

    rows = [
        bake.title,
        "",
        textwrap.fill(f"You asked for it, so here it is. {bake.lead}", 58),
        "",
        "You will need:",
        "",
    ]
    for name, lines in bake.parts:
        if name and len(bake.parts) > 1:
            rows += ["", f"For the {name}", ""]
        rows += [item(line) for line in lines]
    rows += ["", "How I make it:", ""]
    for step in bake.steps:
        rows += [textwrap.fill(step, 58, break_on_hyphens=False), ""]
    rows += [f"Keeps {bake.keeps}.", "", "Love to all,", "your old neighbour"]
    return Text(name="letter.txt", data="\r\n".join("\n".join(rows).split("\n")))


def table(bake: Bake, random: Random) -> Text:
    """Markdown with a table of amounts and names."""

    def row(line: Line) -> str:
        if line.text:
            return f"| | {line.text} |"
        cut = f", {line.preparation}" if line.preparation else ""
        size = f"{line.size} " if line.size else ""
        return f"| {amount(line, glyphs, SHORT)} | {size}{line.item}{cut} |"

    rows = [f"# {bake.title}", "", f"> {bake.lead}", ""]
    for name, lines in bake.parts:
        rows += [
            f"## Ingredients{f' for the {name}' if name else ''}",
            "",
            "| Amount | Ingredient |",
            "|---:|:---|",
        ]
        rows += [row(line) for line in lines]
        rows.append("")
    rows += ["**Method**", ""] + [f"* {step}" for step in bake.steps]
    rows += ["", f"**Yield:** {bake.makes}", "", "---", "", "*Typed up from a card.*"]
    return Text(name="table.md", data="\n".join(rows) + "\n")


def spreadsheet(bake: Bake, random: Random) -> Text:
    """One row of a table: name, text, link; the steps are sentences of one paragraph."""
    write = pick(random)
    rows = [bake.lead, "", "Ingredients"]
    for name, lines in bake.parts:
        if name and len(bake.parts) > 1:
            rows.append(f"{name.capitalize()}:")
        rows += [f"– {sentence(line, write, LONG)}" for line in lines]
    rows += ["", "Method", " ".join(bake.steps)]
    out = io.StringIO()
    writer = csv.writer(out)
    writer.writerow(["Name", "Text", "Link"])
    writer.writerow([bake.title, "\n".join(rows), "https://pages.example/old/4"])
    return Text(name="old.csv", data=out.getvalue())


def copied(bake: Bake, random: Random) -> Text:
    """Copied off an old page: buttons and facts came along, dotted leaders, a number above each step."""

    def row(line: Line) -> str:
        if line.text:
            return f"☐ {line.text}"
        size = f" {line.size}" if line.size else ""
        cut = f", {line.preparation}" if line.preparation else ""
        return f"☐ {line.item}{cut} ........ {amount(line, slashes, SHORT)}{size}"

    rows = [
        bake.title,
        "Jump to Recipe",
        "Print",
        "",
        bake.lead,
        "",
        "Prep Time: 20 mins",
        "Cook Time: 35 mins",
        f"Yield: {bake.makes}",
        "",
    ]
    rows += ["Ingredients", "1x 2x 3x"]
    for name, lines in bake.parts:
        if name and len(bake.parts) > 1:
            rows.append(name.upper())
        rows += [row(line) for line in lines]
    rows += ["", "Instructions"]
    for number, step in enumerate(bake.steps, start=1):
        rows += [f"Step {number}", step]
    rows += ["", "Notes", "1. Ovens differ.", "2. Use a scale.", "", "Did you make this? Tell me below!"]
    return Text(name="copied.txt", data="\n".join(rows))


HELD_OUT: Mapping[str, Layout] = {
    "microdata": microdata,
    "letter": letter,
    "table": table,
    "spreadsheet": spreadsheet,
    "copied": copied,
}
