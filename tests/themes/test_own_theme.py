"""A theme of the maker's own: found, proofread, followed by the engine; its mistakes are told with their lines."""

import asyncio
import os
import pickle
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image
from starlette.requests import Request

from generator.asked.preview import TemplateFault, pieces_of
from generator.cli.main import main
from generator.cli.make import own_up
from generator.desk.reading import fault_page
from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.plain import as_objects
from generator.diagnostics.span import Span
from generator.diagnostics.text import as_text, place_of
from generator.pipeline import check_folder
from generator.render.fonts import TYPEFACES, web_copy
from generator.render.theme import shown_path, theme_file, theme_names
from tests.making.kitchen import SITE, Kitchen, files_in

Write = Callable[[str, str], None]
LIST = """\
{% extends "base.html" %}
{% block main %}
<h1>{{ site.title }}</h1>
{% for teaser in site.teasers %}
<p>{{ teaser.day }} Time in all {{ teaser.total }} <a href="{{ to(teaser.path) }}">{{ teaser.title }}</a></p>
{% endfor %}
{% endblock %}
"""


@pytest.fixture
def kitchen(tmp_path: Path) -> Kitchen:
    kitchen = Kitchen(tmp_path)
    (kitchen.content / "site.yaml").write_text(f"{SITE}theme: mine\n", encoding="utf-8")
    (kitchen.content / "themes" / "mine" / "site").mkdir(parents=True)
    return kitchen


@pytest.fixture
def write(kitchen: Kitchen) -> Write:
    def put(path: str, text: str) -> None:
        file = kitchen.content / "themes" / "mine" / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")

    return put


def errors(kitchen: Kitchen) -> list[Diagnostic]:
    found = check_folder(kitchen.content, day=kitchen.day).diagnostics
    return [each for each in found if each.code.startswith("B") or each.code == "S054"]


def told(found: Diagnostic) -> tuple[str, str, int, str, str]:
    span = found.span
    return found.code, span.path, span.line, found.message, found.hint


HOME = "themes/mine/site/home.html"


@pytest.mark.parametrize(
    ("text", "code", "line", "message", "hint"),
    [
        (
            "<h1>\n{% for bake in site.teasers %}\n</h1>\n",
            *("B010", 2, "“for” is never closed", "Write {% endfor %} where it ends."),
        ),
        ("<h1>\n{% iff site %}\n", *("B010", 2, "there is no “iff” to be done", "Did you mean “if”?")),
        (
            "{% if site %}\n{% for a in site.teasers %}\n{% endif %}\n",
            *(
                "B010",
                3,
                "“endif” stands where “endfor” of line 2 is awaited",
                "Write {% endfor %} before it.",
            ),
        ),
        ("\n{{ site.title | uper }}\n", *("B010", 2, "there is no filter “uper”", "Did you mean “upper”?")),
        (
            "\n\n{% include 'basee.html' %}\n",
            *("B013", 3, "there is no template “basee.html”", "Did you mean “base.html”?"),
        ),
        (
            "{{ site.title\n",
            *(
                "B010",
                1,
                "this cannot be read: unexpected end of template, expected 'end of print statement'",
            ),
            "Values stand in {{ … }}, what is to be done in {% … %}.",
        ),
    ],
)
def test_what_cannot_be_read_is_told_by_check(
    kitchen: Kitchen, write: Write, text: str, code: str, line: int, message: str, hint: str
) -> None:
    write("site/home.html", text)
    assert [told(each) for each in errors(kitchen)] == [(code, HOME, line, message, hint)]
    assert kitchen.make().report is None
    assert not kitchen.output.exists()


@pytest.mark.parametrize(
    ("words", "code", "message", "hint"),
    [
        ("{{ sitee.title }}", "B011", "this template is given no “sitee”", "Did you mean “site”?"),
        ("{{ site.titel }}", "B011", "a SiteView has no “titel”", "Did you mean “title”?"),
        (
            "{{ site.title + 1 }}",
            "B012",
            'this cannot be carried out: can only concatenate str (not "int") to str',
            "The values that a template is given are described in docs/themes.md.",
        ),
        (
            "{{ site.__class__ }}",
            "B012",
            "a theme of your own may not do this: access to attribute '__class__' of 'SiteView' object is unsafe.",
            "Use the values that it is given.",
        ),
        (
            "{% include '../' ~ '../x' %}",
            "B013",
            "there is no template “../../x”",
            "Write the name of a file in the same folder of the theme, or of ours.",
        ),
    ],
)
def test_what_cannot_be_filled_is_told(
    kitchen: Kitchen, write: Write, words: str, code: str, message: str, hint: str
) -> None:
    write("site/home.html", LIST.replace("{{ site.title }}", f"\n\n{words}"))
    pieces = pieces_of(check_folder(kitchen.content, day=kitchen.day), kitchen.content)
    with pytest.raises(TemplateFault) as fault:
        pieces["site/index.html"].work()
    assert told(fault.value.finding) == (code, HOME, 5, message, hint)


