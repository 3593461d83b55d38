"""What a maker's text may not do: run in a reader's browser, fetch from elsewhere, tell where a picture was taken."""

import ast
import re
from html.parser import HTMLParser
from http.server import BaseHTTPRequestHandler, HTTPServer
from io import BytesIO
from pathlib import Path
from threading import Thread

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from generator.render.paper import PaperFault, lay_out
from generator.render.photographs import encoded, published_size
from generator.render.rich_text import prose_html

ROOT = Path(__file__).parents[2]
ATTACKS = (
    *("javascript:alert(1)", "JaVaScRiPt:alert(1)", "vbscript:a", "data:text/html;base64,PHNjcmlwdD4="),
    *("java&#115;cript:alert(1)", "&#106;avascript:a", "java&Tab;script:a", "java&NewLine;script:a"),
    *("<java\tscript:a>", "<\x01javascript:a>", "javascript&colon;alert(1)", "//evil.example/a"),
    *(
        "blob:https://example.org/a",
        "file:///etc/passwd",
        "ftp://example.org",
        "%6aavascript:a",
        "<\u00a0javascript:a>",
    ),
    *("\\\\evil.example/a", "/\\evil.example/a", "feed:javascript:a", "&#x6A&#x61vascript:a", "filesystem:a"),
)
RAW = (
    *(
        "<script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        "<svg/onload=a>",
        "<iframe src=a></iframe>",
    ),
    *(
        "<a href='javascript:a'>b</a>",
        "<!-- --><b onclick=a>",
        "<?php a ?>",
        "<![CDATA[<script>]]>",
        "`<script>`",
    ),
    *("```<script>\n<script>\n```", "![<script>](a.jpg \"' onerror=a x='\")", '[a](b "\\" onclick=\\"a")'),
)
SAFE_TAGS = frozenset(
    ("a", "p", "b", "i", "em", "strong", "code", "pre", "ul", "ol", "li", "blockquote", "hr", "br", "img")
) | {"h2", "h3", "h4", "h5", "h6", "span", "figure"}


class _Seen(HTMLParser):
    """Every tag with its attributes, as a browser's parser would take them."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))


def harmless(markdown: str) -> None:
    for tag, attributes in _Seen(str(prose_html(markdown, level=2, place=lambda each: each))).tags:
        assert tag in SAFE_TAGS
        assert not [name for name in attributes if name.startswith("on") or name == "style"]
        for address in (attributes.get("href"), attributes.get("src")):
            plain = re.sub(r"[\x00-\x20]", "", address or "").lower()
            assert not plain.startswith(("//", "/\\", "\\"))
            scheme = re.match(r"([a-z][a-z0-9+.-]*):", plain)
            assert scheme is None or scheme[1] in ("http", "https", "mailto")


@pytest.mark.parametrize("address", ATTACKS)
def test_no_link_or_picture_leads_to_a_script(address: str) -> None:
    for text in (f"[a]({address})", f"![a]({address})", f"[a]\n\n[a]: {address}", f"<{address}>", address):
        harmless(text)


@pytest.mark.parametrize("text", RAW)
def test_raw_html_is_text(text: str) -> None:
    harmless(text)


@given(
    st.lists(st.sampled_from((*ATTACKS, *RAW, "[", "](", ")", "<", ">", "\n", '"', "![", "`")), max_size=8)
)
def test_no_mixture_of_attacks_gets_through(pieces: list[str]) -> None:
    harmless("".join(pieces))


def test_every_template_environment_escapes() -> None:
    made = [
        call
        for file in (ROOT / "generator").rglob("*.py")
        for call in ast.walk(ast.parse(file.read_text("utf-8")))
        if isinstance(call, ast.Call)
        and (getattr(call.func, "id", "") or getattr(call.func, "attr", "")).endswith("Environment")
    ]
    assert made
    for call in made:
        escaping = {each.arg: each.value for each in call.keywords}.get("autoescape")
        assert isinstance(escaping, ast.Constant)
        assert escaping.value is True


def test_no_template_has_a_script_or_a_style_of_its_own_line() -> None:
    """A strict content security policy refuses them, so a page that needs one would be broken."""
    for file in (ROOT / "themes").rglob("*.html"):
        text = file.read_text("utf-8")
        assert not re.search(r"<[a-z][^>{]*\son[a-z]+\s*=", text), file.name
        assert "javascript:" not in text, file.name
        assert not re.search(r"\|\s*safe\b", text), file.name


def test_the_paper_asks_the_net_for_nothing() -> None:
    asked: list[str] = []

    class Listener(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            asked.append(self.path)
            self.send_response(404)
            self.end_headers()

    server = HTTPServer(("127.0.0.1", 0), Listener)
    Thread(target=server.serve_forever, daemon=True).start()
    place = f"http://127.0.0.1:{server.server_port}/a"
    wanted = (
        f'<img src="{place}" alt="">',
        f'<link rel="stylesheet" href="{place}">',
        f'<style>@import "{place}";</style>',
        f'<p style="background:url({place})">a</p>',
        '<img src="file:///etc/passwd" alt="">',
        f'<object data="{place}"></object>',
    )
    try:
        for each in wanted:
            with pytest.raises(PaperFault):
                lay_out(f'<html lang="en"><head><title>a</title></head><body>{each}</body></html>')
    finally:
        server.shutdown()
        server.server_close()
    assert asked == []


def test_a_picture_says_nothing_of_its_place_and_time() -> None:
    exif = Image.Exif()
    exif[0x010E], exif[0x0132] = "SECRET WORDS", "2020:01:01 00:00:00"
    exif.get_ifd(0x8825)[1] = "N"
    exif[0x8825] = {1: "N", 2: (51.0, 1.0, 1.0)}
    source = BytesIO()
    Image.new("RGB", (40, 30), "red").save(source, "JPEG", exif=exif, comment=b"SECRET COMMENT")
    assert b"SECRET" in source.getvalue()
    published = encoded(source.getvalue(), width=40, height=30)
    assert b"SECRET" not in published
    with Image.open(BytesIO(published)) as picture:
        assert not dict(picture.getexif())


def test_a_picture_that_unpacks_without_end_is_no_picture() -> None:
    source = BytesIO()
    Image.new("1", (20_000, 20_000)).save(source, "PNG")
    assert len(source.getvalue()) < 100_000
    assert published_size(source.getvalue()) is None
