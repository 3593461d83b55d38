"""Ten more open layouts, written while the reader was made broader."""

from collections.abc import Mapping
from random import Random

from tests.importer.corpus.layouts import Layout, Text
from tests.importer.corpus.truth import Bake, Line
from tests.importer.corpus.wording import LONG, SHORT, TIGHT, amount, glyphs, measure, pick, sentence, slashes


def _cut(line: Line) -> str:
    return f", {line.preparation}" if line.preparation else ""


def _sized(line: Line) -> str:
    return f"{line.size} {line.item}" if line.size else line.item


def _parted(bake: Bake) -> list[tuple[str, tuple[Line, ...]]]:
    return [(name if len(bake.parts) > 1 else "", lines) for name, lines in bake.parts]


def run_in(bake: Bake, random: Random) -> Text:
    """One paragraph of ingredients, parted by semicolons, and one of steps."""
    write = pick(random)
    rows = [bake.title, "", bake.lead, ""]
    for name, lines in _parted(bake):
        listed = "; ".join(sentence(line, write, SHORT, tight=True) for line in lines)
        rows += [f"{name.capitalize() or f'Ingredients (makes {bake.makes})'}: {listed}.", ""]
    rows += ["Method: " + " ".join(bake.steps)]
    return Text(name="run-in.txt", data="\n".join(rows))


def names_first(bake: Bake, random: Random) -> Text:
    """The name, a dash, the amount; headings in capitals with a colon."""

    def row(line: Line) -> str:
        return (
            line.text
            or f"{_sized(line).capitalize()} – {amount(line, glyphs, TIGHT, tight=True)}{_cut(line)}"
        )

    rows = [bake.title.upper(), bake.lead, "", "INGREDIENTS:"]
    for name, lines in _parted(bake):
        rows += [f"\n{name.upper()}:"] if name else []
        rows += [row(line) for line in lines]
    rows += ["", "HOW TO:"] + [f"Step {n}: {step}" for n, step in enumerate(bake.steps, start=1)]
    return Text(name="names-first.txt", data="\n".join(rows))


def square_brackets(bake: Bake, random: Random) -> Text:
    """The second measure in square brackets, stars of footnotes, steps by letters."""

    def row(line: Line) -> str:
        if line.text:
            return line.text
        told = [measure(each, slashes, SHORT) for each in line.measures]
        second = f" [{told[1]}]" if len(told) > 1 else ""
        star = "*" if line.allergens else ""
        return f"{told[0] if told else ''}{second} {_sized(line)}{star}{_cut(line)}".strip()

    rows = [bake.title, "", bake.lead, "", "~ Ingredients ~", ""]
    for name, lines in _parted(bake):
        rows += [f"~ {name.capitalize()} ~"] if name else []
        rows += [f"* {row(line)}" for line in lines] + [""]
    rows += ["~ Method ~", ""] + [
        f"{letter}) {step}" for letter, step in zip("abcdefgh", bake.steps, strict=False)
    ]
    rows += ["", "* See my page on allergies."]
    return Text(name="brackets.txt", data="\n".join(rows))


def pictures(bake: Bake, random: Random) -> Text:
    """A small picture before every line and around the headings."""
    write = pick(random)
    rows = [f"🍞 {bake.title} 🍞", bake.lead, "", "🛒 INGREDIENTS 🛒"]
    for name, lines in _parted(bake):
        rows += ["", f"🥣 {name.upper()} 🥣"] if name else []
        rows += [f"🔸 {sentence(line, write)}" for line in lines]
    rows += ["", "👩‍🍳 METHOD 👩‍🍳"] + [
        f"{n}\ufe0f\u20e3 {step}" for n, step in enumerate(bake.steps, start=1)
    ]
    rows += ["", f"✨ Makes {bake.makes} ✨", "#baking #home"]
    return Text(name="pictures.txt", data="\n".join(rows))


def three_cells(bake: Bake, random: Random) -> Text:
    """Copied out of a sheet: name, number and unit in columns of their own, with a row of headings."""

    def row(line: Line) -> str:
        if line.text or len(line.measures) != 1:
            return sentence(line, slashes)
        low, high, unit = line.measures[0]
        number = measure((low, high, ""), slashes, SHORT)
        word = measure((low, high, unit), slashes, SHORT).removeprefix(number).strip()
        return f"{_sized(line)}\t{number}\t{word}{_note(line)}"

    def _note(line: Line) -> str:
        return f"\t{line.preparation}" if line.preparation else ""

    rows = [bake.title, "", bake.lead, "", "Ingredient\tAmount\tUnit\tNote"]
    for name, lines in _parted(bake):
        rows += [name.capitalize()] if name else []
        rows += [row(line) for line in lines]
    rows += ["", "Directions"] + [f"{n}\t{step}" for n, step in enumerate(bake.steps, start=1)]
    return Text(name="sheet.txt", data="\n".join(rows))


