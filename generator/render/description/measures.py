"""Which cups and spoons are meant, and what the oven is on other dials, a line each."""

from generator.present.views import RecipeView
from generator.render.description.plain import plain


def measures(view: RecipeView) -> str:
    """`Measured with: cup and spoons US: 1 cup 237 ml, …; eggs large, …`: a cup is not the same everywhere."""
    told = "; ".join(
        plain(f"{fact.label[:1].lower()}{fact.label[1:]} {fact.words}") for fact in view.measured
    )
    return f"Measured with: {told}" if told else ""


def ovens(view: RecipeView) -> str:
    """`Other ovens: 350 °F is 325 °F, 155 °C with a fan, gas mark 4`."""
    told = []
    for oven in view.ovens:
        gas = f", gas mark {oven.gas}" if oven.gas else ""
        same = oven.written in oven.fan
        words = f"{oven.plain} without a fan" if same else f"{oven.fan} with a fan"
        told.append(plain(f"{oven.written} is {words}{gas}"))
    return f"Other ovens: {'; '.join(told)}" if told else ""