def test_a_make_that_meets_it_leaves_everything_as_it_was(kitchen: Kitchen, write: Write) -> None:
    write("site/home.html", LIST)
    assert kitchen.make().report is not None
    before = files_in(kitchen.output)
    write("site/home.html", LIST.replace("site.title", "site.titel"))
    made = kitchen.make()
    assert [each.code for each in made.diagnostics if each.code[0] == "B"] == ["B011"]
    assert made.texts[HOME].startswith("{% extends")
    assert made.report is None
    assert files_in(kitchen.output) == before


def test_a_fault_comes_back_whole_from_another_process(kitchen: Kitchen, write: Write) -> None:
    write("site/home.html", LIST.replace("site.title", "site.titel"))
    pieces = pieces_of(check_folder(kitchen.content, day=kitchen.day), kitchen.content)
    with pytest.raises(TemplateFault) as fault:
        pieces["site/index.html"].work()
    back = pickle.loads(pickle.dumps(fault.value))
    assert (back.finding, back.text) == (fault.value.finding, fault.value.text)


def test_the_command_shows_the_line_and_ends_with_1(
    kitchen: Kitchen, write: Write, capsys: pytest.CaptureFixture[str]
) -> None:
    opening = "{% block opening %}\n<h1>{{ recipe.titel }}</h1>\n{% endblock %}\n"
    write("site/recipe.html", '{% extends "docket/recipe.html" %}\n' + opening)
    output = str(kitchen.output)
    assert main(["make", str(kitchen.content), "--output", output, "--jobs", "1", "--day", "2026-11-01"]) == 1
    said = capsys.readouterr().err
    place = f"{kitchen.content.as_posix()}/themes/mine/site/recipe.html:3:15"
    assert f"{place}: error[B011] a RecipeView has no “titel”" in said
    assert "<h1>{{ recipe.titel }}</h1>" in said
    assert "fault of the program" not in said
    assert not kitchen.output.exists()


def test_a_mistake_in_what_is_included_is_told_where_it_stands(kitchen: Kitchen, write: Write) -> None:
    write("site/head.html", "{% macro head(words) %}\n<h1>{{ wrds }}</h1>\n{% endmacro %}\n")
    write("site/home.html", '{% from "head.html" import head %}\n{{ head(site.title) }}\n')
    found = [each for each in kitchen.make().diagnostics if each.code == "B011"]
    assert as_text(found, {}).splitlines() == [
        "themes/mine/site/head.html:2:8: error[B011] this template is given no “wrds”",
        "  hint: Did you mean “words”?",
    ]


def test_a_macro_that_is_not_there_is_told_where_it_is_wanted(kitchen: Kitchen, write: Write) -> None:
    write("site/home.html", '{% from "pieces.html" import post_raw %}\n{{ post_raw(site) }}\n')
    pieces = pieces_of(check_folder(kitchen.content, day=kitchen.day), kitchen.content)
    with pytest.raises(TemplateFault) as fault:
        pieces["site/index.html"].work()
    said = "“post_raw” is to come from “pieces.html” (line 1), which has no such macro"
    hint = "A template gives on what it defines itself, not what it imports."
    assert told(fault.value.finding) == ("B011", HOME, 2, said, hint)


def test_a_style_for_paper_that_cannot_be_carried_out_is_told(kitchen: Kitchen, write: Write) -> None:
    write("paper/card.css", "h1 {\n  colr: red;\n}\n")
    pieces = pieces_of(check_folder(kitchen.content, day=kitchen.day), kitchen.content)
    with pytest.raises(TemplateFault) as fault:
        pieces["site/recipes/plain-loaf/card-4x6.pdf"].work()
    said = "“colr: red” cannot be carried out on paper: unknown property"
    hint = "Only what can be printed may stand in a style sheet for paper: nothing is left out in silence."
    assert told(fault.value.finding) == ("B017", "themes/mine/paper/card.css", 2, said, hint)