def timed_steps(bake: Bake, random: Random) -> Text:
    """Chapters of the film that are the steps; the list stands between them."""
    write = pick(random)
    rows = [
        f"{bake.title} – full recipe below",
        "",
        bake.lead,
        "",
        "00:00 Hello and welcome",
        "",
        "WHAT YOU NEED",
    ]
    for name, lines in _parted(bake):
        rows += [f"{name.capitalize()}:"] if name else []
        rows += [f"– {sentence(line, write, TIGHT, tight=True)}" for line in lines]
    rows += ["", "STEPS"] + [
        f"{n:02d}:{n * 7 % 60:02d} – {step}" for n, step in enumerate(bake.steps, start=1)
    ]
    return Text(name="timed.txt", data="\n".join(rows))


def spelt_steps(bake: Bake, random: Random) -> Text:
    """Numbers of parts and steps in words."""
    write = pick(random)
    rows = [bake.title, "-" * len(bake.title), bake.lead, "", f"Yield: {bake.makes}", "", "Ingredients"]
    for number, (name, lines) in enumerate(_parted(bake), start=1):
        rows += ["", f"Part {number}: the {name}"] if name else []
        rows += [f"    {sentence(line, write, LONG)}" for line in lines]
    words = ("ONE", "TWO", "THREE", "FOUR", "FIVE", "SIX")
    rows += ["", "Instructions"] + [
        f"STEP {word}: {step}" for word, step in zip(words, bake.steps, strict=False)
    ]
    return Text(name="spelt.txt", data="\n".join(rows))


def plain_paragraphs(bake: Bake, random: Random) -> Text:
    """As in a letter: no marks at all, steps as paragraphs."""
    write = pick(random)
    rows = [bake.title, "", bake.lead, "", f"Makes {bake.makes}", "", "You will need", ""]
    for name, lines in _parted(bake):
        rows += [f"For the {name}", ""] if name else []
        rows += [sentence(line, write, SHORT, tight=True) for line in lines] + [""]
    rows += ["What to do", ""] + [text for step in bake.steps for text in (step, "")]
    return Text(name="letter.txt", data="\n".join(rows))


def side_by_side(bake: Bake, random: Random) -> Text:
    """Two ingredients on a line, with a wide gap between them."""
    write = pick(random)
    rows = [bake.title, "", bake.lead, "", "INGREDIENTS", ""]
    for name, lines in _parted(bake):
        rows += [f"{name.upper()}", ""] if name else []
        told = [sentence(line, write, SHORT) for line in lines]
        pairs = zip(told[::2], [*told[1::2], ""], strict=False)
        rows += [f"{left:<62}    {right}".rstrip() for left, right in pairs] + [""]
    rows += ["METHOD", ""] + [f"{n}. {step}" for n, step in enumerate(bake.steps, start=1)]
    return Text(name="side.txt", data="\n".join(rows))


def counted_lines(bake: Bake, random: Random) -> Text:
    """Ingredients numbered through, measures the other way round; steps by arrows."""

    def row(line: Line) -> str:
        if line.text or len(line.measures) < 2:
            return sentence(line, glyphs, LONG)
        told = [measure(each, glyphs, SHORT) for each in line.measures]
        return f"{told[-1]} – {told[0]} {_sized(line)}{_cut(line)}"

    rows = [f"Recipe: {bake.title}", "", bake.lead, "", "Ingredients list"]
    for name, lines in _parted(bake):
        rows += ["", f"[{name.capitalize()}]"] if name else []
        rows += [f"{n}) {row(line)}" for n, line in enumerate(lines, start=1)]
    rows += ["", "Procedure"] + [f"→ {step}" for step in bake.steps]
    return Text(name="counted.txt", data="\n".join(rows))


MORE: Mapping[str, Layout] = {
    "run_in": run_in,
    "names_first": names_first,
    "square_brackets": square_brackets,
    "pictures": pictures,
    "three_cells": three_cells,
    "timed_steps": timed_steps,
    "spelt_steps": spelt_steps,
    "plain_paragraphs": plain_paragraphs,
    "side_by_side": side_by_side,
    "counted_lines": counted_lines,
}
