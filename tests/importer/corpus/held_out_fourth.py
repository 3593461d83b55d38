"""Five layouts that were written after the first fifteen set aside were mended, and measured once before mending."""

from collections.abc import Mapping
from random import Random

from tests.importer.corpus.layouts import Layout, Text
from tests.importer.corpus.truth import Bake, Line
from tests.importer.corpus.wording import GERMAN, LONG, SHORT, TIGHT, amount, glyphs, measure, pick, sentence


def _sized(line: Line) -> str:
    return f"{line.size} {line.item}" if line.size else line.item


def _parted(bake: Bake) -> list[tuple[str, tuple[Line, ...]]]:
    return [(name if len(bake.parts) > 1 else "", lines) for name, lines in bake.parts]


def wiki(bake: Bake, random: Random) -> Text:
    """Out of a shared notebook: equals signs around headings, stars and hashes before lines."""
    write = pick(random)
    rows = [f"= {bake.title} =", bake.lead, "", "== Ingredients =="]
    for name, lines in _parted(bake):
        rows += [f"=== {name.capitalize()} ==="] if name else []
        rows += [f"* {sentence(line, write)}" for line in lines]
    rows += ["== Method =="] + [f"# {step}" for step in bake.steps]
    return Text(name="wiki.txt", data="\n".join(rows))


def form(bake: Bake, random: Random) -> Text:
    """Filled into a form: every line with its label."""
    write = pick(random)
    rows = [f"Name: {bake.title}", f"About: {bake.lead}", f"Makes: {bake.makes}"]
    number = 0
    for name, lines in _parted(bake):
        rows += [f"Part: {name}"] if name else []
        for line in lines:
            number += 1
            rows += [f"Ingredient {number}: {sentence(line, write, LONG)}"]
    rows += [f"Step {n}: {step}" for n, step in enumerate(bake.steps, start=1)]
    return Text(name="form.txt", data="\n".join(rows))


def prices(bake: Bake, random: Random) -> Text:
    """With what each thing cost at the end of its line."""
    write = pick(random)
    rows = [bake.title, "", bake.lead, "", "What I bought"]
    for name, lines in _parted(bake):
        rows += ["", f"{name.capitalize()}"] if name else []
        rows += [f"- {sentence(line, write, SHORT)} (£{random.randint(10, 299) / 100:.2f})" for line in lines]
    rows += ["", "What I did"] + [f"- {step}" for step in bake.steps]
    return Text(name="prices.txt", data="\n".join(rows))


def fields(bake: Bake, random: Random) -> Text:
    """Exported with semicolons: amount, unit, name and preparation."""

    def row(line: Line) -> str:
        if line.text or len(line.measures) != 1:
            return f";;{sentence(line, glyphs)};"
        low, high, unit = line.measures[0]
        number = measure((low, high, ""), glyphs, TIGHT)
        word = measure((low, high, unit), glyphs, TIGHT).removeprefix(number).strip()
        return f"{number};{word};{_sized(line)};{line.preparation}"

    rows = [f"title;{bake.title}", f"lead;{bake.lead}", "", "ingredients"]
    for name, lines in _parted(bake):
        rows += [f"part;{name}"] if name else []
        rows += [row(line) for line in lines]
    rows += ["", "steps"] + [f"{n};{step}" for n, step in enumerate(bake.steps, start=1)]
    return Text(name="fields.txt", data="\n".join(rows))


def headings_of_two_languages(bake: Bake, random: Random) -> Text:
    """Headings in two languages, units in one of them, the amount in bold and the name after a colon."""

    def row(line: Line) -> str:
        if line.text:
            return line.text
        cut = f", {line.preparation}" if line.preparation else ""
        return f"**{amount(line, glyphs, GERMAN)}** {_sized(line)}{cut}"

    rows = [
        f"# {bake.title}",
        "",
        bake.lead,
        "",
        f"**Ergibt / Makes:** {bake.makes}",
        "",
        "## Zutaten / Ingredients",
        "",
    ]
    for name, lines in _parted(bake):
        rows += [f"### {name.capitalize()}", ""] if name else []
        rows += [f"{row(line)}  " for line in lines] + [""]
    rows += ["## Zubereitung / Method", ""] + [
        f"{n}.) {step}\n" for n, step in enumerate(bake.steps, start=1)
    ]
    return Text(name="two.md", data="\n".join(rows))


FOURTH: Mapping[str, Layout] = {
    "wiki": wiki,
    "form": form,
    "prices": prices,
    "fields": fields,
    "headings_of_two_languages": headings_of_two_languages,
}
