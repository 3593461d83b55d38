"""Notes in plain marks, tables for programs, magazines, cards with fields, subtitles, and two other languages."""

import csv
import io
from collections.abc import Mapping
from dataclasses import replace
from random import Random

from tests.importer.corpus.layouts import Text
from tests.importer.corpus.others_abroad import french, german, in_french, in_german
from tests.importer.corpus.others_words import Other, Style, amount, slug, wrapped, written
from tests.importer.corpus.truth import Bake, Line

_GLYPH = Style(fraction="glyph", to="–")
_SLASH = Style()
_TIGHT = Style(fraction="glyph", gap="", to="-")
_LONG = Style(units=(("tbsp", "tablespoon"), ("tsp", "teaspoon"), ("g", "gram")), to=" to ")


def md_table(bake: Bake, random: Random) -> Text:
    """Notes in Markdown with a table for each part."""
    out = [
        f"# {bake.title}",
        "",
        f"> {bake.lead}",
        "",
        f"**Makes:** {bake.makes}  ",
        f"**Keeps:** {bake.keeps}",
        "",
    ]
    out.append("## Ingredients")
    for name, lines in bake.parts:
        out += ["", f"### {name.capitalize()}"] if name else []
        out += ["", "| Amount | Ingredient | Preparation |", "| --- | --- | --- |"]
        out += [f"| {amount(line, _SLASH)} | {_name(line)} | {line.preparation} |" for line in lines]
    out += ["", "## Method", ""]
    out += [f"{number}. {step}" for number, step in enumerate(bake.steps, 1)]
    out += ["", f"*Baked {random.randint(2, 30)} times so far.*"]
    return Text(name=f"{slug(bake)}.md", data="\n".join(out) + "\n")


def _name(line: Line) -> str:
    return line.item if line.measures else line.text


def md_tasks(bake: Bake, random: Random) -> Text:
    """Notes of somebody who ticks things off: boxes, bullets within bullets, a head of keys."""
    out = [
        "---",
        f"created: 2020-0{random.randint(1, 9)}-11",
        "tags: [baking, sunday]",
        "---",
        f"# {bake.title}",
        "",
    ]
    out += [bake.lead, "", "## Shopping", ""]
    for name, lines in bake.parts:
        if name:
            out.append(f"- {name.capitalize()}")
        out += [f"{'    ' if name else ''}- [ ] {written(line, _GLYPH)}" for line in lines]
    out += ["", "## Steps", ""]
    out += [f"- [ ] {step}" for step in bake.steps]
    out += ["", "## Remember", "", f"- makes {bake.makes}", f"- keeps {bake.keeps}"]
    return Text(name=f"{bake.title}.md", data="\n".join(out) + "\n")


def wiki(bake: Bake, random: Random) -> Text:
    """A page of a family's wiki."""
    out = [f"= {bake.title} =", f"''{bake.lead}''", "", f"'''Makes:''' {bake.makes}", "", "== Ingredients =="]
    for name, lines in bake.parts:
        if name:
            out.append(f"=== {name.capitalize()} ===")
        out += [f"* {written(line, _SLASH)}" for line in lines]
    out += ["", "== Method =="]
    out += [f"# {step}" for step in bake.steps]
    out += [
        "",
        "== Notes ==",
        f"* Keeps {bake.keeps}.",
        f"* See also [[{random.choice(('Rye buns', 'Jam'))}]]",
        "",
    ]
    out.append("[[Category:Baking]]")
    return Text(name=f"{slug(bake)}.wiki.txt", data="\n".join(out) + "\n")


def csv_columns(bake: Bake, random: Random) -> Text:
    """A table out of a spreadsheet, parted by semicolons, with many lines in one cell."""
    listed = []
    for name, lines in bake.parts:
        if name:
            listed.append(f"{name.capitalize()}:")
        listed += [written(line, _SLASH) for line in lines]
    stream = io.StringIO()
    table = csv.writer(stream, delimiter=";", lineterminator="\r\n")
    table.writerow(["Name", "Description", "Yield", "Ingredients", "Directions", "Storage", "Rating"])
    steps = "\n".join(f"{number}. {step}" for number, step in enumerate(bake.steps, 1))
    table.writerow(
        [bake.title, bake.lead, bake.makes, "\n".join(listed), steps, bake.keeps, str(random.randint(4, 5))]
    )
    return Text(name="my recipes.csv", data="\ufeff" + stream.getvalue())