def test_a_file_in_another_encoding_is_told(kitchen: Kitchen) -> None:
    file = kitchen.content / "themes" / "mine" / "site" / "1-look.css"
    file.write_bytes("/* für uns */".encode("latin-1"))
    (found,) = errors(kitchen)
    assert told(found) == (
        "B010",
        "themes/mine/site/1-look.css",
        1,
        "this file is not UTF-8",
        "Save it as UTF-8.",
    )


def test_a_preview_takes_what_the_maker_adds_and_shows_what_breaks(kitchen: Kitchen, write: Write) -> None:
    def home() -> bytes:
        pieces = pieces_of(check_folder(kitchen.content, day=kitchen.day), kitchen.content)
        (page,) = pieces["site/index.html"].work()
        return page.content

    assert b"Newest bakes" in home()
    write("site/home.html", LIST)
    assert b"Newest bakes" not in home()
    write("site/home.html", "{{ site.titel }}")
    with pytest.raises(TemplateFault) as fault:
        home()
    # In a thread of its own: a browser of another test may keep a loop in this one.
    with ThreadPoolExecutor(1) as pool:
        answer = pool.submit(lambda: asyncio.run(fault_page(Request({"type": "http"}), fault.value))).result()
    assert answer.status_code == 500
    assert "themes/mine/site/home.html:1:9: error[B011]" in bytes(answer.body).decode()
    assert b"/desk/files/live.js" in answer.body


def test_all_mistakes_of_all_files_are_told_in_one_run(kitchen: Kitchen, write: Write) -> None:
    write("site/home.html", "{% if site %}\n")
    write("paper/card.html", "{{ view.title | uper }}\n")
    assert [(each.span.path, each.code) for each in errors(kitchen)] == [
        ("themes/mine/paper/card.html", "B010"),
        (HOME, "B010"),
    ]


def test_a_theme_that_is_not_there_names_those_that_are(kitchen: Kitchen) -> None:
    (kitchen.content / "site.yaml").write_text(f"{SITE}theme: mein\n", encoding="utf-8")
    (found,) = errors(kitchen)
    names = ", ".join(sorted({*theme_names(), "mine"}))
    assert told(found) == (
        *("B014", "site.yaml", 5, "there is no theme “mein”"),
        f"Did you mean “mine”? The themes there are: {names}. One of your own stands in themes/mein/.",
    )
    assert kitchen.make().report is None


def test_a_name_of_ours_is_not_taken_over_in_silence(kitchen: Kitchen) -> None:
    (kitchen.content / "site.yaml").write_text(SITE, encoding="utf-8")
    (kitchen.content / "themes" / "docket").mkdir()
    (found,) = errors(kitchen)
    assert (found.code, found.span.path) == ("B015", "themes/docket")


@pytest.mark.parametrize(
    "path", ["paper/logo.png", "site/logo.gif", "site/two words.css", "site/inner/a.html", "sites/a.html"]
)
def test_a_file_that_would_be_passed_over_is_told(kitchen: Kitchen, write: Write, path: str) -> None:
    write(path, "x")
    assert [(each.code, each.span.path) for each in errors(kitchen)] == [("B016", f"themes/mine/{path}")]


def test_a_theme_brings_its_own_fonts_and_pictures(kitchen: Kitchen, write: Write) -> None:
    """What a camera noted goes, what is clear in a drawing stays, and a change is made anew."""
    write("site/1-look.css", '@font-face { font-family: "Own"; src: url("own.woff2"); }\n')
    site = kitchen.content / "themes" / "mine" / "site"
    (site / "own.woff2").write_bytes(web_copy(TYPEFACES[2]))
    notes = Image.Exif()
    notes[0x010F] = "A camera"
    Image.new("RGB", (40, 20), "red").save(site / "paper.jpg", exif=notes)
    Image.new("RGBA", (8, 8), (0, 0, 0, 0)).save(site / "mark.png", exif=notes)
    assert errors(kitchen) == []
    assert kitchen.make().report is not None
    leaf = kitchen.output / "site" / "leaf"
    assert (leaf / "own.woff2").read_bytes() == web_copy(TYPEFACES[2])
    assert b"A camera" not in (leaf / "paper.jpg").read_bytes() + (leaf / "mark.png").read_bytes()
    with Image.open(leaf / "paper.jpg") as photo, Image.open(leaf / "mark.png") as mark:
        assert photo.size == (40, 20)
        assert mark.convert("RGBA").getpixel((4, 4)) == (0, 0, 0, 0)
    Image.new("RGB", (60, 20), "red").save(site / "paper.jpg")
    again = kitchen.make().report
    assert again is not None
    assert [each for each in again.written if "leaf" in each] == ["site/leaf/paper.jpg"]


