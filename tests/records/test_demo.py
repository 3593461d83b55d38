"""The demo has a ledger of its own: it agrees with its recipes, and one card is stale."""

from datetime import date
from pathlib import Path

from generator.history.changes import Harm
from generator.pipeline import check_folder
from generator.records.due import stale_copies

CONTENT = Path(__file__).parents[2] / "content"


def test_the_demo_tells_a_whole_story() -> None:
    result = check_folder(CONTENT, day=date(2026, 11, 25))
    assert [each.message for each in result.diagnostics if each.code.startswith("H")] == []
    stale = {(each.copy.place, each.copy.to): each for each in stale_copies(result)}
    card = stale["card", "Odile next door"]
    assert (card.copy.recipe, card.copy.revision, card.now) == ("cardamom-orange-braid", 1, 2)
    assert (card.harm, card.why) == (Harm.AMOUNTS, ("whole milk 230 g → 205 g",))