def magazine(bake: Bake, random: Random) -> Text:
    """As a magazine sets it: metric before cups, no bullets, the method in paragraphs, a word for the end."""
    out = [bake.title.upper(), bake.lead, "", f"MAKES {bake.makes}", "", "INGREDIENTS"]
    for name, lines in bake.parts:
        if name:
            out += ["", f"For the {name.removeprefix('to ')}"]
        out += [written(_metric_first(line), _TIGHT, own=False) for line in lines]
    out += ["", "METHOD", ""]
    for number, step in enumerate(bake.steps, 1):
        out += [f"{number} {step}", ""]
    out += [f"TO STORE Keeps {bake.keeps}.", "", f"Page {random.randint(20, 90)}"]
    return Text(name="magazine.txt", data="\n".join(out) + "\n")


def _metric_first(line: Line) -> Line:
    """240ml (1 cup), as it is put where scales are at home; a count stays before its weight."""
    if not line.measures or line.measures[0][2] == "":
        return line
    ordered = sorted(line.measures, key=lambda each: each[2] not in ("g", "kg", "ml"))
    return replace(line, measures=tuple(ordered))


def card_fields(bake: Bake, random: Random) -> Text:
    """A form out of an old program: a name before everything, dots to fill the line."""
    out = [
        f"Title......: {bake.title}",
        "Category...: Baking",
        f"Yield......: {bake.makes}",
        f"Keeps......: {bake.keeps}",
        f"Source.....: notebook, page {random.randint(3, 88)}",
        f"Comment....: {bake.lead}",
        "",
        "Ingredients:",
        "",
    ]
    for name, lines in bake.parts:
        if name:
            out += [f"  --- {name} ---"]
        out += [f"  {written(line, _SLASH)}" for line in lines]
    out += ["", "Directions:", ""]
    for number, step in enumerate(bake.steps, 1):
        out.append(wrapped(step, 72, first=f"  {number}) ", then="     "))
    return Text(name=f"{slug(bake)}.txt", data="\n".join(out) + "\n")


def capitals_wrapped(bake: Bake, random: Random) -> Text:
    """Typed in capitals, sixty to the line, as an old machine could not do otherwise."""
    out = [bake.title.upper().center(60).rstrip(), "", wrapped(bake.lead.upper(), 60), "", "INGREDIENTS:", ""]
    for name, lines in bake.parts:
        if name:
            out.append(f"{name.upper()}:")
        out += [wrapped(written(line, _SLASH).upper(), 60, first="  ", then="      ") for line in lines]
        out.append("")
    out += ["DIRECTIONS:", ""]
    for step in bake.steps:
        out += [wrapped(step.upper(), 60), ""]
    out += [f"MAKES {bake.makes.upper()}. KEEPS {bake.keeps.upper()}.", "", "- END -"]
    return Text(name="RECIPE.TXT", data="\n".join(out) + "\n")


def subtitles(bake: Bake, random: Random) -> Text:
    """The words that stand over a film without speech, with their times."""
    shown = [f"{bake.title}", bake.lead]
    for name, lines in bake.parts:
        shown.append(f"{name.capitalize()}:" if name else "Ingredients:")
        shown += [written(line, _LONG) for line in lines]
    shown.append("Method:")
    shown += [wrapped(step, 42) for step in bake.steps]
    shown += [f"Makes {bake.makes}", "Thank you for watching!"]
    out = []
    second = random.randint(0, 4)
    for number, text in enumerate(shown, 1):
        until = second + 2 + len(text) // 15
        out += [str(number), f"{_clock(second)} --> {_clock(until)}", text, ""]
        second = until + 1
    return Text(name=f"{slug(bake)}.srt.txt", data="\n".join(out) + "\n")


def _clock(seconds: int) -> str:
    return f"00:{seconds // 60:02}:{seconds % 60:02},000"


def short_words(bake: Bake) -> Bake:
    """A bake whose steps say mins and hrs, and leave the ring before the letter of the scale away."""
    changes = ((" minutes", " mins"), (" hours", " hrs"), ("°F", "F"), (" °C", "C"))
    steps = []
    for step in bake.steps:
        for old, new in changes:
            step = step.replace(old, new)
        steps.append(step)
    return replace(bake, steps=tuple(steps))


THIRD_BY_OTHERS: Mapping[str, Other] = {
    "notes in tables": Other(write=md_table),
    "notes with boxes": Other(write=md_tasks, adapt=short_words),
    "wiki": Other(write=wiki),
    "cells with semicolons": Other(write=csv_columns),
    "magazine": Other(write=magazine, adapt=short_words),
    "card with fields": Other(write=card_fields, adapt=short_words),
    "capitals wrapped": Other(write=capitals_wrapped),
    "subtitles": Other(write=subtitles),
    "German": Other(write=german, adapt=in_german),
    "French": Other(write=french, adapt=in_french),
}
