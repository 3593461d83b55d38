"""Pages: one made by hand long ago, with data for machines in three forms, and two without any."""

import json
from collections.abc import Mapping
from html import escape
from random import Random

from tests.importer.corpus.layouts import Text
from tests.importer.corpus.others_words import Other, Style, amount, called, slug, written
from tests.importer.corpus.truth import Bake, Line

_GLYPH = Style(fraction="glyph", to="–")
_SLASH = Style()
_LONG = Style(units=(("tbsp", "tablespoon"), ("tsp", "teaspoon")), to=" to ")


def _safe(text: str) -> str:
    return escape(text, quote=False)


def old_table(bake: Bake, random: Random) -> Text:
    """Made by hand in another century: a table in a table, font tags, and breaks instead of paragraphs."""
    rows = []
    for name, lines in bake.parts:
        if name:
            head = f"<B><FONT COLOR=#993300>{_safe(name.capitalize())}</FONT></B>"
            rows.append(f"<TR><TD COLSPAN=2>{head}</TD></TR>")
        rows += [_old_row(line) for line in lines]
    steps = "\n<BR><BR>\n".join(f"{number}. {_safe(step)}" for number, step in enumerate(bake.steps, 1))
    out = [
        f"<HTML><HEAD><TITLE>{_safe(bake.title)}</TITLE></HEAD>",
        "<BODY BGCOLOR=#FFF8E7 TEXT=#000000 LINK=#663300>",
        "<CENTER><TABLE WIDTH=600 BORDER=0 CELLPADDING=8><TR><TD>",
        f"<FONT FACE='Arial,Helvetica' SIZE=5><B>{_safe(bake.title)}</B></FONT><BR>",
        f"<FONT FACE='Arial,Helvetica' SIZE=2><I>{_safe(bake.lead)}</I><BR><BR>",
        f"Makes {_safe(bake.makes)}<BR><BR>",
        "<B>Ingredients</B><BR>",
        "<TABLE BORDER=1 CELLSPACING=0>",
        *rows,
        "</TABLE><BR>",
        "<B>Directions</B><BR><BR>",
        steps,
        f"<BR><BR>Keeps {_safe(bake.keeps)}.",
        "</FONT></TD></TR></TABLE>",
        "<HR WIDTH=600><FONT SIZE=1><A HREF=recipes.htm>back to recipes</A> | ",
        f"last updated {random.randint(1, 28)}.11.2004</FONT></CENTER></BODY></HTML>",
    ]
    return Text(name=f"{slug(bake)[:8]}.htm", data="\n".join(out) + "\n")


def _old_row(line: Line) -> str:
    style = "<TD VALIGN=top><FONT FACE=Arial SIZE=2>"
    much = _safe(amount(line, _SLASH)) or "&nbsp;"
    return f"<TR>{style}{much}</FONT></TD>{style}{_safe(called(line))}</FONT></TD></TR>"


def _page(bake: Bake, data: object, body: str) -> str:
    script = json.dumps(data, ensure_ascii=False, indent=1)
    return "\n".join(
        [
            "<!doctype html><html lang='en'><head><meta charset='utf-8'>",
            f"<title>{_safe(bake.title)} | Small Oven Notes</title>",
            f"<meta name='description' content='{escape(bake.lead)}'>",
            f"<script type='application/ld+json'>{script}</script></head><body>",
            "<header><nav><a href='/'>Start</a> <a href='/recipes'>Recipes</a></nav></header>",
            body,
            "<footer>© Small Oven Notes</footer></body></html>",
            "",
        ]
    )


