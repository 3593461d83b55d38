"""What is right is never called wrong: other kitchens, other settings, odd recipes, recipes drawn by lot."""

from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import HealthCheck, given, settings

from generator.diagnostics.diagnostic import has_errors
from generator.pipeline import CheckResult, check_folder, make_folder
from generator.proof.folder import prove_folder
from generator.render.description.render import render_description
from tests.agreement.making import DAY as LOT_DAY
from tests.agreement.making import lay_folder
from tests.agreement.writing import Drawn, drawn_recipes
from tests.demo import DAY as DEMO_DAY
from tests.demo import ROOT, checked
from tests.proof.building import DAY, Change, Files, card, made, pages, proved, told, understood

KITCHENS = Path(__file__).parents[1] / "golden" / "kitchens"


def quick(result: CheckResult) -> Files:
    """All that is text."""
    limit = result.setting.settings.description_limit
    desk: dict[str, bytes] = {}
    for name, view in result.views.items():
        desk[f"desk/{name}/description.txt"] = render_description(view, limit=limit).text.encode()
    return {**pages(result), **desk}


@pytest.mark.parametrize("name", ["dial", "metric"])
def test_the_kitchens_worked_out_by_hand(name: str) -> None:
    result = check_folder(KITCHENS / name / "content", day=DAY)
    assert told(proved(quick(result), result)) == ""


def test_the_pages_of_the_demo() -> None:
    assert told(proved(quick(checked()), checked())) == ""


SETTINGS = {
    "the EU": "region: EU\nlanguage: en-IE\npaper: a4\nfirst: weight\noven_c: dial",
    "the UK, volume first": "region: UK\nlanguage: en-GB\nfirst: volume\ncup: metric",
    "Canada": "region: CA\nlanguage: en-CA\ncup: imperial\nflour_cup: dipped",
    "Australia": "region: ANZ\nlanguage: en-AU\ncup: australian\ncups_beside: [us, metric]\negg: small",
    "a short description": "description_limit: 900",
    "a kitchen that handles much": "kitchen_handles: [peanut, sesame, fish, soy]",
}


@pytest.mark.parametrize("name", ["the EU", "the UK, volume first", "Australia", "a short description"])
def test_other_settings(name: str) -> None:
    result = understood(Change(path="site.yaml", old="maker:", new=f"{SETTINGS[name]}\nmaker:"))
    assert told(proved(quick(result), result)) == ""


HOSTILE = """\
---
title: "Fritz & Söhne’s <b>“5 g”</b> rolls – 100 % rye?"
lead: "Half of 400 g is 200 g; 3 < 5, and 12 h > 2 h."
published: 2026-01-01
kinds: ["rolls & more", "5 min bakes"]
makes: 8-10 rolls
portions: 4 to 5 people
tin: loaf 23 x 13 x 7 cm
formula:
  sponge:
    - 100-120 g rye flour
    - 120 g water
    - a pinch of instant yeast
  dough:
    - 300 g bread flour
    - {line: 1 1/2-2 tsp table salt, note: "5 g is the least; see note 2"}
    - {line: 12 g honey, or: [12 g maple syrup, 1 tbsp granulated sugar]}
    - {line: 30 g walnuts, optional: yes, or: [30 g pecans]}
    - caraway seeds, to taste
    - rye flour, for dusting
videos:
  - url: https://video.example/w/5g?x=430
    chapters: {0:00: Start, 4:15: In the bowl, 12:00: 2 h later}
links:
  - {title: "A 5 kg scale (1 g steps)", url: "https://shop.example/5kg", paid: no}
credits:
  - {what: "The 1 h rest, 20 °C", who: "A “12 min” book"}
keeps: 2-3 days at 18 °C; 1 month frozen
corrections:
  - {on: 2026-02-02, change: "dough/honey 10 g -> 12 g", why: "At 25 °C pale; 10 g <- less.", film: 10 g at 4:15}
  - {on: 2026-02-03, change: "Say when the 30 min are over", why: It was "forgotten".}
---
Take **2 bowls** of 3 l. See [the 450 g loaf](https://site.example/450g) first.

| day | grams |
|---|---|
| 1 | 250 g |
| 2 | 125 g |

## Method
1. Mix {sponge/rye flour: half}, the {sponge/water}, the {sponge/instant yeast}, *then* wait
   [as long as {rest 8-12 h} says](https://x.example/a).
2. Add {sponge/rye flour: rest}, the {bread flour}, **{table salt}**, {honey}, {walnuts} and {caraway seeds}.
   {knead 12 min}, \\{so\\}, at {24 C}. If it is dry, {2 tsp of water}. Dust with {dough/rye flour}.
3. Roll {1/2 in} thick, {23 cm} wide. {rise 45 s}, then {rise 1 h 10 min - 1 h 30 min}.

Caution: 2 % of all ovens burn; stay within 3 m.

4. {bake 20-25 min} at {oven 220 C fan}, {bake 5 min} at {oven gas 4}, to {core 205-208 F};
   cool at {-18 C}, {chill 2 days}.

## Notes
1. Less than 5 g of salt is bland. ½ tsp is 3 g.
2. At 2000 m: 5 min more.

```
400 g | 3 cups
```
"""


