"""The honey oat braid and its peel, built once in a process: what the proof is tried on."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache, partial
from pathlib import Path
from shutil import copytree
from tempfile import mkdtemp

from PIL import Image

from generator.diagnostics.diagnostic import Diagnostics, has_errors
from generator.pipeline import CheckResult, check_folder
from generator.proof.prove import prove
from generator.render.cards.render import CARD_SIZES, lay_out_card
from generator.render.feeds.render import render_feeds
from generator.render.paper import to_pdf
from generator.render.recipe_json import render_recipe_json
from generator.render.site.frame import frame_of
from generator.render.site.page import page_product
from generator.render.site.pages import site_pages
from generator.render.sitemap import render_sitemap
from generator.render.structured_data.render import structured_data
from tests.tasks import SITE, made_by

SAMPLE = Path(__file__).parents[1] / "present" / "sample"
DAY = date(2026, 10, 1)
BRAID = "honey-oat-braid"

DRAWN = ("picture to share", "tall picture", "chapter cards")
DESK = ("descriptions", "tags", "bench sheet", "overlay", "formula sheet", *DRAWN)
"""Tasks of what lies on the desk, and of the formula sheet."""

Files = Mapping[str, bytes]


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """A passage of a file of the content, and what it becomes."""

    path: str
    old: str
    new: str


def lay(root: Path, changes: Iterable[Change] = ()) -> Path:
    """The sample as a content folder, with its photograph, and with passages changed."""
    copytree(SAMPLE, root)
    (root / "media").mkdir()
    Image.new("RGB", (640, 480), (150, 110, 70)).save(root / "media" / "honey-oat-braid.jpg")
    for change in changes:
        path = root / change.path
        text = path.read_text(encoding="utf-8")
        assert change.old in text, change
        path.write_text(text.replace(change.old, change.new), encoding="utf-8")
    return root


def understood(*changes: Change, day: date = DAY) -> CheckResult:
    result = check_folder(lay(Path(mkdtemp(prefix="proof-")) / "content", changes), day=day)
    assert not has_errors(result.diagnostics), result.diagnostics
    return result


@cache
def sample() -> CheckResult:
    return understood()


def made(result: CheckResult, *titles: str) -> Files:
    """The products of the tasks whose titles end so; of all tasks where none is named."""
    return made_by(result, *titles)


def pages(result: CheckResult) -> Files:
    """Pages, feeds, map and numbers, without the pictures and fonts that are no text."""
    site = result.site
    frame = frame_of(site)
    shown = site_pages(site, structured=partial(structured_data, site=site))
    products = (
        *(page_product(each, frame) for each in shown),
        *render_feeds(site),
        *render_sitemap(site),
        *(render_recipe_json(view.name, result.expected.data[view.name]) for view in site.recipes),
    )
    return {each.path: each.content for each in products}


@cache
def texts() -> Files:
    """The site and the numbers of the sample."""
    return made(sample(), *SITE, "style and fonts", ".jpg", "numbers")


def card(result: CheckResult, name: str = BRAID) -> Files:
    """The smallest card of a recipe."""
    view = result.views[name]
    (size,) = (each for each in CARD_SIZES if each.name == "a6")
    document = lay_out_card(view, size, code=None)
    return {f"site/recipes/{name}/card-a6.pdf": to_pdf(document)}


@cache
def papers() -> Files:
    """What is printed or drawn of the braid, one card of the four, and its description."""
    return {**made(sample(), *(f"{BRAID}: {each}" for each in DESK)), **card(sample())}


def edited(files: Files, path: str, old: str, new: str) -> Files:
    """One file with a passage changed at its first place; quotes that a page may do without are optional."""
    text = files[path].decode("utf-8")
    pattern = re.sub(r'="([^"\s]*)"', r'="?\1"?', re.sub(r"([.+*?()\[\]{}|^$])", r"\\\1", old))
    pattern = pattern.replace('": ', '": ?').replace("\n  ", r"\s*")
    found = re.search(pattern, text)
    assert found, f"{old!r} is not in {path}"
    return {path: (text[: found.start()] + new + text[found.end() :]).encode("utf-8")}


def proved(files: Files, result: CheckResult | None = None) -> Diagnostics:
    return prove(files, (result or sample()).expected)


def told(found: Diagnostics) -> str:
    """All findings as a text, for a look into it."""
    return "\n".join(f"{each.span.path}:{each.span.line}: [{each.code}] {each.message}" for each in found)
