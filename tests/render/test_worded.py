"""Words in scripts and style sheets go out said, and as what their language of the web wants."""

from generator.render.paper import fill, lay_out
from generator.render.rich_text import figure, tied, unit_pattern
from generator.render.site.assets import asset_products
from generator.render.worded import messages_of, worded_script, worded_style
from generator.wording.speech import speaking

_GERMAN = {"All done": 'Alles "fertig"', "side {page} of {pages}": "{pages} Seiten, die {page}te"}


def _say(text: str) -> str:
    return _GERMAN.get(text, text)


def test_a_script_gets_plain_texts_and_keeps_all_else() -> None:
    script = 'a.textContent = _("All done"); b(_("{n} left").replace("{n}", n)); this._("no"); over_("no");'
    assert list(messages_of(script)) == ["All done", "{n} left"]
    assert worded_script(script, _say) == (
        'a.textContent = "Alles \\"fertig\\""; b("{n} left".replace("{n}", n)); this._("no"); over_("no");'
    )


def test_a_style_sheet_gets_texts_and_counters_in_the_order_of_the_language() -> None:
    style = 'a { content: _("side {page} of {pages}"); } b { content: _("All done") "·"; }'
    assert worded_style(style, str) == (
        'a { content: "side " counter(page) " of " counter(pages); } b { content: "All done" "·"; }'
    )
    assert worded_style(style, _say) == (
        'a { content: counter(pages) " Seiten, die " counter(page) "te"; } b { content: "Alles \\"fertig\\"" "·"; }'
    )


def _script(name: str, language: str) -> str:
    with speaking(language):
        made = {product.path: product.content for product in asset_products("docket")}
    return made[f"site/leaf/{name}"].decode()


def test_scripts_of_a_german_site_speak_german_and_look_nothing_up() -> None:
    english, german = _script("ticks.js", "en-US"), _script("ticks.js", "de")
    assert 'textContent="Clear all ticks"' in english
    assert 'textContent="Alle Haken entfernen"' in german
    assert "_(" not in english + german


def test_running_heads_follow_the_language_within_one_run() -> None:
    html = '<html lang="x"><title>A</title><body class="bench bench-a4">A</body></html>'
    heads = [_words_of(html, language).split()[1:] for language in ("en-US", "de", "en-US")]
    assert heads == [["bench", "sheet"], ["Backzettel"], ["bench", "sheet"]]


def _words_of(html: str, language: str) -> str:
    with speaking(language):
        document = lay_out(html, "docket.css", "bench-sheet.css")
    boxes = [box for page in document.pages for box in page._page_box.descendants()]
    return " ".join(getattr(box, "text", "") for box in boxes)


def test_a_template_speaks_the_language_of_the_moment() -> None:
    said = {}
    for language in ("en-US", "de", "en-GB"):
        with speaking(language):
            said[language] = fill("kitchen-pieces.html", kind="site")
    assert "Start timer" in said["en-US"] == said["en-GB"]
    assert "Wecker stellen" in said["de"]


def test_a_number_keeps_to_its_unit_in_either_language() -> None:
    with speaking("en-US"):
        english = [tied("1 tbsp + 2 days"), tied("1 EL + 2 Tage"), unit_pattern()]
    with speaking("de"):
        german = [tied("1 EL + ¾ Tasse + 2 Tage"), figure("1 TL"), unit_pattern()]
    assert english[:2] == ["1\u00a0tbsp + 2\u00a0days", "1 EL + 2 Tage"]
    assert german[:2] == ["1\u00a0EL + ¾\u00a0Tasse + 2\u00a0Tage", '1<span class="unit">\u00a0TL</span>']
    # The page's script finds its units by the same pattern.
    assert ("tbsp" in english[2], "tbsp" in german[2]) == (True, False)
