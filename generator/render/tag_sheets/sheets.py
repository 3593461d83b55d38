"""Tags for named people or to be filled in by hand: of a size, or of the next larger one that holds every word."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil
from typing import Any

from generator.present.tag_views import Person, TagView
from generator.render.paper import PaperFault, fill, lay_out, pdf_moment, to_pdf
from generator.render.paper_words import runs_html
from generator.render.qr import QrCode, qr_code
from generator.render.rich_text import tied
from generator.render.tag_sheets.letters import Letters, letters_for
from generator.render.tag_sheets.plans import LIST, WHOLE, Plan, Step, moved_words, plans_for
from generator.render.tag_sheets.sizes import CROSS_MM, PAPERS_MM, Grid, Place, Size, from_size_on
from generator.render.theme import DEFAULT
from generator.settings import Paper
from generator.wording.speech import say

_MODULE_MM = 0.38
_STYLES = ("tags.css", "tag-sizes.css")
# A page's own height and not a hair more, or an empty sheet would follow.
_SLACK_MM = 0.05
# On sheets of its own a tag has room for letters that are read easily.
_WHOLE_POINTS = 10
_CODE_SPACE_MM = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class TagSheets:
    """The printed tags. `size` is None where no size holds the words and each tag takes sheets of its own.

    `told` are sentences for the maker: what moved where, what was left out, which larger size was taken.
    """

    content: bytes
    size: Size | None
    plan: Plan | None
    tags: int
    sheets: int
    told: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """What is to be printed; of people none is a sheet of tags to fill in by hand."""

    tag: TagView
    people: tuple[Person, ...]
    paper: Paper
    theme: str

    @property
    def code(self) -> QrCode | None:
        recipe = self.tag.recipe
        return (
            qr_code(recipe.url, title=say("QR code that leads to {address}", address=recipe.url))
            if recipe.on_site
            else None
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Arranged:
    """The laid-out document, not yet printed; the rest as in `TagSheets`."""

    document: Any
    size: Size | None
    plan: Plan | None
    tags: int
    told: tuple[str, ...]


def render_tag_sheets(
    tag: TagView, *, size: str, people: Sequence[Person] = (), paper: Paper, theme: str = DEFAULT
) -> TagSheets:
    """The tags as PDF, in the wished size or the next larger one that holds every word of every tag."""
    made = arrange_tags(tag, size=size, people=people, paper=paper, theme=theme)
    return TagSheets(
        content=to_pdf(made.document),
        size=made.size,
        plan=made.plan,
        tags=made.tags,
        sheets=len(made.document.pages),
        told=made.told,
    )


def arrange_tags(
    tag: TagView, *, size: str, people: Sequence[Person] = (), paper: Paper, theme: str = DEFAULT
) -> Arranged:
    job = Job(tag=tag, people=tuple(people), paper=paper, theme=theme)
    wished, *_ = sizes = from_size_on(size)
    for each in sizes:
        step = _first_fitting(job, each)
        if step is not None:
            return Arranged(
                document=lay_out_sheets(job, each, step),
                size=each,
                plan=step.plan,
                tags=len(job.people) or Grid(size=each, paper=paper).tags,
                told=(*_larger(wished, each), *moved_words(step, each, has_code=job.code is not None)),
            )
    return _whole_sheets(job, wished)


def _larger(wished: Size, taken: Size) -> tuple[str, ...]:
    if wished == taken:
        return ()
    return (
        say(
            "The words do not fit on {wished}; these are {taken}.",
            wished=say(wished.words),
            taken=say(taken.words),
        ),
    )


def _first_fitting(job: Job, size: Size) -> Step | None:
    """The first plan of a size by which every side of every tag keeps to its face, with the code if it fits too."""
    known: dict[tuple[str, tuple[str, ...], bool], bool] = {}

    def fits(plan: Plan, side: str, *, coded: bool) -> bool:
        blocks = plan.front if side == "front" else plan.second
        key = (side, blocks, coded and (side == "second") == bool(plan.second))
        if key not in known:
            known[key] = _fits(job, size, Step(plan=plan, coded=key[2]), side=side)
        return known[key]

    for plan in plans_for(size):
        sides = ("front", "second") if plan.second else ("front",)
        if all(fits(plan, side, coded=False) for side in sides):
            coded = job.code is not None and fits(plan, sides[-1], coded=True)
            return Step(plan=plan, coded=coded)
    return None


def _fits(job: Job, size: Size, step: Step, *, side: str) -> bool:
    """Whether one side of the tag of every person keeps to its face. Second sides are all alike."""
    blocks = step.plan.front if side == "front" else step.plan.second
    if LIST in blocks and len(job.tag.recipe.label.statement) > size.most_letters:
        return False
    people = (tuple(dict.fromkeys(job.people)) if side == "front" else ()) or (Person(),)
    return _pages(job, size, step, side=side, people=people) == len(people)


def _pages(job: Job, size: Size, step: Step, *, side: str, people: tuple[Person, ...]) -> int:
    """How many pages of just the face's size the tags take, each begun on a page of its own."""
    html = fill(
        "tag-face-measure.html",
        theme=job.theme,
        **_words(job, size, step),
        side=side,
        people=people,
        width=size.open_width if side == "second" else size.width,
    )
    return len(lay_out(html, *_STYLES, theme=job.theme).pages)


