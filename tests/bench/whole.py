"""One measurement in a process of its own, so that time and peak memory are that one's alone.

`python -m tests.bench.whole WHAT CONTENT OUTPUT JOBS` prints seconds and the peak in megabytes as JSON.
"""

import json
import resource
import sys
import time
from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path

DAY = date(2026, 11, 25)
PAPER = frozenset({"tags", "bench sheets", "overlays", "formula sheets", "cards"})
PICTURES = frozenset({"pictures", "posters", "chapter cards"})


def ours(content: Path, output: Path, jobs: int) -> object:
    """What the command does, without paper and pictures: the short way first."""
    from generator.build import program
    from generator.build.cache import users_cache
    from generator.publication.memory import same_as_last

    # A bench that edits a template edits a copy.
    if (content.parent / "themes").is_dir():
        trees: tuple[Path, ...] = (program._PACKAGE, content.parent / "themes")
        program._TREES = trees
    if same_as_last(content, output, day=DAY, cache=users_cache()) is not None:
        return "same"
    from generator.publication.making import How
    from generator.render import theme

    if (content.parent / "themes").is_dir():
        homes: tuple[Path, ...] = (content.parent / "themes",)
        vars(theme)["_HOMES"] = homes
    from generator.pipeline import make_folder

    made = make_folder(content, output=output, day=DAY, jobs=jobs, how=How(without=PAPER | PICTURES))
    assert made.report is not None, made.diagnostics[:3]
    return [(row.stage, row.went_in, row.made, round(row.seconds, 2)) for row in made.profile.rows]


def bare(content: Path, output: Path, jobs: int) -> object:
    """The same texts through the bare libraries, and nothing else: YAML by the C loader, markdown-it for the body,
    the page's template with values that were ready, the numbers through json; each file written once."""
    import pickle

    import yaml
    from markdown_it import MarkdownIt

    from generator.render.site.page import page_product

    values = pickle.loads((content.parent / "values.pickle").read_bytes())
    reader = MarkdownIt("commonmark")
    for file in sorted((content / "recipes").iterdir()):
        _, front, body = file.read_text(encoding="utf-8").split("---\n", 2)
        yaml.load(front, Loader=yaml.CSafeLoader)
        reader.parse(body)
        page = page_product(values["page"], values["frame"]).content
        data = json.dumps(values["data"], ensure_ascii=False, indent=1).encode()
        for name, made in (
            ("index.html", page),
            ("recipe.json", data),
            ("description.txt", values["described"]),
        ):
            place = output / file.stem / name
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_bytes(made)
    return len(values)


def scan(content: Path, output: Path, jobs: int) -> object:
    """Every file of both trees looked at, and none read."""
    import os

    def count(folder: str) -> int:
        found = 0
        with os.scandir(folder) as entries:
            for entry in entries:
                found += (
                    count(entry.path) if entry.is_dir(follow_symlinks=False) else entry.stat().st_size >= 0
                )
        return found

    return count(str(content)) + count(str(output))


WORK: Mapping[str, Callable[[Path, Path, int], object]] = {"ours": ours, "bare": bare, "scan": scan}


def main(what: str, content: str, output: str, jobs: str) -> None:
    start = time.perf_counter()
    told = WORK[what](Path(content), Path(output), int(jobs))
    seconds = time.perf_counter() - start
    own, of_workers = (
        resource.getrusage(who).ru_maxrss for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)
    )
    print(json.dumps({"seconds": seconds, "peak_mb": max(own, of_workers) / 1024, "told": told}))


if __name__ == "__main__":
    main(*sys.argv[1:])