@pytest.mark.parametrize(
    ("path", "message"),
    [
        ("site/own.woff2", "this is no font that a browser reads"),
        ("site/own.ttf", "this is no font that a browser reads"),
        ("site/logo.png", "this is no picture that can be read, or one of too many pixels"),
    ],
)
def test_a_font_or_picture_that_is_none_is_told(
    kitchen: Kitchen, write: Write, path: str, message: str
) -> None:
    write(path, "<script>")
    assert [(each.code, each.message) for each in errors(kitchen)] == [("B016", message)]


def test_a_mistake_in_a_template_of_ours_is_told_by_its_own_path(tmp_path: Path) -> None:
    """It lies in no content folder, so nothing stands before its path; a folder of the maker's keeps its own."""
    ours = Path(theme_file("docket", "site", "home.html"))
    shown = shown_path(ours) or ""
    span = Span(path=shown, line=3, column=1, end_line=3, end_column=2)
    assert place_of(span, prefix="content/") == "themes/docket/site/home.html:3:1"
    (told,) = as_objects([Diagnostic(code="B011", message="", span=span)], prefix="content/")
    assert told["path"] == "themes/docket/site/home.html"
    mine = shown_path(tmp_path / "content" / "themes" / "mine" / "site" / "home.html") or ""
    assert place_of(replace(span, path=mine), prefix="content/") == "content/themes/mine/site/home.html:3:1"


def test_no_link_leads_out_of_the_folder(kitchen: Kitchen, write: Write) -> None:
    secret = kitchen.folder / "secret.html"
    secret.write_text("the secret", encoding="utf-8")
    theme = kitchen.content / "themes" / "mine"
    write("site/home.html", LIST.replace("{{ site.title }}", '{% include "out.html" %}'))
    os.symlink(secret, theme / "site" / "out.html")
    os.symlink(secret, theme / "site" / "out.css")
    os.symlink(kitchen.folder, theme / "paper")
    assert [(each.code, each.span.path) for each in errors(kitchen) if each.code == "S054"] == [
        ("S054", "themes/mine/paper"),
        ("S054", "themes/mine/site/out.css"),
        ("S054", "themes/mine/site/out.html"),
    ]
    # Even a preview, which shows what it can, shows nothing of it.
    pieces = pieces_of(check_folder(kitchen.content, day=kitchen.day), kitchen.content)
    shared = {each.path: each.content for each in pieces["site/leaf/"].work()}
    assert not any(b"the secret" in content for content in shared.values())


def test_the_engine_follows_the_files_of_the_theme(kitchen: Kitchen, write: Write) -> None:
    write("site/home.html", LIST)
    write("site/1-look.css", "body { color: #123456; }\n")
    write("site/pieces-of-mine.html", "one")
    write(
        "site/kinds.html",
        LIST.replace("{{ site.title }}", "{% set name = 'pieces-of-mine.html' %}{% include name %}"),
    )
    kitchen.make()
    write("site/1-look.css", "body { color: #654321; }\n")
    report = kitchen.make().report
    assert report is not None
    assert report.written == ("site/leaf/docket.css",)
    assert b"#654321" in files_in(kitchen.output)["site/leaf/docket.css"]
    # A template that is named only while it is filled.
    write("site/pieces-of-mine.html", "two")
    report = kitchen.make().report
    assert report is not None
    assert report.written == ("site/kinds/index.html",)
    files, _ = kitchen.clean()
    assert files_in(kitchen.output) == files


def test_a_page_that_hides_an_amount_is_no_fault_of_the_program(
    kitchen: Kitchen, write: Write, capsys: pytest.CaptureFixture[str]
) -> None:
    write("site/home.html", LIST.replace("{{ teaser.total }}", "for ever"))
    made = kitchen.make()
    assert {each.span.path for each in made.unproven} == {"site/index.html"}
    assert own_up(made.unproven, kitchen.output, own_theme=made.own_theme) == 1
    said = capsys.readouterr().err
    assert "every page must say what the recipes say, in any theme" in said
    assert "fault of the program" not in said
    assert not kitchen.output.exists()