def data_sections(bake: Bake, random: Random) -> Text:
    """A graph of things, the recipe among them, its steps in sections; the page itself only praises it."""
    half = max(1, len(bake.steps) // 2)
    sections = [
        {
            "@type": "HowToSection",
            "name": name,
            "itemListElement": [{"@type": "HowToStep", "text": step} for step in steps],
        }
        for name, steps in (("Getting ready", bake.steps[:half]), ("Baking", bake.steps[half:]))
        if steps
    ]
    address = f"https://oven.example/{slug(bake)}"
    data = {
        "@context": "https://schema.org",
        "@graph": [
            {"@type": "WebSite", "@id": "https://oven.example/#site", "name": "Small Oven Notes"},
            {"@type": "WebPage", "@id": address, "url": address, "name": bake.title},
            {"@type": "Person", "@id": "https://oven.example/#me", "name": "Runa"},
            {
                "@type": ["Recipe"],
                "name": bake.title,
                "description": bake.lead,
                "author": {"@id": "https://oven.example/#me"},
                "datePublished": f"2021-0{random.randint(1, 9)}-14",
                "recipeYield": [bake.makes],
                "recipeCategory": "Baking",
                "recipeIngredient": [written(line, _GLYPH) for line in bake.lines],
                "recipeInstructions": sections,
                "keywords": "baking, home baking",
            },
        ],
    }
    body = (
        f"<main><h1>{_safe(bake.title)}</h1><p>{_safe(bake.lead)}</p>"
        f"<p>Make it when it rains.</p><p>Keeps {_safe(bake.keeps)}.</p></main>"
    )
    return Text(name="saved.html", data=_page(bake, data, body))


def data_string(bake: Bake, random: Random) -> Text:
    """The steps as one long string with line breaks, entities in the words, times of the whole as durations."""
    data = [
        {
            "@context": "http://schema.org/",
            "@type": "Recipe",
            "name": _safe(bake.title),
            "description": bake.lead,
            "author": "Runa",
            "prepTime": "PT30M",
            "recipeYield": bake.makes,
            "recipeIngredient": [written(line, _SLASH) for line in bake.lines],
            "recipeInstructions": "\n".join(bake.steps),
        }
    ]
    parts = []
    for name, lines in bake.parts:
        if name:
            parts.append(f"<h4>{_safe(name.capitalize())}</h4>")
        parts.append("<ul>" + "".join(f"<li>{_safe(written(line, _SLASH))}</li>" for line in lines) + "</ul>")
    body = (
        f"<article><h1>{_safe(bake.title)}</h1><p>{_safe(bake.lead)}</p><h3>Ingredients</h3>{''.join(parts)}"
        f"<h3>Instructions</h3><ol>{''.join(f'<li>{_safe(step)}</li>' for step in bake.steps)}</ol>"
        f"<p>Keeps {_safe(bake.keeps)}.</p></article>"
    )
    return Text(name="page.html", data=_page(bake, data, body))


def micro(bake: Bake, random: Random) -> Text:
    """Marks on the words themselves, as pages had them ten years ago."""
    parts = []
    for name, lines in bake.parts:
        if name:
            parts.append(f"<h3>{_safe(name.capitalize())}</h3>")
        items = "".join(
            f'<li itemprop="recipeIngredient">{_safe(written(line, _GLYPH))}</li>\n' for line in lines
        )
        parts.append(f"<ul>\n{items}</ul>")
    steps = "".join(f"<p>{_safe(step)}</p>\n" for step in bake.steps)
    out = [
        f"<html><head><meta charset=utf-8><title>{_safe(bake.title)}</title></head><body>",
        '<div itemscope itemtype="http://schema.org/Recipe">',
        f'<h1 itemprop="name">{_safe(bake.title)}</h1>',
        '<p>by <span itemprop="author">Runa</span>, <time itemprop="datePublished" datetime="2013-05-02">2 May 2013'
        "</time></p>",
        f'<p itemprop="description">{_safe(bake.lead)}</p>',
        f'<p>Makes <span itemprop="recipeYield">{_safe(bake.makes)}</span></p>',
        "<h2>Ingredients</h2>",
        *parts,
        f'<h2>Method</h2><div itemprop="recipeInstructions">\n{steps}</div>',
        f"</div><p>Keeps {_safe(bake.keeps)}.</p>",
        "</body></html>",
    ]
    return Text(name=f"{slug(bake)}.html", data="\n".join(out) + "\n")


def bare_page(bake: Bake, random: Random) -> Text:
    """A page of today without any data: menu, story, list, steps with a heading each, comments, other recipes."""
    lists = []
    for name, lines in bake.parts:
        if name:
            lists.append(f"<h3>For the {_safe(name.removeprefix('to '))}</h3>")
        items = "".join(
            f"<li><label><input type=checkbox> {_safe(written(line, _LONG))}</label></li>" for line in lines
        )
        lists.append(f"<ul class=ing>{items}</ul>")
    steps = "".join(f"<li><p>{_safe(step)}</p></li>" for step in bake.steps)
    out = [
        f"<!doctype html><html lang=en><head><meta charset=utf-8><title>{_safe(bake.title)}</title>",
        "<style>.ing{list-style:none}</style><script>window.seen=true</script></head><body>",
        "<header><a href=/>Flour &amp; Lamp</a><nav><ul><li><a href=/bread>Bread</a></li>"
        "<li><a href=/cake>Cake</a></li></ul></nav></header>",
        f"<article><h1>{_safe(bake.title)}</h1><p class=date>Posted on 3 October 2019</p>",
        f"<p>{_safe(bake.lead)}</p><p>I wrote this down for my sister, who moved away and misses it.</p>",
        f"<p>Yield: {_safe(bake.makes)}</p>",
        "<h2>Ingredients</h2>",
        *lists,
        f"<h2>Instructions</h2><ol>{steps}</ol>",
        f"<h2>Notes</h2><p>Keeps {_safe(bake.keeps)}.</p></article>",
        f"<section id=comments><h2>{random.randint(2, 9)} comments</h2>",
        "<p><b>Pim</b> says: Made it twice already!</p><p><b>Wendel</b> says: Mine took longer.</p></section>",
        "<aside><h2>You may also like</h2><ul><li><a href=/a>Rye buns</a></li><li><a href=/b>Pear tart</a></li></ul>"
        "</aside><footer>© 2019 Flour &amp; Lamp. All rights reserved.</footer></body></html>",
    ]
    return Text(name="bookmark.html", data="\n".join(out) + "\n")


def two_columns(bake: Bake, random: Random) -> Text:
    """A recipe in two columns, amount and name in spans of their own, every step in a box with its number."""
    left = []
    for name, lines in bake.parts:
        if name:
            left.append(f"<div class=group>{_safe(name.capitalize())}</div>")
        for line in lines:
            much = _safe(amount(line, _GLYPH))
            left.append(
                f"<div class=row><span class=qty>{much}</span> <span class=what>{_safe(called(line))}</span></div>"
            )
    right = [
        f"<div class=step><h4>Step {number}</h4><p>{_safe(step)}</p></div>"
        for number, step in enumerate(bake.steps, 1)
    ]
    out = [
        f"<!doctype html><html lang=en><head><meta charset=utf-8><title>{_safe(bake.title)}</title></head><body>",
        f"<h1>{_safe(bake.title)}</h1><p class=lead>{_safe(bake.lead)}</p>",
        f"<dl class=facts><dt>Makes</dt><dd>{_safe(bake.makes)}</dd><dt>Keeps</dt><dd>{_safe(bake.keeps)}</dd></dl>",
        "<div class=columns><div class=left><h2>Ingredients</h2>",
        *left,
        "</div><div class=right><h2>Method</h2>",
        *right,
        "</div></div></body></html>",
    ]
    return Text(name=f"{slug(bake)}.html", data="\n".join(out) + "\n")


SECOND: Mapping[str, Other] = {
    "old table": Other(write=old_table),
    "data in sections": Other(write=data_sections),
    "data in a string": Other(write=data_string),
    "marks on the words": Other(write=micro),
    "page without data": Other(write=bare_page),
    "two columns": Other(write=two_columns),
}
