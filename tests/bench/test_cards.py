"""All cards of fifty recipes in one process and in two: the work of the busier of the two against the whole.

By the processor's clock, which other work on the machine does not stretch; the wall's clock is printed beside it.
"""

import os
import time
from collections import defaultdict
from datetime import date
from pathlib import Path

import pytest

from generator.build.works import processes
from generator.pipeline import check_folder
from generator.present.views import RecipeView
from generator.render.cards.render import render_cards
from tests.bench.kitchen import lay

RECIPES, MOST = 50, 0.6


def cards_of(view: RecipeView) -> tuple[int, float, int]:
    """Who made them, in what time of the processor, and how many bytes they are."""
    begun = time.process_time()
    size = sum(len(each.content) for each in render_cards(view))
    return os.getpid(), time.process_time() - begun, size


@pytest.mark.bench
def test_the_cards_of_fifty_recipes_in_two_processes(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = lay(tmp_path / "content", recipes=RECIPES)
    views = [*check_folder(folder, day=date(2026, 11, 25)).views.values()]
    # Both begin with the faces and the style sheets read, as the workers of a make do.
    cards_of(views[0])
    begun = time.perf_counter()
    alone = [cards_of(view) for view in views]
    clock_alone, begun = time.perf_counter() - begun, time.perf_counter()
    with processes(2) as workers:
        shared = [*workers.map(cards_of, views)]
    clock_shared = time.perf_counter() - begun
    assert [size for _, _, size in shared] == [size for _, _, size in alone]
    serial = sum(seconds for _, seconds, _ in alone)
    busy: dict[int, float] = defaultdict(float)
    for who, seconds, _ in shared:
        busy[who] += seconds
    with capsys.disabled():
        load = " ".join(f"{each:.1f}" for each in os.getloadavg())
        print(f"\n\nAll cards of {len(views)} recipes, load {load}; at most {MOST}")
        print(f"processor: busier of two {max(busy.values()):.1f} s : alone {serial:.1f} s", end=" = ")
        print(f"{max(busy.values()) / serial:.2f}; both together {sum(busy.values()):.1f} s")
        print(f"clock: {clock_shared:.1f} s : {clock_alone:.1f} s = {clock_shared / clock_alone:.2f}")
