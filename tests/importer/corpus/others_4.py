"""Seven layouts by a hand that does not know the reader: descriptions, pages, Markdown and a document."""

import json
from collections.abc import Mapping
from html import escape
from random import Random

from tests.importer.corpus.layouts import Text
from tests.importer.corpus.others_words import Other, Style, amount, called, one_measure, slug, written
from tests.importer.corpus.truth import Bake, Line


def chapters_first(bake: Bake, random: Random) -> Text:
    """The film's chapters and the shopping links stand above the recipe, and more talk below it."""
    style = Style(fraction="glyph", to="–")
    at = sorted(random.sample(range(1, 15), 3))
    out = [
        bake.title,
        bake.lead,
        "",
        "00:00 Hello",
        f"{at[0]:02}:20 What you need",
        f"{at[1]:02}:45 At the bench",
        f"{at[2]:02}:10 Cutting into it",
        "",
        "WHAT I USE (affiliate links, I may earn a little if you buy)",
        "My scale: https://shop.example/scale",
        "The tin in the video: https://shop.example/tin",
        "",
        f"—— INGREDIENTS (for {bake.makes}) ——",
    ]
    for name, lines in bake.parts:
        if name:
            out.append(f"[{name.capitalize()}]")
        out += [f"• {written(line, style)}" for line in lines]
        out.append("")
    out.append("—— INSTRUCTIONS ——")
    out += [f"Step {number}: {step}" for number, step in enumerate(bake.steps, 1)]
    out += [
        "",
        f"Storage: {bake.keeps}",
        "",
        "If you bake it, send me a picture! I read every comment.",
        "More recipes: https://oventime.example/recipes",
        "",
        "#baking #recipe #ovenandtin",
    ]
    return Text(name="video.txt", data="\n".join(out) + "\n")


def no_bullets(bake: Bake, random: Random) -> Text:
    """An early description: no marks before the lines, steps as paragraphs, one link, no chapters."""
    style = Style(units=(("tbsp", "Tbsp"), ("oz", "ounces"), ("g", "grams"), ("lb", "pounds")))
    sign = random.choice(("Happy baking!", "See you next Sunday!", "Enjoy!"))
    out = [
        f"Today I am making: {bake.title}",
        "",
        "Ingredients:",
    ]
    for name, lines in bake.parts:
        if name:
            out += ["", f"{name.capitalize()}:"]
        out += [written(line, style, own=False) for line in lines]
    out += ["", "How to make it:", ""]
    for step in bake.steps:
        out += [step, ""]
    out += [
        f"Makes {bake.makes}.",
        f"Keeps {bake.keeps}.",
        "",
        f"{sign} The printable version is on my page: https://flourdust.example/print",
        "Thanks for watching, and please give it a thumbs up.",
    ]
    return Text(name=f"{slug(bake)}.txt", data="\n".join(out) + "\n")


def page_with_table(bake: Bake, random: Random) -> Text:
    """A blog page without data for machines: the amounts in a table, the method in a list, readers below."""
    style = Style(fraction="glyph", to=" to ")
    reader = random.choice(("Mirla", "Osk", "Tennet"))
    rows = []
    for name, lines in bake.parts:
        if name:
            rows.append(f'<tr><th colspan="2">{escape(name.capitalize())}</th></tr>')
        rows += [
            f"<tr><td>{escape(amount(line, style))}</td><td>{escape(called(line))}</td></tr>"
            for line in lines
        ]
    out = [
        "<!DOCTYPE html>",
        f'<html lang="en"><head><meta charset="utf-8"><title>{escape(bake.title)} - Crust Diary</title>',
        "<style>td { padding: 4px } .post { max-width: 40em }</style></head><body>",
        '<div id="menu"><ul><li><a href="/">Start</a></li><li><a href="/about">About me</a></li></ul></div>',
        f'<div class="post"><h1>{escape(bake.title)}</h1>',
        '<p class="date">Posted on 12 May 2014 in Baking</p>',
        f"<p>{escape(bake.lead)}</p>",
        "<h2>Ingredients</h2>",
        '<table class="ing">',
        *rows,
        "</table>",
        '<p><img src="bowl.jpg" alt="The bowl on my table"></p>',
        "<h2>Method</h2>",
        "<ol>",
        *(f"<li>{escape(step)}</li>" for step in bake.steps),
        "</ol>",
        f"<p><strong>Makes:</strong> {escape(bake.makes)}<br><strong>Keeps:</strong> {escape(bake.keeps)}</p>",
        "</div>",
        f'<div id="comments"><h3>1 comment</h3><p><b>{reader}</b> says: Looks wonderful, thank you!</p></div>',
        '<div id="footer"><p>Crust Diary, since 2008</p></div></body></html>',
    ]
    return Text(name="post.html", data="\n".join(out) + "\n")


