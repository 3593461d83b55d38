"""HTML to PDF: one layout engine for everything that is printed.

In: an HTML text and the names of style sheets of a theme's `paper` folder. Out: a laid-out document, and its
bytes as a tagged PDF/UA-1 file with our fonts inside. Nothing is fetched but our own faces, and nothing of
the machine or of the clock comes in, so that the same text gives the same bytes.
"""

import logging
import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from datetime import date
from functools import cache
from typing import Any

from weasyprint import CSS, HTML
from weasyprint.text.fonts import FontConfiguration
from weasyprint.urls import FatalURLFetchingError, URLFetcher, URLFetcherResponse

from generator.render.far_faces import FAR_FAMILIES, guided
from generator.render.paper_reading import heard, tell_in_order
from generator.render.paper_tags import mend_tags
from generator.render.print_fonts import (
    PrintFace,
    face_bytes,
    far_letters,
    far_print_faces,
    missing_glyphs,
    print_faces,
)
from generator.render.template_fault import style_fault
from generator.render.theme import DEFAULT, is_own, shown_path, templates, theme_file
from generator.render.worded import worded_style
from generator.wording.speech import gettext

_KIND = "paper"
_SCHEME = "font:"
PICTURE = "picture:"
"""The scheme that a text names a picture by, before its key in `pictures`."""

# Where a style sheet names families, the further ones come last.
_FAMILIES = re.compile(r"font-family:\s*(?!inherit)[^;}]+")
_AND_FAR = r"\g<0>" + "".join(f', "{family}"' for family in FAR_FAMILIES)
# What is seen of a text: what stands between tags, but not its title, and in the heads of further sides.
_TEXTS = re.compile(r"((?<!<title)>)([^<]+)")
_HEADS = re.compile(r'(data-running=")([^"]+)')

# WeasyPrint says in its log what it could not do; on paper such a thing would be a silent loss.
_LOG = logging.getLogger("weasyprint")


class PaperFault(Exception):
    """A fault of ours, not of the maker: an unknown style, a file that was asked for, a lost glyph."""


class _FontsOnly(URLFetcher):  # type: ignore[misc]
    """Gives our faces by key, and the pictures that came with the text; refuses every other address."""

    def __init__(self, pictures: Mapping[str, bytes] | None = None) -> None:
        super().__init__()
        self._pictures = pictures or {}

    def fetch(self, url: str, headers: Mapping[str, str] | None = None) -> URLFetcherResponse:
        for face in (*print_faces(), *far_print_faces()):
            if url == _SCHEME + face.key:
                return URLFetcherResponse(url, face_bytes(face), {"Content-Type": "font/ttf"})
        picture = self._pictures.get(url.removeprefix(PICTURE))
        if url.startswith(PICTURE) and picture is not None:
            return URLFetcherResponse(url, picture, {"Content-Type": "image/jpeg"})
        raise FatalURLFetchingError(f"paper asked for {url}, and only our own fonts are given")


class _Faults(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.said: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.said.append(record.getMessage())


def fill(template: str, *, theme: str = DEFAULT, kind: str = _KIND, **values: Any) -> str:
    """A template of one of the theme's folders, filled."""
    return templates(theme, kind).get_template(template).render(**values)


def lay_out(
    html: str, *styles: str, theme: str = DEFAULT, pictures: Mapping[str, bytes] | None = None
) -> Any:
    """The document with every box placed. Raises PaperFault where something would be lost in silence.

    A style of another folder than `paper` is named with it ("book/book.css"). `pictures` are JPEGs by their key.
    """
    lost = missing_glyphs(html)
    if lost:
        raise PaperFault(f"no face has {', '.join(f'U+{ord(mark):04X}' for mark in lost)}")
    far = bool(far_letters(html))
    with _loudly():
        page = HTML(
            string=_with_guides(html) if far else html, base_url=None, url_fetcher=_FontsOnly(pictures)
        )
        sheets = [_style(theme, name, far=far) for name in ("paper.css", *styles)]
        fonts = _font_configuration(far=far)
        return page.render(stylesheets=sheets, font_config=fonts, presentational_hints=False)


def _with_guides(html: str) -> str:
    """The text between tags, and that of running heads, as the letters of further faces ask for it."""
    return _HEADS.sub(_guide, _TEXTS.sub(_guide, html))


def _guide(found: re.Match[str]) -> str:
    return f"{found[1]}{guided(found[2])}"


def to_pdf(document: Any, *, turned_over_long_edge: bool = False) -> bytes:
    """The bytes of a laid-out document: tagged, fonts embedded, dated by the content alone.

    What is turned over is offered to the printer so, and in its own size (ISO 32000-1, table 150).
    """

    def finish(pages: Any, pdf: Any) -> None:
        _only_our_faces(pdf)
        mend_tags(pdf)
        tell_in_order(pages, pdf)
        if turned_over_long_edge:
            pdf.catalog["ViewerPreferences"].update(Duplex="/DuplexFlipLongEdge", PrintScaling="/None")

    with _loudly():
        written: bytes = heard(document).write_pdf(
            pdf_variant="pdf/ua-1", pdf_identifier=b"tinleaf", finisher=finish
        )
    return written


def _only_our_faces(pdf: Any) -> None:
    """A face of the machine would be another one on the next machine."""
    names = {str(each["FontName"]) for each in pdf.objects if isinstance(each, dict) and "FontName" in each}
    strange = sorted(name for name in names if not re.search(r"[/+]Docket-", name))
    if strange:
        raise PaperFault(f"paper took a face of the machine: {', '.join(strange)}")


def pdf_moment(day: date | None) -> str:
    """A day of the content as a document date, noon in UTC, or "" for none."""
    return f"{day.isoformat()}T12:00:00Z" if day else ""


@contextmanager
def _loudly() -> Iterator[None]:
    faults = _Faults()
    _LOG.addHandler(faults)
    try:
        yield
    except FatalURLFetchingError as refused:
        raise PaperFault(str(refused)) from refused
    finally:
        _LOG.removeHandler(faults)
    if faults.said:
        raise PaperFault("; ".join(faults.said))


@cache
def _font_configuration(*, far: bool = False) -> FontConfiguration:
    # Two for the process at most: each further one costs memory that is not given back.
    fonts = FontConfiguration()
    rules = "".join(_face_rule(face) for face in (*print_faces(), *(far_print_faces() if far else ())))
    CSS(string=rules, font_config=fonts, url_fetcher=_FontsOnly())
    return fonts


def _face_rule(face: PrintFace) -> str:
    return (
        f'@font-face{{font-family:"{face.family}";font-style:{face.style};font-weight:{face.weight};'
        f'src:url("{_SCHEME}{face.key}")}}\n'
    )


def _style(theme: str, name: str, *, far: bool = False) -> CSS:
    """A style sheet of the theme. What cannot be carried out in one of the maker's own is told at its place."""
    kind, _, file = name.rpartition("/")
    path = theme_file(theme, kind or _KIND, file)
    text = worded_style(path.read_text(encoding="utf-8"), gettext)
    try:
        with _loudly():
            return _css(_FAMILIES.sub(_AND_FAR, text) if far else text, far=far)
    except PaperFault as fault:
        if is_own(theme) and path.is_relative_to(theme):
            raise style_fault(str(fault), text, file=str(path), shown=shown_path) from fault
        raise


@cache
def _css(text: str, *, far: bool) -> CSS:
    return CSS(string=text, font_config=_font_configuration(far=far), url_fetcher=_FontsOnly())