def lay_out_sheets(job: Job, size: Size, step: Step) -> Any:
    """The sheets, fronts and second sides in turn. Raises PaperFault where one spills over."""
    grid = Grid(size=size, paper=job.paper)
    people = job.people or (Person(),) * grid.tags
    groups = [people[at : at + grid.tags] for at in range(0, len(people), grid.tags)]
    sides = ("front", "second") if step.plan.second else ("front",)
    html = fill(
        "tag-faces.html",
        theme=job.theme,
        **_words(job, size, step),
        sheet=PAPERS_MM[job.paper],
        height=PAPERS_MM[job.paper][1] - _SLACK_MM,
        crossings=[
            (Place(left=each.left - CROSS_MM, top=each.top - CROSS_MM), each) for each in grid.crossings()
        ],
        long=2 * CROSS_MM,
        pages=[
            (side, tuple(zip(_faces(grid, side), group, strict=False))) for group in groups for side in sides
        ],
    )
    document = lay_out(html, *_STYLES, theme=job.theme)
    expected = ceil(len(people) / grid.tags) * len(sides)
    if len(document.pages) != expected:
        raise PaperFault(f"{len(people)} tags took {len(document.pages)} pages and not {expected}")
    return document


def _faces(grid: Grid, side: str) -> Iterator[Place]:
    """Where the faces lie; the front of a folded tag is the right half of it."""
    shift = grid.size.width if grid.size.folded and side == "front" else 0
    for place in grid.places(second=side == "second"):
        yield replace(place, left=place.left + shift)


def _whole_sheets(job: Job, wished: Size) -> Arranged:
    """For words longer than any tag: sheets of their own for each, on which nothing is lost."""
    step = Step(plan=WHOLE, coded=False)
    words = _words(job, None, step)
    letters = words["letters"]
    large = Letters(text=max(letters.text, _WHOLE_POINTS), net=max(letters.net, _WHOLE_POINTS))
    html = fill(
        "tag-whole.html",
        theme=job.theme,
        **{**words, "letters": large},
        people=job.people or (Person(),),
        paper=job.paper,
    )
    told = say(
        "The words do not fit on {wished}, nor on any larger tag: each takes sheets of its own.",
        wished=say(wished.words),
    )
    return Arranged(
        document=lay_out(html, *_STYLES, theme=job.theme),
        size=None,
        plan=None,
        tags=len(job.people) or 1,
        told=(told,),
    )


def _words(job: Job, size: Size | None, step: Step) -> dict[str, Any]:
    view = job.tag.recipe
    face = size.face_cm2 if size else PAPERS_MM[job.paper][0] * PAPERS_MM[job.paper][1] / 100
    letters = letters_for(job.tag.letters, face_cm2=face, grams=job.tag.net.grams)
    code = job.code if step.coded else None
    return {
        "tag": job.tag,
        "view": view,
        "plan": step.plan,
        "size": size,
        "letters": letters,
        "code": code,
        "code_side": code.side_mm(_MODULE_MM) if code else 0,
        "code_room": code.side_mm(_MODULE_MM) + _CODE_SPACE_MM if code else 0,
        "created": pdf_moment(view.published),
        "modified": pdf_moment(job.tag.day or view.updated or view.published),
        "tied": tied,
        "runs_html": runs_html,
    }