def bold_amounts(bake: Bake, random: Random) -> Text:
    """Markdown of a careful person: amounts in bold, parts as small headings, a picture and a quoted hint."""
    style = Style(to="–")
    day = random.choice(("2019-03-02", "2020-11-14", "2021-06-27"))

    def one(line: Line) -> str:
        if not line.measures:
            return f"* {line.text}"
        return f"* **{amount(line, style)}** {called(line)}"

    out = [
        f"# {bake.title}",
        "",
        f"*{bake.lead}*",
        "",
        f"![The finished bake](pictures/{slug(bake)}.jpg)",
        "",
        f"Filmed {day}, see [the video](https://video.example/w/{slug(bake)}).",
        "",
        f"**Makes:** {bake.makes}  ",
        f"**Keeps:** {bake.keeps}",
        "",
        "## What goes in",
        "",
    ]
    for name, lines in bake.parts:
        if name:
            out += [f"### {name.capitalize()}", ""]
        out += [one(line) for line in lines]
        out.append("")
    out += ["## What to do", ""]
    out += [f"{number}. {step}" for number, step in enumerate(bake.steps, 1)]
    out += ["", "> Read it through once before you start.", ""]
    return Text(name=f"{slug(bake)}.md", data="\n".join(out))


def _baked(bake: Bake) -> int:
    return sum(high for kind, _, high in bake.times if kind == "bake")


def linked_data(bake: Bake, random: Random) -> Text:
    """A page whose data for machines is one flat list of lines and the steps in a section."""
    style = Style(fraction="glyph")
    lines = [written(line, style) for line in bake.lines]
    data: dict[str, object] = {
        "@context": "https://schema.org",
        "@type": ["Recipe"],
        "name": bake.title,
        "description": bake.lead,
        "author": {"@type": "Person", "name": "Ilke from Oven Notes"},
        "datePublished": f"2018-0{random.randint(1, 9)}-11T08:00:00+00:00",
        "image": [f"https://ovennotes.example/{slug(bake)}.jpg"],
        "recipeYield": [bake.makes],
        "recipeCategory": ["Baking"],
        "recipeIngredient": lines,
        "recipeInstructions": [{"@type": "HowToStep", "text": step, "name": step} for step in bake.steps],
        "keywords": "baking, oven notes",
    }
    if minutes := _baked(bake):
        data["cookTime"] = f"PT{minutes}M"
    out = [
        "<!doctype html>",
        f'<html lang="en"><head><meta charset="utf-8"><title>{escape(bake.title)} | Oven Notes</title>',
        f'<meta property="og:title" content="{escape(bake.title)}">',
        f'<script type="application/ld+json">{json.dumps(data, ensure_ascii=False)}</script>',
        "</head><body>",
        '<header><a href="/">Oven Notes</a><nav><a href="/bread">Bread</a> <a href="/cake">Cake</a></nav></header>',
        f"<main><article><h1>{escape(bake.title)}</h1><p>{escape(bake.lead)}</p>",
        '<a class="jump" href="#recipe">Jump to recipe</a>',
        f'<section id="recipe"><h2>{escape(bake.title)}</h2><h3>Ingredients</h3>',
    ]
    for name, some in bake.parts:
        if name:
            out.append(f"<h4>{escape(name.capitalize())}</h4>")
        out.append("<ul>")
        out += [f"<li>{escape(written(line, style))}</li>" for line in some]
        out.append("</ul>")
    out += ["<h3>Instructions</h3>", "<ol>"]
    out += [f"<li>{escape(step)}</li>" for step in bake.steps]
    out += [
        "</ol>",
        f"<h3>Notes</h3><p>Keeps {escape(bake.keeps)}.</p></section></article></main>",
        "<footer>© Oven Notes · <a href='/privacy'>Privacy</a></footer></body></html>",
    ]
    return Text(name=f"{slug(bake)}.html", data="\n".join(out) + "\n")