def hostile() -> CheckResult:
    result = understood()
    root = Path(str(result.media.__getattribute__("root")))
    (root / "recipes" / "fritz.md").write_text(HOSTILE, encoding="utf-8")
    again = check_folder(root, day=DAY)
    assert not has_errors(again.diagnostics), [each.message for each in again.diagnostics]
    return again


def test_a_recipe_full_of_figures_and_marks() -> None:
    result = hostile()
    assert told(proved({**quick(result), **card(result, "fritz")}, result)) == ""


def test_every_figure_of_such_a_recipe_is_seen() -> None:
    """It is no use to be silent about everything."""
    result = hostile()
    path = "site/recipes/fritz/index.html"
    text = quick(result)[path].decode()
    for figure in ("250\u00a0g", "450\u00a0g", "2000\u00a0m:", "205–208\u00a0°F", "−18\u00a0°C", "3\u00a0m."):
        plain = figure if figure in text else figure.replace("\u00a0", " ")
        assert plain in text, figure
        number = plain.lstrip("−")[0]
        other = text.replace(plain, plain.replace(number, str((int(number) + 1) % 10), 1))
        assert proved({path: other.encode()}, result), figure


lots = settings(
    derandomize=True,
    deadline=None,
    database=None,
    print_blob=False,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)


def drawn_findings(drawn: Drawn, *, printed: bool) -> str:
    with TemporaryDirectory() as folder:
        result = check_folder(lay_folder(Path(folder) / "content", drawn), day=LOT_DAY)
        assert not has_errors(result.diagnostics)
        files = made(result) if printed else quick(result)
        return told(proved(files, result))


@settings(lots, max_examples=5)
@given(drawn_recipes())
def test_recipes_drawn_by_lot(drawn: Drawn) -> None:
    assert drawn_findings(drawn, printed=False) == ""


@pytest.mark.long
@settings(lots, max_examples=300)
@given(drawn_recipes())
def test_many_recipes_drawn_by_lot(drawn: Drawn) -> None:
    assert drawn_findings(drawn, printed=False) == ""


@pytest.mark.long
@settings(lots, max_examples=25)
@given(drawn_recipes())
def test_all_papers_of_recipes_drawn_by_lot(drawn: Drawn) -> None:
    assert drawn_findings(drawn, printed=True) == ""


@pytest.fixture(scope="module")
def outputs(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("outputs")


@pytest.mark.long
def test_the_demo_as_a_whole(outputs: Path) -> None:
    """Every file of it explained and agreed, none missing."""
    result = make_folder(ROOT / "content", output=outputs / "demo", day=DEMO_DAY, jobs=2)
    assert result.unproven == ()
    assert told(prove_folder(outputs / "demo", checked().expected).diagnostics) == ""


@pytest.mark.long
@pytest.mark.parametrize("words", SETTINGS.values(), ids=SETTINGS)
def test_all_papers_in_other_settings(words: str) -> None:
    result = understood(Change(path="site.yaml", old="maker:", new=f"{words}\nmaker:"))
    assert told(proved(made(result), result)) == ""


@pytest.mark.long
@pytest.mark.parametrize("name", ["dial", "dipped", "metric", "spooned"])
def test_all_papers_of_the_kitchens(name: str) -> None:
    result = check_folder(KITCHENS / name / "content", day=DAY)
    assert told(proved(made(result), result)) == ""


@pytest.mark.long
def test_all_papers_of_a_recipe_full_of_figures() -> None:
    result = hostile()
    assert told(proved(made(result), result)) == ""
