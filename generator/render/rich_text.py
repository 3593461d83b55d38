"""Markdown of the maker -> HTML, with references worded and raw HTML shown as the text it is.

Links lead to http, https, mailto or a place of the publication; anything else stays plain text. Headings are
put in order below the heading they stand under, whatever levels the maker chose.
"""

import re
from collections.abc import Callable, Sequence
from functools import cache, lru_cache
from urllib.parse import urlsplit

from markdown_it import MarkdownIt
from markdown_it.renderer import RendererHTML
from markdown_it.token import Token
from markdown_it.utils import EnvType, OptionsDict
from markupsafe import Markup, escape

from generator.present.views import MentionView, Rich
from generator.wording.speech import say_of, voice

# A reference in the text: U+E000, its number, U+E001 (see `present/views.py`).
_MENTION = re.compile("\ue000(\\d+)\ue001")
_METRIC = "kg|g|mg|ml|cl|dl|l|fl oz|oz|lb"
_OTHERS = "cm|mm|in|inch(?:es)?|°C|°F|%|×|x"
# "3 h 28 min" is one time.
_HOURS = re.compile("(?<=\u00a0h) (?=[0-9]+\u00a0min(?![\\w]))")
_SCHEMES = frozenset({"http", "https", "mailto"})

Place = Callable[[str], str]
Mark = Callable[[int, str], Markup]
"""The attribute of a reference's lead or tail (its number, and which of the two), or ""."""

Tokens = Sequence[Token]


def unit_pattern() -> str:
    """A unit of the language with the tie before it; Python and the script of the pages both read it."""
    return rf"\u00a0(?:{_units()})(?![\w])"


def _units() -> str:
    # A pattern too: the words of the language that follow a number and keep to it.
    return f"{_METRIC}|{say_of('pattern', 'cups?|tbsp|tsp|sticks?|pints?|quarts?|min|h|s|days?')}|{_OTHERS}"


@cache
def _patterns(_language: str) -> tuple[re.Pattern[str], re.Pattern[str]]:
    """Where a number is to be tied, and a unit that is."""
    return re.compile(rf"(?<=[\d¼½¾⅐-⅞]) (?=(?:{_units()})(?![\w]))"), re.compile(unit_pattern())


def tied(text: str) -> str:
    """The text with number and unit held on one line by a no-break space (U+00A0)."""
    return _tied(text, voice().tag)


@lru_cache(maxsize=1 << 11)
def _tied(text: str, language: str) -> str:
    return _HOURS.sub("\u00a0", _patterns(language)[0].sub("\u00a0", text))


def figure(text: str) -> Markup:
    """An amount with its unit set apart for the style sheet; no character differs but for the ties."""
    return _figure(text, voice().tag)


@lru_cache(maxsize=1 << 10)
def _figure(text: str, language: str) -> Markup:
    if text and not any(sign.isnumeric() for sign in text):
        return Markup('<span class="worded">{}</span>').format(text)
    said = str(escape(_tied(text, language)))
    return Markup(_patterns(language)[1].sub('<span class="unit">\\g<0></span>', said))


def _unmarked(number: int, end: str) -> Markup:
    return Markup()


def mention_html(mention: MentionView, number: int = 0, mark: Mark = _unmarked) -> Markup:
    """A reference as it stands in a sentence: the characters of its `text`, what to measure in bold."""
    lead, tail = tied(mention.lead), _spanned(tied(mention.tail), mark(number, "tail"))
    if mention.kind in ("ingredient", "part"):
        after = Markup(" <b>({})</b>").format(tail) if tail else ""
        return Markup('<span class="use">{}{}</span>').format(lead, after)
    strong = Markup("{1}") if mention.kind == "measure" else Markup("<b{0}>{1}</b>")
    after = Markup(" ({})").format(tail) if tail else ""
    told = strong.format(mark(number, "lead"), lead)
    return Markup('<span class="told-{}">{}{}</span>').format(mention.kind, told, after)


def _spanned(text: str, attribute: Markup) -> Markup:
    return Markup("<span{}>{}</span>").format(attribute, text) if attribute else escape(text)


def prose_html(markdown: str, *, level: int, place: Place) -> Markup:
    """Markdown as HTML. `level` is the highest heading it may use, `place` makes an address fit the page."""
    return rich_html(Rich(markdown=markdown, mentions=(), plain=""), level=level, place=place)


def rich_html(words: Rich, *, level: int, place: Place, mark: Mark = _unmarked) -> Markup:
    """Markdown with references as HTML: whole blocks. `mark` names the amounts that a script may change."""
    env = {"mentions": words.mentions, "place": place, "mark": mark}
    reader = _reader()
    tokens = _ordered(reader.parse(words.markdown, env), level)
    return Markup(reader.renderer.render(tokens, reader.options, env))