def microdata(bake: Bake, random: Random) -> Text:
    """A page of about 2012, with the property names that schema.org had then."""
    style = Style(units=(("tsp", "teaspoon"), ("tbsp", "tablespoon")))
    stars = random.choice(("4.5", "4.8", "5"))
    out = [
        "<!DOCTYPE html>",
        f'<html><head><meta charset="utf-8"><title>{escape(bake.title)} « Sunday Loaf</title></head><body>',
        '<div class="sidebar"><h4>Archive</h4><ul><li><a href="/2012/05">May 2012</a></li></ul></div>',
        '<div class="hrecipe" itemscope itemtype="http://schema.org/Recipe">',
        f'<h2 itemprop="name">{escape(bake.title)}</h2>',
        '<p>by <span itemprop="author">Wenke</span>, '
        '<time itemprop="datePublished" datetime="2012-05-20">20 May 2012</time></p>',
        f'<p itemprop="description">{escape(bake.lead)}</p>',
        '<div itemprop="aggregateRating" itemscope itemtype="http://schema.org/AggregateRating">'
        f'<span itemprop="ratingValue">{stars}</span> stars from <span itemprop="reviewCount">12</span> readers'
        "</div>",
        f'<p>Yield: <span itemprop="recipeYield">{escape(bake.makes)}</span></p>',
    ]
    if minutes := _baked(bake):
        out.append(
            f'<p>Time in the oven: <time itemprop="cookTime" datetime="PT{minutes}M">{minutes} minutes</time></p>'
        )
    for name, lines in bake.parts:
        out += [f"<h3>{escape(name.capitalize() or 'Ingredients')}</h3>", "<ul>"]
        out += [
            f'<li itemprop="ingredients">{escape(written(line, style, own=False))}</li>' for line in lines
        ]
        out.append("</ul>")
    out += ["<h3>Directions</h3>", '<div itemprop="recipeInstructions"><ol>']
    out += [f"<li>{escape(step)}</li>" for step in bake.steps]
    out += [
        "</ol></div>",
        f"<p>Keeps {escape(bake.keeps)}.</p>",
        "</div>",
        '<div class="footer">Sunday Loaf is a hobby. <a href="/feed">Feed</a></div></body></html>',
    ]
    return Text(name="saved page.html", data="\n".join(out) + "\n")


def document_with_tabs(bake: Bake, random: Random) -> Text:
    """A word processor's file saved as text: tabs between amount and name, decimal commas, a footer."""
    style = Style(fraction="comma", to="–")
    page = random.randint(3, 40)
    out = [
        f"{bake.title}",
        f"({bake.makes})",
        "",
        bake.lead,
        "",
    ]
    for name, lines in bake.parts:
        out.append(name.capitalize() if name else "Ingredients")
        out += [f"{amount(line, style)}\t{called(line)}" for line in lines]
        out.append("")
    out.append("Method")
    out += [f"{number}.\t{step}" for number, step in enumerate(bake.steps, 1)]
    out += ["", f"Keeps: {bake.keeps}", "", "", f"Baking folder\tPage {page}"]
    return Text(name=f"{bake.title}.txt", data="\r\n".join(out) + "\r\n")


def _in_grams(bake: Bake) -> Bake:
    return one_measure(bake, metric=True)


FOURTH_BY_OTHERS: Mapping[str, Other] = {
    "chapters first": Other(write=chapters_first),
    "no bullets": Other(write=no_bullets),
    "page with a table": Other(write=page_with_table),
    "bold amounts": Other(write=bold_amounts),
    "flat linked data": Other(write=linked_data),
    "old microdata": Other(write=microdata),
    "document with tabs": Other(write=document_with_tabs, adapt=_in_grams),
}
