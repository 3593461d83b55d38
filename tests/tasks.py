"""What the tasks of a content folder give, without a cache and without an output folder."""

from collections.abc import Mapping
from types import MappingProxyType

from generator.build.cache import Cache
from generator.build.task import Task
from generator.build.works import value_of
from generator.publication.checked import CheckResult
from generator.publication.outputs import tasks_of
from generator.publication.understanding import publication_of

NOTHING = Cache(root=None)
SITE = (": page", "the lists", "the feeds", "the search", "the sitemap")


_KNOWN: list[tuple[CheckResult, tuple[Task, ...]]] = []
"""The tasks of the last folders that were asked for: wording all their sizes takes longer than most tests."""


def _tasks(result: CheckResult) -> tuple[Task, ...]:
    for known, tasks in _KNOWN:
        if known is result:
            return tasks
    _KNOWN.append((result, tasks_of(publication_of(result, NOTHING))))
    del _KNOWN[:-3]
    return _KNOWN[-1][1]


def made_by(result: CheckResult, *titles: str) -> Mapping[str, bytes]:
    """The products of the tasks whose titles end so, by path; of all tasks where none is named."""
    wanted = (task for task in _tasks(result) if not titles or task.title.endswith(titles))
    return MappingProxyType(
        {
            each.path: each.content
            for task in wanted
            for each in task.work(*(value_of(given, NOTHING) for given in task.inputs))
        }
    )
