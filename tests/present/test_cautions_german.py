"""What a German kitchen writes raises the same cautions: no eater is told less because a word is not English."""

import pytest

from generator.formula.altitude import kind_of
from generator.formula.yeast import yeast_kind
from generator.present.cautions import raised_by
from tests.formula.kitchen import formula_of, recipe, shelf

PANTRY = """\
Weizenmehl:
  is: bread flour
Vollmilch:
  is: whole milk
Eigelb:
  is: egg yolk
Zucker:
  is: granulated sugar
Wasser:
  is: water
Olivenöl:
  is: olive oil
Knoblauch:
  is: garlic
Orangenschale:
  is: orange zest
Walnüsse:
  is: walnuts
Trockenhefe:
  is: instant yeast
Backpulver:
  is: baking powder
Brezellauge:
  label: Natriumhydroxid
  contains: []
Streusüße:
  label: Xylit
  contains: []
Müsliriegel:
  label: Hafer, Waldhonig
  contains: [oats]
Isomalt:
  label: Isomalt
  contains: []
Aufstrich:
  label: Gelée royale
  contains: []
"""
DOUGH = "- 500 g Weizenmehl\n- 300 g Wasser"
BAKED = "1. {Weizenmehl} und {Wasser} verrühren. {bake 30 min} bei {oven 230 C}."
FILLED = "Teig:\n  - 200 g Weizenmehl\nFüllung:\n  - 3 Eigelb\n  - 300 g Vollmilch"
POURED = "1. {Füllung} auf {Weizenmehl} gießen. {bake 30 min} bei {oven 180 C}."


def raised(formula: str, method: str = "", *, title: str = "A test bake") -> frozenset[str]:
    text = recipe(formula, method).replace("A test bake", title)
    return raised_by(formula_of(text, on=shelf(PANTRY)), book={})


@pytest.mark.parametrize(
    ("caution", "formula", "method", "title"),
    [
        ("lye", f"{DOUGH}\n- 40 g Brezellauge", f"{BAKED} {{Brezellauge}}.", "Brezeln"),
        ("lye", DOUGH, f"{BAKED} In Natronlauge tauchen.", "Brezeln"),
        ("xylitol", "- 40 g Streusüße", "", "Süßes"),
        ("honey", "- 40 g Müsliriegel", "", "Süßes"),
        ("sugar alcohols", "- 40 g Isomalt", "", "Süßes"),
        ("royal jelly", "- 40 g Aufstrich", "", "Süßes"),
        ("choking", "- 50 g Walnüsse, gehackt", "", "Süßes"),
        (
            "hot sugar",
            "- 200 g Zucker\n- 50 g Wasser",
            "1. {Zucker} und {Wasser} auf {118 C} kochen.",
            "Karamell",
        ),
        (
            "hot oil",
            DOUGH,
            "1. {Weizenmehl} und {Wasser}. In Rapsöl bei {175 C} frittieren, {cook 3 min}.",
            "Krapfen",
        ),
        ("chilled", DOUGH, BAKED, "Käsekuchen"),
        ("chilled", DOUGH, BAKED, "Schwarze Sahnetorte"),
        ("egg filling", FILLED, POURED, "Puddingschnecken"),
        ("candied peel", "- 200 g Orangenschale\n- 200 g Zucker", "", "Kandierte Orangenschale"),
        ("garlic in oil", "- 100 g Olivenöl\n- 20 g Knoblauch", "", "Knoblauchöl"),
    ],
)
def test_german_words_are_heard(caution: str, formula: str, method: str, title: str) -> None:
    assert caution in raised(formula, method, title=title)


def test_words_that_only_look_so_raise_nothing() -> None:
    assert raised(DOUGH, BAKED, title="Honigmelonenbrot") == {"raw dough"}
    assert "choking" not in raised("- 50 g Walnüsse, gemahlen")
    assert "hot oil" not in raised(
        "- 200 g Zucker\n- 50 g Wasser", "1. {Zucker} und {Wasser} auf {118 C} kochen."
    )


def test_a_name_of_the_makers_own_is_known_for_what_it_is() -> None:
    lines = formula_of(recipe("- 6 g Trockenhefe\n- 8 g Backpulver"), on=shelf(PANTRY)).lines
    assert [yeast_kind(each) for each in lines] == ["instant", None]
    assert [kind_of(each) for each in lines] == [None, "baking powder"]
