"""Five layouts that were written when the reader was done with the open ones, and measured once before mending."""

from collections.abc import Mapping
from html import escape
from random import Random

from tests.importer.corpus.layouts import Layout, Text
from tests.importer.corpus.truth import Bake, Line
from tests.importer.corpus.wording import LONG, SHORT, TIGHT, amount, glyphs, pick, sentence, slashes


def _sized(line: Line) -> str:
    return f"{line.size} {line.item}" if line.size else line.item


def _cut(line: Line) -> str:
    return f", {line.preparation}" if line.preparation else ""


def _parted(bake: Bake) -> list[tuple[str, tuple[Line, ...]]]:
    return [(name if len(bake.parts) > 1 else "", lines) for name, lines in bake.parts]


def messages(bake: Bake, random: Random) -> Text:
    """Sent to a friend line by line, and copied out of the conversation with its stamps."""
    write = pick(random)
    said = [bake.title, bake.lead, "ingredients:"]
    for name, lines in _parted(bake):
        said += [f"for the {name}:"] if name else []
        said += [sentence(line, write, SHORT, tight=True) for line in lines]
    said += ["method:", *bake.steps]
    stamped = [f"[03/11/2025, 18:{2 + n // 3:02d}] Wren: {each}" for n, each in enumerate(said)]
    return Text(name="messages.txt", data="\n".join([*stamped, "[03/11/2025, 19:40] Alder: thank you!!"]))


def parallel_cells(bake: Bake, random: Random) -> Text:
    """An old page: all amounts in one cell of a table, all names in the next, line against line."""

    def two(line: Line) -> tuple[str, str]:
        if line.text:
            return "", line.text
        return amount(line, slashes, TIGHT), f"{_sized(line)}{_cut(line)}"

    tables = ""
    for name, lines in _parted(bake):
        rows = [two(line) for line in lines]
        left = "<br>".join(escape(each) or "&nbsp;" for each, _ in rows)
        right = "<br>".join(escape(each) for _, each in rows)
        head = f"<p><i>{escape(name.capitalize())}</i></p>" if name else ""
        tables += f"{head}<table><tr><td align=right>{left}</td><td>{right}</td></tr></table>"
    steps = "<br><br>".join(escape(step) for step in bake.steps)
    page = (
        f"<html><head><title>{escape(bake.title)}</title></head><body><center><h2>{escape(bake.title)}</h2></center>"
        f"<p>{escape(bake.lead)}</p><p><b>Ingredients</b></p>{tables}<p><b>Directions</b></p><p>{steps}</p>"
        "<hr><p><a href='index.html'>back</a></p></body></html>"
    )
    return Text(name="parallel.html", data=page)


def caption(bake: Bake, random: Random) -> Text:
    """Under a picture: everything small, dots for empty lines, hashtags, the amount last."""

    def row(line: Line) -> str:
        return line.text or f"{_sized(line)} {amount(line, glyphs, TIGHT, tight=True)}{_cut(line)}"

    rows = [
        f"{bake.title.lower()} 🤍",
        ".",
        bake.lead.lower(),
        ".",
        "save this one for later 📌",
        ".",
        "ingredients ⬇️",
    ]
    for name, lines in _parted(bake):
        rows += [".", f"{name} ⬇️"] if name else []
        rows += [row(line) for line in lines]
    rows += [".", "method ⬇️"] + [f"{n}. {step}" for n, step in enumerate(bake.steps, start=1)]
    rows += [".", f"makes {bake.makes}", ".", "#homebaking #baking #breadmaking"]
    return Text(name="caption.txt", data="\n".join(rows))


def dotted_line(bake: Bake, random: Random) -> Text:
    """A short description: the whole list on one line, parted by middle dots; then the steps, parted by bars."""
    write = pick(random)
    rows = [f"{bake.title} | baked at home", "", bake.lead, ""]
    for name, lines in _parted(bake):
        head = f"{name.capitalize()}: " if name else "Ingredients: "
        rows += [head + " · ".join(sentence(line, write, SHORT) for line in lines), ""]
    rows += ["Method: " + " | ".join(bake.steps), "", f"Makes {bake.makes} · Keeps {bake.keeps}"]
    return Text(name="dotted.txt", data="\n".join(rows))


def printed_pages(bake: Bake, random: Random) -> Text:
    """Text out of a printed document: bullets that lost their font, page numbers, hard spaces, running heads."""
    write = pick(random)
    head = f"My baking notes{' ' * 30}page"
    rows = [f"{head} 7", "", bake.title, "", bake.lead, "", f"Quantity: {bake.makes}", "", "Ingredients"]
    for name, lines in _parted(bake):
        rows += ["", name.capitalize()] if name else [""]
        told = [sentence(line, write, LONG).replace(" ", "\u00a0", 1) for line in lines]
        rows += [f"\uf0b7\u00a0{each}" for each in told]
    steps = [f"{n}.\u00a0{step}" for n, step in enumerate(bake.steps, start=1)]
    half = len(steps) // 2
    rows += [
        "",
        "Preparation",
        "",
        *steps[:half],
        "",
        f"\x0c{head} 8",
        "",
        *steps[half:],
    ]
    rows += ["", f"Storage: {bake.keeps}"]
    return Text(name="printed.txt", data="\n".join(rows))


THIRD: Mapping[str, Layout] = {
    "messages": messages,
    "parallel_cells": parallel_cells,
    "caption": caption,
    "dotted_line": dotted_line,
    "printed_pages": printed_pages,
}
