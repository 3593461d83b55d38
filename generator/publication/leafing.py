"""The leaves of many recipes, in several processes where they can be forked.

What was understood is too large to be sent to another process; a forked one has it already.
"""

from collections.abc import Iterable
from functools import partial

from generator.build.cache import Cache
from generator.build.works import can_fork, processes
from generator.diagnostics.diagnostic import Diagnostics
from generator.publication.checked import CheckResult
from generator.publication.leaves import Leaf, leaf_of
from generator.publication.losses import lost_in
from generator.wording.speech import speaking

FEWEST = 12
"""Recipes for which it pays to fork another process."""

AT_ONCE = 16

_FORKED: list[tuple[CheckResult, Cache]] = []
"""What the processes forked from this one find in their memory."""

Made = tuple[Leaf, Diagnostics]


def leaves_of(
    names: Iterable[str], checked: CheckResult, cache: Cache, *, jobs: int = 1
) -> tuple[dict[str, Leaf], Diagnostics]:
    """The leaf of each recipe, and what the outputs of them would lose."""
    wanted = tuple(names)
    workers = min(jobs, len(wanted) // FEWEST)
    if workers > 1 and can_fork():
        made = _in_processes(wanted, checked, cache, workers)
    else:
        made = [_made(name, checked, cache) for name in wanted]
    leaves = {name: leaf for name, (leaf, _) in zip(wanted, made, strict=True)}
    return leaves, tuple(each for _, lost in made for each in lost)


def _made(name: str, checked: CheckResult, cache: Cache) -> Made:
    lost = lost_in(checked.setting, {name: checked.views[name]}, checked.texts)
    return leaf_of(name, checked, cache), lost


def _in_processes(names: tuple[str, ...], checked: CheckResult, cache: Cache, workers: int) -> list[Made]:
    # Worded here once instead of in each of them.
    _ = checked.bare_site
    _FORKED.append((checked, cache))
    try:
        with processes(workers) as pool:
            made = partial(_made_in_fork, checked.setting.settings.language)
            return list(pool.map(made, names, chunksize=AT_ONCE))
    finally:
        _FORKED.clear()


def _made_in_fork(language: str, name: str) -> Made:
    checked, cache = _FORKED[0]
    with speaking(language):
        return _made(name, checked, cache)
