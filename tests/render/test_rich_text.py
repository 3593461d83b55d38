"""Markdown becomes HTML that is safe, in order, and worded as the view says."""

import html
import re

import pytest

from generator.present.views import MentionView, Rich
from generator.render.rich_text import figure, local_links, mention_html, prose_html, rich_html, tied


def at_root(address: str) -> str:
    return f"../{address}"


def prose(markdown: str, level: int = 2) -> str:
    return str(prose_html(markdown, level=level, place=at_root)).strip()


def text_of(markup: str) -> str:
    return html.unescape(re.sub("<[^>]*>", "", markup)).replace("\u00a0", " ")


HALF = MentionView(kind="ingredient", lead="bread flour", tail="215 g, half")
RISE = MentionView(kind="stage", lead="rise 1 h 30 min", tail="", minutes=90)


@pytest.mark.parametrize(
    "mention", [HALF, RISE, MentionView(kind="extra", lead="10 g of <rye> & salt", tail="")]
)
def test_a_mention_has_exactly_the_words_of_the_view(mention: MentionView) -> None:
    assert text_of(str(mention_html(mention))) == mention.text


def test_mentions_stand_in_their_sentence() -> None:
    words = Rich(markdown="Add \ue0000\ue001, *then* \ue0001\ue001.", mentions=(HALF, RISE), plain="")
    assert str(rich_html(words, level=3, place=at_root)) == (
        '<p>Add <span class="use">bread flour <b>(215\u00a0g, half)</b></span>, <em>then</em> '
        '<span class="told-stage"><b>rise 1\u00a0h\u00a030\u00a0min</b></span>.</p>\n'
    )


@pytest.mark.parametrize("setting", ["`{}`", "    {}", "```\n{}\n```", "![{}](media/a.jpg)"])
def test_mentions_are_worded_where_only_plain_text_may_stand(setting: str) -> None:
    markdown = setting.format("\ue0000\ue001")
    made = str(rich_html(Rich(markdown=markdown, mentions=(HALF,), plain=""), level=3, place=at_root))
    assert "bread flour (215\u00a0g, half)" in made
    assert "\ue000" not in made


def test_private_characters_typed_by_hand_stand_for_nothing() -> None:
    assert prose("a\ue0007\ue001b") == "<p>ab</p>"


def test_raw_html_is_shown_as_text() -> None:
    assert prose("<script>alert(1)</script> <b>x</b>") == (
        "<p>&lt;script&gt;alert(1)&lt;/script&gt; &lt;b&gt;x&lt;/b&gt;</p>"
    )


@pytest.mark.parametrize(
    "address",
    [
        "javascript:alert(1)",
        "JaVaScRiPt:alert(1)",
        "data:text/html,x",
        "vbscript:x",
        "//other.example/x",
        "file:///etc/passwd",
        "ftp://other.example/",
    ],
)
def test_only_web_mail_and_local_addresses_become_links(address: str) -> None:
    assert "<a" not in prose(f"[x]({address})")
    assert "<img" not in prose(f"![x]({address})")


@pytest.mark.parametrize(
    "address", ["https://other.example/x", "http://other.example/x", "mailto:a@b.example"]
)
def test_outside_links_stay_as_they_are(address: str) -> None:
    assert prose(f"[x]({address})") == f'<p><a href="{address}">x</a></p>'


def test_local_links_and_pictures_are_fitted_to_the_page() -> None:
    assert prose("[x](recipes/a) ![y](media/b.jpg)") == (
        '<p><a href="../recipes/a">x</a> <img src="../media/b.jpg" alt="y" loading="lazy"></p>'
    )


def test_a_picture_from_elsewhere_becomes_a_link() -> None:
    assert prose("![y](https://other.example/b.jpg)") == '<p><a href="https://other.example/b.jpg">y</a></p>'
    assert prose("[![y](https://other.example/b.jpg)](recipes/a)") == '<p><a href="../recipes/a">y</a></p>'


def test_headings_nest_without_a_gap() -> None:
    made = prose("# A\n\n#### B\n\n### C\n\n# D\n\n###### E\n", level=3)
    assert re.findall(r"<h(\d)>(.)</h\1>", made) == [
        ("3", "A"),
        ("4", "B"),
        ("4", "C"),
        ("3", "D"),
        ("4", "E"),
    ]


def test_headings_never_pass_the_sixth_level() -> None:
    made = prose("# A\n\n## B\n\n### C\n", level=5)
    assert re.findall(r"<h(\d)>", made) == ["5", "6", "6"]


@pytest.mark.parametrize(
    ("loose", "held"),
    [
        ("430 g", "430\u00a0g"),
        ("3⅓ cups", "3⅓\u00a0cups"),
        ("1 h 30 min", "1\u00a0h\u00a030\u00a0min"),
        ("350 °F", "350\u00a0°F"),
        ("1 fl oz", "1\u00a0fl oz"),
        ("4 grains in 2 hours", "4 grains in 2 hours"),
        ("2 yolks", "2 yolks"),
    ],
)
def test_number_and_unit_stay_together(loose: str, held: str) -> None:
    assert tied(loose) == held


@pytest.mark.parametrize(
    "amount", ["430 g", "20–25 g", "1¼ cups + 2 tbsp", "to taste", "a < b", "", "2 eggs"]
)
def test_a_figure_keeps_every_character(amount: str) -> None:
    assert text_of(str(figure(amount))) == amount


def test_local_links_are_told_in_order() -> None:
    text = "![a](media/a.jpg) [b](recipes/b.md) [c](https://c.example/) [d](#d)"
    assert local_links(text) == ("media/a.jpg", "recipes/b.md")
