"""Five layouts, drawn by lot out of twelve by a hand that does not know the reader, and set aside until the end."""

import csv
import io
from collections.abc import Mapping
from html import escape
from random import Random

from tests.importer.corpus.layouts import Text
from tests.importer.corpus.others_words import Other, Style, amount, one_measure, slug, wrapped, written
from tests.importer.corpus.truth import Bake, Line


def name_first(bake: Bake, random: Random) -> Text:
    """The name, a dash and how much of it; steps with a bracket behind their number."""
    style = Style(fraction="slash", gap="")
    tag = "".join(word for word in bake.title.split()[:3]).lower()

    def one(line: Line) -> str:
        if not line.measures:
            return line.text[0].upper() + line.text[1:]
        after = f", {line.preparation}" if line.preparation else ""
        return f"{line.item[0].upper()}{line.item[1:]} – {amount(line, style)}{after}"

    out = [f"{bake.title} | Easy recipe", "", bake.lead, ""]
    for name, lines in bake.parts:
        out.append(f"Ingredients for the {name.removeprefix('to ')}" if name else "Ingredients")
        out += [one(line) for line in lines]
        out.append("")
    out.append("Preparation")
    out += [f"{number}) {step}" for number, step in enumerate(bake.steps, 1)]
    out += [
        "",
        f"Yield – {bake.makes}",
        f"Keeps – {bake.keeps}",
        "",
        "Like, share and subscribe ❤",
        f"#{tag} #easyrecipe #homemade",
    ]
    return Text(name=f"{slug(bake)}.txt", data="\n".join(out) + "\n")


def page_by_hand(bake: Bake, random: Random) -> Text:
    """A page from the days of centred headings and lines that end with a break."""
    style = Style(units=(("tsp", "tsp."), ("tbsp", "tbsp."), ("oz", "oz.")))
    colour = random.choice(("#663300", "#336600", "#990033"))
    out = [
        '<HTML><HEAD><META http-equiv="Content-Type" content="text/html; charset=utf-8">',
        f"<TITLE>The Tin Spoon: {escape(bake.title)}</TITLE></HEAD>",
        '<BODY bgcolor="#FFFFF0">',
        '<A href="index.html">Home</A> | <A href="breads.html">Breads</A> | <A href="guest.html">Guestbook</A>',
        "<HR>",
        f'<CENTER><FONT size="6" color="{colour}"><B>{escape(bake.title)}</B></FONT></CENTER>',
        f"<P><I>{escape(bake.lead)}</I></P>",
    ]
    for name, lines in bake.parts:
        out.append(f"<P><B>{name.capitalize() if name else 'You will need'}:</B><BR>")
        out += [f"{escape(written(line, style, own=False))}<BR>" for line in lines]
        out.append("</P>")
    out.append("<P><B>Directions:</B></P>")
    out += [f"<P>{number}. {escape(step)}</P>" for number, step in enumerate(bake.steps, 1)]
    out += [
        f"<P>Makes {escape(bake.makes)}. Keeps {escape(bake.keeps)}.</P>",
        "<HR>",
        '<CENTER><FONT size="2">Last updated March 2010. <A href="mailto:spoon@tin.example">Write to me</A>',
        "</FONT></CENTER></BODY></HTML>",
    ]
    return Text(name=f"{slug(bake)}.htm", data="\n".join(out) + "\n")


def typed_card(bake: Bake, random: Random) -> Text:
    """A card from the box, typed off: the short units of such cards, and the method in one piece."""
    style = Style(units=(("cup", "c."), ("tbsp", "Tbsp."), ("tsp", "tsp."), ("lb", "lb."), ("oz", "oz.")))
    box = random.choice(("Sweet things", "Everyday", "Company"))
    out = [
        bake.title.upper(),
        f'(from the card box, behind "{box}")',
        "",
    ]
    for name, lines in bake.parts:
        if name:
            out.append(f"{name.capitalize()}:")
        out += [f"  {written(line, style, own=False)}" for line in lines]
        out.append("")
    out += [
        wrapped(" ".join(bake.steps), 64),
        "",
        f"Makes {bake.makes}. Keeps {bake.keeps}.",
    ]
    return Text(name=f"card {slug(bake)}.txt", data="\n".join(out) + "\n")


def mail_forwarded(bake: Bake, random: Random) -> Text:
    """A mail that was sent on, with its heading lines, a greeting and a signature, wrapped by the program."""
    style = Style(fraction="slash")
    who, asks = random.choice((("Rina", "Joost"), ("Hedda", "Piers"), ("Maike", "Tove")))
    out = [
        "---------- Forwarded message ----------",
        f"From: {who} <{who.lower()}@post.example>",
        "Date: Sun, 9 Oct 2016 at 18:04",
        f"Subject: {bake.title}",
        f"To: {asks} <{asks.lower()}@post.example>",
        "",
        f"Hi {asks},",
        "",
        wrapped("here is the recipe you asked for on Friday. Tell me how it turns out!", 72),
        "",
        bake.title,
        "",
    ]
    for name, lines in bake.parts:
        if name:
            out.append(f"{name.capitalize()}:")
        out += [wrapped(written(line, style), 72, first="- ", then="  ") for line in lines]
        out.append("")
    for number, step in enumerate(bake.steps, 1):
        out += [wrapped(f"{number}. {step}", 72, then="   ")]
    out += [
        "",
        wrapped(f"It makes {bake.makes} and keeps {bake.keeps}.", 72),
        "",
        f"Love, {who}",
        "",
        "-- ",
        "Sent from the kitchen table",
    ]
    return Text(name=f"Fwd {slug(bake)}.txt", data="\n".join(out) + "\n")


def name_and_text(bake: Bake, random: Random) -> Text:
    """A row of a table that was written out: the name in one cell, the whole text in the next."""
    style = Style(units=(("tsp", "teaspoon"), ("tbsp", "tablespoon")))
    first = random.choice(("name", "Name", "NAME"))
    cell = [bake.lead, "", f"Makes {bake.makes}", ""]
    for name, lines in bake.parts:
        cell.append(f"For the {name.removeprefix('to ')}:" if name else "Ingredients:")
        cell += [f"- {written(line, style, own=False)}" for line in lines]
        cell.append("")
    cell.append("Method:")
    cell += [f"{number}. {step}" for number, step in enumerate(bake.steps, 1)]
    cell += ["", f"Keeps {bake.keeps}"]
    out = io.StringIO()
    rows = csv.writer(out)
    rows.writerow([first, first.replace("name", "text").replace("Name", "Text").replace("NAME", "TEXT")])
    rows.writerow([bake.title, "\n".join(cell)])
    return Text(name="recipes.csv", data=out.getvalue())


def _in_cups(bake: Bake) -> Bake:
    return one_measure(bake, metric=False)


LAST: Mapping[str, Other] = {
    "name first": Other(write=name_first),
    "page by hand": Other(write=page_by_hand),
    "typed card": Other(write=typed_card, adapt=_in_cups),
    "mail sent on": Other(write=mail_forwarded),
    "name and text": Other(write=name_and_text),
}
