"""Five layouts drawn by lot and set aside while the reader was mended."""

from collections.abc import Mapping
from fractions import Fraction
from html import escape
from random import Random

from tests.importer.corpus.layouts import Text
from tests.importer.corpus.others_words import Other, Style, called, one_measure, slug, written
from tests.importer.corpus.truth import Bake, Line

_CARD = Style(units=(("cup", "c."), ("tbsp", "Tbsp."), ("tsp", "tsp."), ("lb", "lb."), ("oz", "oz.")))
_SLASH = Style()
_GLYPH = Style(fraction="glyph", to="–")


def index_card(bake: Bake, random: Random) -> Text:
    """A card in a box, photographed and typed off: front and back, short units, no numbers before the steps."""
    out = [
        "(front)",
        f"{bake.title}",
        f"From the kitchen of: {random.choice(('Aunt Wilma', 'Mrs Odelin', 'Grandma Tess'))}",
        f"Makes: {bake.makes}",
        "",
    ]
    for name, lines in bake.parts:
        if name:
            out.append(f"{name.capitalize()}:")
        out += [written(line, _CARD, own=False) for line in lines]
        out.append("")
    out += ["(back)", *bake.steps, "", f"Keeps {bake.keeps}.", "", f"Note: {bake.lead}"]
    return Text(name="card.txt", data="\n".join(out) + "\n")


def definition_list(bake: Bake, random: Random) -> Text:
    """A page of long ago: the parts are terms, the lines their definitions, and so are the steps."""
    out = [
        "<HTML><HEAD><TITLE>My recipes</TITLE></HEAD>",
        '<BODY BGCOLOR="#FFFFEE">',
        f"<H1>{escape(bake.title)}</H1>",
        f"<P><I>{escape(bake.lead)}</I>",
        "<HR>",
        "<H2>Ingredients</H2>",
        "<DL>",
    ]
    for name, lines in bake.parts:
        out.append(f"<DT><B>{escape(name.capitalize() or 'You need')}</B>")
        out += [f"<DD>{escape(written(line, _SLASH), quote=False)}" for line in lines]
    out += ["</DL>", "<H2>Method</H2>", "<DL>"]
    for number, step in enumerate(bake.steps, 1):
        out += [f"<DT>{number}.", f"<DD>{escape(step, quote=False)}"]
    out += [
        "</DL>",
        f"<P>Makes {escape(bake.makes)}.<BR>Keeps {escape(bake.keeps)}.",
        "<HR>",
        '<A HREF="index.html">Back to my recipes</A>',
        "</BODY></HTML>",
    ]
    return Text(name=f"{slug(bake)}.htm", data="\n".join(out) + "\n")


def nested_lists(bake: Bake, random: Random) -> Text:
    """One list with everything: ingredients with their parts inside, and the method beside them."""
    out = [
        "<!doctype html><html lang=en><head><meta charset=utf-8>",
        f"<title>{escape(bake.title)} – Tuesday Oven</title></head><body>",
        "<ul class=menu><li><a href='/'>Home</a><li><a href='/all'>All recipes</a><li><a href='/me'>About</a></ul>",
        f"<h1>{escape(bake.title)}</h1>",
        f"<p>{escape(bake.lead)}</p>",
        "<ul>",
        "<li>Ingredients<ul>",
    ]
    for name, lines in bake.parts:
        inner = "".join(f"<li>{escape(written(line, _GLYPH), quote=False)}</li>\n" for line in lines)
        out.append(
            f"<li>For the {escape(name.removeprefix('to '))}<ul>\n{inner}</ul></li>" if name else inner
        )
    out += ["</ul></li>", "<li>Method<ol>"]
    out += [f"<li>{escape(step, quote=False)}</li>" for step in bake.steps]
    out += [
        "</ol></li>",
        f"<li>Makes {escape(bake.makes)}</li>",
        f"<li>Keeps {escape(bake.keeps)}</li>",
        "</ul>",
        "<p class=foot>Baked and typed by the Tuesday Oven</p></body></html>",
    ]
    return Text(name="page.html", data="\n".join(out) + "\n")


def two_sizes(bake: Bake, random: Random) -> Text:
    """A table in plain text with the small and the double batch beside each other."""
    rows = [("", "Single", "Double")]
    for name, lines in bake.parts:
        if name:
            rows.append((name.capitalize(), "", ""))
        rows += [_both(line) for line in lines]
    wide = max(len(first) for first, _, _ in rows) + 2
    out = [bake.title, "=" * len(bake.title), "", bake.lead, "", "Ingredients", ""]
    out += [f"{first:<{wide}}{one:<14}{two}".rstrip() for first, one, two in rows]
    out += ["", "Method", ""]
    out += [f"{number}. {step}" for number, step in enumerate(bake.steps, 1)]
    out += ["", f"The single batch makes {bake.makes}.", f"Keeps {bake.keeps}."]
    return Text(name="two sizes.txt", data="\n".join(out) + "\n")


def _both(line: Line) -> tuple[str, str, str]:
    if not line.measures:
        return line.text, "", ""
    one = line.measures[0]
    sizes = [_SLASH.measure(one), _SLASH.measure((one[0] * 2, one[1] * 2, one[2]))]
    name = called(line)
    if line.size == "heaped":
        sizes = [size.replace(" ", " heaped ", 1) for size in sizes]
    elif line.size:
        sizes = [f"{size} {line.size}" for size in sizes]
    return name, sizes[0], sizes[1]


def bakers_table(bake: Bake, random: Random) -> Text:
    """A baker's sheet: name, grams, and the share of the flour."""
    flour = sum(
        (line.measures[0][0] for line in bake.lines if "flour" in line.item and line.measures), Fraction(0)
    )
    out = [f"# {bake.title}", "", bake.lead, "", f"Yield: {bake.makes}", ""]
    for name, lines in bake.parts:
        out += [f"## {name.capitalize()}" if name else "## Formula", ""]
        out += ["| Ingredient | Weight | Baker's % |", "|---|---:|---:|"]
        for line in lines:
            if not line.measures:
                out.append(f"| {line.text} | | |")
                continue
            low, _, unit = line.measures[0]
            share = f"{float(low * 100 / flour):.1f} %" if unit == "g" else "–"
            weight = f"{_SLASH.measure(line.measures[0])} {line.size}".strip()
            out.append(f"| {called(line)} | {weight} | {share} |")
        out.append("")
    out += ["## Process", ""]
    out += [f"{number}. {step}" for number, step in enumerate(bake.steps, 1)]
    out += ["", f"Keeps {bake.keeps}."]
    return Text(name=f"{slug(bake)}.md", data="\n".join(out) + "\n")


def _short(bake: Bake) -> Bake:
    """The first measure alone, as a card has room for."""
    return one_measure(bake, metric=False)


def _single(bake: Bake) -> Bake:
    return one_measure(bake, metric=True)


def _bread(bake: Bake) -> Bake | None:
    """Bread alone is written so."""
    if not any(word in bake.title for word in ("loaf", "rolls", "braid")):
        return None
    return one_measure(bake, metric=True)


HELD: Mapping[str, Other] = {
    "index card": Other(write=index_card, adapt=_short),
    "definition list": Other(write=definition_list),
    "nested lists": Other(write=nested_lists),
    "two sizes": Other(write=two_sizes, adapt=_single),
    "baker's table": Other(write=bakers_table, adapt=_bread),
}
