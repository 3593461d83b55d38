"""How long the demo takes, beside the bare libraries doing the same bytes without us.

Ratios of one run on one machine; no number here is asserted. `make bench` prints the table.
"""

import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from statistics import median

import pytest
import yaml
from markdown_it import MarkdownIt
from weasyprint import HTML

from generator.pipeline import CheckResult, check_folder
from generator.present.views import RecipeView
from generator.publication.outputs import MediaFolder
from generator.render import paper
from generator.render.cards import render as cards
from generator.render.photographs import picture_set
from generator.render.site.publication import render_site
from generator.source.read import read_folder

CONTENT = Path(__file__).parents[2] / "content"
DAY = date(2026, 11, 25)
RUNS = 3

pytestmark = pytest.mark.bench


def _seconds(work: Callable[[], object], clock: Callable[[], float] = time.perf_counter) -> float:
    """The middle of three runs, after one that warms caches. By the processor's clock for what works in one thread:
    other work on the machine does not count."""
    work()
    taken = []
    for _ in range(RUNS):
        start = clock()
        work()
        taken.append(clock() - start)
    return median(taken)


@pytest.fixture(scope="module")
def demo() -> CheckResult:
    return check_folder(CONTENT, day=DAY)


@pytest.fixture(scope="module")
def view(demo: CheckResult) -> RecipeView:
    return next(each for each in demo.site.recipes if each.name == "cardamom-orange-braid")


@pytest.fixture
def row(capsys: pytest.CaptureFixture[str]) -> Callable[[str, float, float], None]:
    def show(what: str, ours: float, bare: float) -> None:
        with capsys.disabled():
            print(f"\n{what:<44}{ours * 1000:9.1f} ms{bare * 1000:9.1f} ms{ours / bare:7.2f} x", end="")

    return show


Row = Callable[[str, float, float], None]


def test_reading_the_folder(row: Row) -> None:
    """Against the C loader on the same front matter and markdown-it on the same bodies."""
    texts = [path.read_text(encoding="utf-8") for path in sorted(CONTENT.rglob("*.md"))]
    parts = [text.split("---\n", 2)[1:] for text in texts]

    def bare() -> None:
        reader = MarkdownIt("commonmark")
        for front, body in parts:
            yaml.load(front, Loader=yaml.CSafeLoader)
            reader.parse(body)

    row("read every file (YAML and Markdown)", _seconds(lambda: read_folder(CONTENT)), _seconds(bare))


def test_checking_the_folder(row: Row) -> None:
    """The whole of `check` against reading alone: what meaning, labels and wording cost."""
    whole = _seconds(lambda: check_folder(CONTENT, day=DAY).site)
    row("check, all stages, against reading alone", whole, _seconds(lambda: read_folder(CONTENT)))


def test_a_card(row: Row, view: RecipeView, monkeypatch: pytest.MonkeyPatch) -> None:
    """A card's PDF against the bare engine on the same HTML with the same fonts and style sheets."""
    size = cards.CARD_SIZES[0]

    def ours() -> bytes:
        return paper.to_pdf(cards.lay_out_card(view, size, code=None))

    with _seen(monkeypatch) as seen:
        ours()
    html, styles = seen[0]

    def bare() -> bytes:
        sheets = [paper._style("docket", name) for name in ("paper.css", *styles)]
        page = HTML(string=html, url_fetcher=paper._FontsOnly())
        document = page.render(stylesheets=sheets, font_config=paper._font_configuration())
        written: bytes = document.write_pdf(pdf_variant="pdf/ua-1")
        return written

    row("one card, 4 x 6 in", _seconds(ours), _seconds(bare))


@contextmanager
def _seen(monkeypatch: pytest.MonkeyPatch) -> Iterator[list[tuple[str, tuple[str, ...]]]]:
    """What the card gives to the engine."""
    seen: list[tuple[str, tuple[str, ...]]] = []
    lay_out = paper.lay_out

    def watched(html: str, *styles: str, theme: str = "docket") -> object:
        seen.append((html, styles))
        return lay_out(html, *styles, theme=theme)

    with monkeypatch.context() as patch:
        patch.setattr(cards, "lay_out", watched)
        yield seen


def test_a_photograph(row: Row) -> None:
    """A telephone's photograph in five widths and three formats, with its orientation, colours and metadata, against
    Pillow alone: `draft`, one decode, a chain of reductions, the same encoders."""
    from io import BytesIO

    from PIL import Image

    data = _telephone()

    def bare() -> None:
        with Image.open(BytesIO(data)) as opened:
            opened.draft("RGB", (1600, 1200))
            picture = opened.convert("RGB")
        for size in ((1600, 1200), (1080, 810), (900, 675), (720, 540), (600, 450)):
            picture = picture.resize(size, Image.Resampling.LANCZOS)
            picture.save(BytesIO(), "AVIF", quality=66, speed=8, max_threads=1, autotiling=False)
            picture.save(BytesIO(), "WEBP", quality=78, method=2)
            picture.save(BytesIO(), "JPEG", quality=82, optimize=True, progressive=True)

    def ours() -> None:
        for _ in picture_set(data, "media/a.jpg", width=1600, height=1200):
            pass

    row(
        "a photograph in five widths and three formats",
        _seconds(ours, time.process_time),
        _seconds(bare, time.process_time),
    )


def _telephone() -> bytes:
    """A drawing of the demo at 12 million pixels, with a profile and a place, as a telephone would store it."""
    from io import BytesIO

    from PIL import Image, ImageCms

    notes = Image.Exif()
    notes[0x0112] = 3
    notes.get_ifd(0x8825)[2] = (51.0, 2.0, 3.0)
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    file = BytesIO()
    with Image.open(sorted(CONTENT.glob("media/*.jpg"))[0]) as opened:
        large = opened.resize((4000, 3000)).transpose(Image.Transpose.ROTATE_180)
    large.save(file, "JPEG", quality=92, exif=notes, icc_profile=profile)
    return file.getvalue()


def test_drawn_pictures(row: Row, view: RecipeView) -> None:
    """The picture to share with its words, against the same photograph decoded, cut and written without them."""
    from io import BytesIO

    from PIL import Image

    from generator.render.images.posters import render_share

    data = sorted(CONTENT.glob("media/*.jpg"))[0].read_bytes()

    def bare() -> None:
        with Image.open(BytesIO(data)) as opened:
            opened.draft("RGB", (840, 630))
            picture = opened.convert("RGB").resize((840, 630), Image.Resampling.LANCZOS)
        page = Image.new("RGB", (1200, 630))
        page.paste(picture.crop((100, 0, 740, 630)), (560, 0))
        page.save(BytesIO(), "JPEG", quality=86, optimize=True, progressive=True, subsampling=0)

    ours = _seconds(lambda: render_share(view, lambda _: data), time.process_time)
    row("a picture to share", ours, _seconds(bare, time.process_time))


def test_pages(row: Row, demo: CheckResult) -> None:
    """All pages and pictures of the site, against the pictures alone."""
    media = MediaFolder(root=CONTENT)
    whole = _seconds(lambda: list(render_site(demo.site, media=media)))
    pictures = _seconds(lambda: list(render_site(demo.site, media=_no_picture)))
    row("the site with its pictures, against without", whole, pictures)


def _no_picture(path: str) -> bytes:
    raise FileNotFoundError(path)
