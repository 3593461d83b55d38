"""Views of recipes from tiny to absurd, made by number: the same number is the same view on every machine."""

import random
from dataclasses import replace

from generator.present.views import ChapterView, Fact, LineView, PartView, PhotoView, RecipeView, VideoView
from tests.render.paper.sample import TYPICAL, line

LONGEST = "Hefeteigzopfflechtanleitungsbeispielmehlmischungsvorratsdose"
_WORDS = (
    "rye",
    "of",
    "the",
    "Miller",
    "crumb",
    "fold",
    "with",
    "Überraschung",
    "slowly",
    "a",
    "crème",
    LONGEST,
)
# Names in other letters and signs, which stand in every tenth.
_FAR_WORDS = (
    *_WORDS,
    "חלה מתוקה",
    "خبز بالسمسم",
    "لا",
    "\U0001f9c1",
    "\U0001f469\U0001f3fd\u200d\U0001f373",
    "\u2618\ufe0f",
)
_FIGURES = (
    "1 g",
    "12 345 g",
    "2⅓ cups",
    "1\u202f000 g",
    "½ cup plus 1 tablespoon and ¾ teaspoon",
    "",
    "a pinch",
)
_STAMPS = ("0:00", "1:25", "59:59", "1:02:03")


class _Dice(random.Random):
    words: tuple[str, ...] = _WORDS


def odd(number: int) -> RecipeView:
    """Every tenth holds all there is at once; the last of ten hardly anything."""
    dice = _Dice(number)
    dice.words = _FAR_WORDS if number % 10 == 7 else _WORDS
    size = 0 if number % 10 == 9 else 100 if number % 10 == 0 else dice.choice((1, 2, 5, 15, 40))
    return replace(
        TYPICAL,
        name=f"odd-{number}",
        title=_words(dice, max(1, min(size, 25))),
        lead=_words(dice, size),
        maker=_words(dice, max(1, min(size, 12))),
        makes=_words(dice, dice.choice((0, 1, 3, size))),
        tin=_words(dice, dice.choice((0, 4, size))),
        language=dice.choice(("en-US", "de-DE", "xx")),
        facts=tuple(
            Fact(label=_words(dice, dice.choice((1, 2, 6))), words=_figures(dice, dice.choice((1, 2, 9))))
            for _ in range(dice.choice((0, 3, 12)))
        ),
        parts=_parts(dice, min(80, max(1, size))),
        photo=_photo(dice) if number % 2 else None,
        videos=(_film(dice, dice.choice((3, 7, 12))),) if number % 3 == 0 else (),
    )


def _words(dice: _Dice, count: int) -> str:
    return " ".join(dice.choice(dice.words) for _ in range(count))


def _figures(dice: _Dice, count: int) -> str:
    return " to ".join(dice.choice(_FIGURES) for _ in range(count)).strip()


def _parts(dice: _Dice, count: int) -> tuple[PartView, ...]:
    lines = tuple(_line(dice) for _ in range(count))
    cut = max(1, dice.choice((count, count // 3)))
    return tuple(
        PartView(
            name=f"part {at}",
            title=_words(dice, dice.choice((0, 1, 9))),
            remark="",
            weight=_figures(dice, 1),
            lines=lines[at : at + cut],
        )
        for at in range(0, count, cut)
    )


def _line(dice: _Dice) -> LineView:
    return line(
        _words(dice, dice.choice((1, 1, 2, 30))),
        _figures(dice, dice.choice((1, 1, 3))),
        _figures(dice, dice.choice((0, 1, 4))),
        preparation=_words(dice, dice.choice((0, 0, 2, 40))),
        choices=tuple(_words(dice, 5) for _ in range(dice.choice((0, 0, 3)))),
        optional=dice.random() < 0.1,
    )


def _photo(dice: _Dice) -> PhotoView:
    width, height = dice.choice(((1600, 1200), (40, 2000), (1600, 30), (1, 1)))
    focus = (dice.randint(0, 100), dice.randint(0, 100))
    return PhotoView(
        path="media/a.jpg", source="media/a.jpg", text="", width=width, height=height, url="", focus=focus
    )


def _film(dice: _Dice, count: int) -> VideoView:
    ends = [*range(75, 75 * count, 75), dice.choice((None, 75 * count, 50_000))]
    chapters = tuple(
        ChapterView(
            stamp=dice.choice(_STAMPS),
            seconds=75 * at,
            end_seconds=end,
            title=_words(dice, dice.choice((1, 3, 10, 60))),
            url="",
        )
        for at, end in enumerate(ends)
    )
    return VideoView(
        url="",
        name="",
        published="",
        day="",
        duration="",
        length=dice.choice(("", "18:40", "12:00:00")),
        chapters=chapters,
        film_remarks=(),
    )
