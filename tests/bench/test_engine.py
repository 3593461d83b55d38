"""How long a make takes, beside the bare libraries on the same texts; `make bench` prints the table.

TINLEAF_BENCH says how many recipes (100 and 1000 where it says nothing). Everything lies on a memory disk where there
is one. Ratios are of processor time, which other work on the machine changes least; the time that passed stands
beside them, and the load. No number here is asserted: ratios of one run are for people to read.
"""

import json
import os
import resource
import shutil
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from typing import Any

import pytest

from tests.bench.kitchen import lay
from tests.bench.whole import DAY

pytestmark = pytest.mark.bench

SIZES = tuple(int(each) for each in os.environ.get("TINLEAF_BENCH", "100 1000").split())
RUNS = 3
ROOT = Path(__file__).parents[2]
MEMORY = Path("/dev/shm")


@pytest.fixture
def folder() -> Iterator[Path]:
    with TemporaryDirectory(dir=MEMORY if os.access(MEMORY, os.W_OK) else None) as name:
        yield Path(name)


def measured(
    what: str, folder: Path, *, jobs: int = 1, output: str = "output", cache: Path | None = None
) -> dict[str, Any]:
    """One run in a process of its own; `whole` is the time with the start of Python, `cpu` that of the processors."""
    (folder / output).mkdir(exist_ok=True)
    words = [what, str(folder / "content"), str(folder / output), str(jobs)]
    own = {
        "XDG_CACHE_HOME": str(folder / "cache"),
        "TINLEAF_CACHE_BYTES": "9000000000",
        "PYTHONPATH": str(ROOT),
    }
    before, start = _processors(), time.perf_counter()
    done = subprocess.run(
        [sys.executable, "-m", "tests.bench.whole", *words],
        env={**os.environ, **own},
        capture_output=True,
        text=True,
        cwd=ROOT,
    )
    assert done.returncode == 0, done.stderr
    found: dict[str, Any] = json.loads(done.stdout)
    found["whole"] = time.perf_counter() - start
    found["cpu"] = _processors() - before
    return found


def _processors() -> float:
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def middle(work: Callable[[], dict[str, Any]], runs: int = RUNS) -> dict[str, Any]:
    found = sorted((work() for _ in range(runs)), key=lambda each: each["seconds"])
    return {
        **found[len(found) // 2],
        **{key: median(each[key] for each in found) for key in ("whole", "cpu")},
    }


def ready_values(folder: Path) -> None:
    """The page of one bake as the template gets it, for the yardstick."""
    from dataclasses import replace
    from functools import partial

    from generator.build.packing import packed
    from generator.pipeline import check_folder
    from generator.present.data import recipe_data
    from generator.render.description.render import render_description
    from generator.render.recipe_json import _plain
    from generator.render.site.frame import frame_of
    from generator.render.site.pages import recipe_page
    from generator.render.structured_data.render import structured_data

    checked = check_folder(folder / "content", day=DAY, only=frozenset({"bake-00001"}))
    view = checked.site.recipes[0]
    page = recipe_page(view, structured=partial(structured_data, site=checked.site))
    data = _plain(recipe_data(checked.setting.book[view.name], checked.setting))
    described = render_description(replace(view, sizes=None), limit=5000).text.encode()
    values = {"page": page, "frame": frame_of(checked.site), "data": data, "described": described}
    (folder / "values.pickle").write_bytes(packed(values))


def _compared(ours: float, bare: float) -> str:
    return f"{ours:8.2f} s{bare:9.2f} s{ours / bare:7.2f} x"


@pytest.mark.parametrize("size", SIZES)
def test_make(size: int, folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lay(folder / "content", recipes=size)
    ready_values(folder)
    rows: list[tuple[str, dict[str, Any], dict[str, Any], str]] = []

    def row(what: str, ours: dict[str, Any], bare: dict[str, Any], remark: str = "") -> None:
        rows.append((what, ours, bare, remark))

    few = RUNS if size < 300 else 1
    yard = middle(lambda: measured("bare", folder, output="yard"), few)

    def cold(jobs: int) -> dict[str, Any]:
        subprocess.run(
            ["rm", "-rf", str(folder / "cache" / "tinleaf" / "made"), str(folder / "output")], check=True
        )
        return measured("ours", folder, jobs=jobs)

    lay(folder / "one" / "content", recipes=1)
    measured("ours", folder / "one", cache=folder / "cache")  # cuts the fonts, once for all
    two = middle(lambda: cold(2), few)
    one = middle(lambda: cold(1), few)
    memory = f"peak {one['peak_mb']:.0f} MB against {yard['peak_mb']:.0f} MB"
    row("cold, one process, against the yardstick", one, yard, memory)
    row("cold, two workers, against one", two, one, "by the clock is what counts here")
    scan, same = middle(lambda: measured("scan", folder)), middle(lambda: measured("ours", folder))
    assert same["told"] == "same"
    row("no-op, against a scan", same, scan)
    count = iter(range(9))

    def correct() -> dict[str, Any]:
        file = folder / "content" / "recipes" / "bake-00007.md"
        text = file.read_text(encoding="utf-8")
        file.write_text(text.replace("Number 7", f"Number 7, {next(count)}: 7", 1), encoding="utf-8")
        return measured("ours", folder)

    corrected = middle(correct)

    def another_template() -> dict[str, Any]:
        """A copy of the themes with one more word in the page of a bake, which the program is told to use."""
        text = (folder / "themes" / "docket" / "site" / "recipe.html").read_text(encoding="utf-8")
        changed = text.replace("<h1", f"<h1 data-number='{next(count)}'", 1)
        (folder / "themes" / "docket" / "site" / "recipe.html").write_text(changed, encoding="utf-8")
        return measured("ours", folder)

    shutil.copytree(ROOT / "themes", folder / "themes")
    measured("ours", folder)
    template = middle(another_template)
    row("one template changed, against cold", template, one)
    row("one recipe corrected, against the no-op", corrected, same)
    with capsys.disabled():
        load = " ".join(f"{each:.1f}" for each in os.getloadavg())
        print(
            f"\n\n{size} recipes, load {load}{'':<20}{'ours':>9}{'bare':>11}{'ratio':>9}{'by the clock':>26}"
        )
        for what, ours, bare, remark in rows:
            cpu, clock = (_compared(ours[key], bare[key]) for key in ("cpu", "whole"))
            print(f"{what:<46}{cpu}   {clock}  {remark}")
        print(f"cold: {one['told']}\ncorrected: {corrected['told']}")


def test_help(capsys: pytest.CaptureFixture[str]) -> None:
    bare = "import argparse; p = argparse.ArgumentParser(); p.add_argument('--x'); p.parse_args(['--help'])"
    main = "import sys; sys.argv = ['tinleaf', '--help']; from generator.cli.main import run; run()"

    def seconds(program: str) -> float:
        start = _processors()
        subprocess.run([sys.executable, "-c", program], capture_output=True, check=True, cwd=ROOT)
        return _processors() - start

    ours, yard = (median(seconds(each) for _ in range(7)) for each in (main, bare))
    with capsys.disabled():
        print(
            f"\n{'tinleaf --help, against a bare argparse program':<48}{ours:8.2f} s{yard:9.2f} s{ours / yard:7.2f} x"
        )