def local_links(markdown: str) -> tuple[str, ...]:
    """The addresses in a text that lead to a place of the publication, pictures included, in their order."""
    found = [
        str(child.attrGet("href") or child.attrGet("src") or "")
        for token in _reader().parse(markdown, {})
        for child in token.children or ()
        if child.type in ("link_open", "image")
    ]
    return tuple(address for address in found if address and is_local(address))


def is_local(address: str) -> bool:
    """Whether an address leads to a place of the publication."""
    parts = urlsplit(address)
    return not parts.scheme and not parts.netloc and bool(parts.path)


def _allowed(address: str) -> bool:
    try:
        parts = urlsplit(address)
    except ValueError:
        return False
    return parts.scheme.lower() in _SCHEMES if parts.scheme or parts.netloc else True


@cache
def _reader() -> MarkdownIt:
    reader = MarkdownIt(
        "commonmark", {"html": False, "linkify": False, "typographer": False, "xhtmlOut": False}
    )
    reader.validateLink = _allowed  # type: ignore[assignment,method-assign]
    for rule in (_text, _code_inline, _code_block, _fence, _image, _link_open):
        reader.add_render_rule(rule.__name__.removeprefix("_"), rule)
    return reader


def _ordered(tokens: list[Token], level: int) -> list[Token]:
    """Headings nested without a gap, from `level` on: each one below the nearest higher one before it."""
    above: list[str] = []
    for opening in (token for token in tokens if token.type == "heading_open"):
        while above and above[-1] >= opening.tag:
            above.pop()
        above.append(opening.tag)
        opening.meta["level"] = min(6, level + len(above) - 1)
    tag = ""
    for token in tokens:
        if token.type == "heading_open":
            tag = f"h{token.meta['level']}"
        if token.type in ("heading_open", "heading_close"):
            token.tag = tag
    return tokens


def _worded(text: str, env: EnvType, word: Callable[[MentionView, int, Mark], Markup]) -> str:
    """Escaped text with each reference in it replaced by its words."""
    mentions: Sequence[MentionView] = env["mentions"]
    worded = [str(escape(tied(piece))) for piece in _MENTION.split(text)[::2]]
    numbers = [int(number) for number in _MENTION.findall(text)]
    # A maker may type the same private characters by hand; they stand for nothing then.
    told = [str(word(mentions[each], each, env["mark"])) if each < len(mentions) else "" for each in numbers]
    return "".join(piece for pair in zip(worded, [*told, ""], strict=True) for piece in pair)


def _plain(mention: MentionView, number: int, mark: Mark) -> Markup:
    """For code, where nothing is bold."""
    lead, tail = (
        _spanned(tied(words), mark(number, end))
        for end, words in (("lead", mention.lead), ("tail", mention.tail))
    )
    return Markup("{} ({})").format(lead, tail) if tail else lead


def _told(mention: MentionView, number: int, mark: Mark) -> Markup:
    """For an attribute, which holds no elements."""
    return escape(tied(mention.text))


def _text(renderer: RendererHTML, tokens: Tokens, at: int, options: OptionsDict, env: EnvType) -> str:
    return _worded(tokens[at].content, env, mention_html)


def _code_inline(renderer: RendererHTML, tokens: Tokens, at: int, options: OptionsDict, env: EnvType) -> str:
    return f"<code>{_worded(tokens[at].content, env, _plain)}</code>"


def _code_block(renderer: RendererHTML, tokens: Tokens, at: int, options: OptionsDict, env: EnvType) -> str:
    return f"<pre><code>{_worded(tokens[at].content, env, _plain)}</code></pre>\n"


def _fence(renderer: RendererHTML, tokens: Tokens, at: int, options: OptionsDict, env: EnvType) -> str:
    return _code_block(renderer, tokens, at, options, env)


def _image(renderer: RendererHTML, tokens: Tokens, at: int, options: OptionsDict, env: EnvType) -> str:
    """A picture of the publication; one from elsewhere becomes a link: pages ask nothing of others."""
    token = tokens[at]
    address = str(token.attrGet("src") or "")
    words = _worded(renderer.renderInlineAsText(token.children, options, env), env, _told)
    if not is_local(address):
        inside = sum({"link_open": 1, "link_close": -1}.get(token.type, 0) for token in tokens[:at])
        return words if inside else f'<a href="{escape(address)}">{words or escape(address)}</a>'
    return f'<img src="{escape(env["place"](address))}" alt="{words}" loading="lazy">'


def _link_open(renderer: RendererHTML, tokens: Tokens, at: int, options: OptionsDict, env: EnvType) -> str:
    address = str(tokens[at].attrGet("href") or "")
    title = tokens[at].attrGet("title")
    fitted = env["place"](address) if is_local(address) else address
    return f'<a href="{escape(fitted)}"' + (f' title="{escape(title)}">' if title else ">")
