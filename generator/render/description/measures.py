"""Which cups and spoons are meant, and what the oven is on other dials, a line each."""

from generator.present.views import RecipeView
from generator.render.description.plain import plain
from generator.wording.forms import small
from generator.wording.speech import say


def measures(view: RecipeView) -> str:
    """`Measured with: cup and spoons US: 1 cup 237 ml, …; eggs large, …`: a cup is not the same everywhere."""
    told = "; ".join(plain(f"{small(fact.label[:1])}{fact.label[1:]} {fact.words}") for fact in view.measured)
    return say("Measured with: {measures}", measures=told) if told else ""


def ovens(view: RecipeView) -> str:
    """`Other ovens: 350 °F is 325 °F, 155 °C with a fan, gas mark 4`."""
    told = []
    for oven in view.ovens:
        gas = f", {say('gas mark {number}', number=oven.gas)}" if oven.gas else ""
        same = oven.written in oven.fan
        without = say("{degrees} without a fan", degrees=oven.plain)
        words = without if same else say("{degrees} with a fan", degrees=oven.fan)
        told.append(plain(say("{oven} is {words}", oven=oven.written, words=f"{words}{gas}")))
    return say("Other ovens: {ovens}", ovens="; ".join(told)) if told else ""
