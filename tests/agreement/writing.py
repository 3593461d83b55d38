"""Recipe files nobody wrote: valid ones, drawn from the catalogue, for laws that hold for any recipe."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

from hypothesis import strategies as st

from generator.catalogue.ingredient import Ingredient
from generator.catalogue.load import built_in

Draw = Callable[[st.SearchStrategy[str]], str]

PARTS = ("dough", "filling", "crust")
WAYS = ("dough cycle", "by hand")
NUMBERS = (
    "1/4",
    "1/3",
    "1/2",
    "2/3",
    "3/4",
    "1",
    "1 1/4",
    "1 1/2",
    "1⅔",
    "2",
    "2.5",
    "1-1 1/2",
    "2–3",
    "3 to 4",
)
TIMES = (
    *("45 s", "1 min", "12-15 min", "20 min", "50 min", "1 h", "1 h 20 min"),
    *("1 h 10 min - 1 h 30 min", "8-12 h", "2 days"),
)
KINDS = ("work", "mix", "knead", "cook", "rest", "rise", "chill", "freeze", "cool", "bake")
HEATS = (
    *("oven 350 F", "oven 335 F", "oven 350-375 F", "oven 180 C", "oven 165-170 C", "oven 200 C fan"),
    *(
        "oven 375 F fan",
        "oven gas 4",
        "oven gas 2-3",
        "core 88 C",
        "core 190-195 F",
        "240 F",
        "35-38 C",
        "-18 C",
    ),
)
SHARES = (("half", "rest"), ("1/3", "2/3"), ("1/4", "rest"), ("30 %", "rest"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """A recipe file and the settings of the site that it stands in."""

    recipe: str
    site: str


@cache
def ingredients() -> tuple[Ingredient, ...]:
    """All rows whose names a recipe file may hold without quotation marks.

    A starter is left out: its line must say how wet it is.
    """
    return tuple(
        each
        for each in built_in()
        if all(letter.isalpha() or letter in " -" for letter in each.name) and "starter" not in each.name
    )


@st.composite
def drawn_recipes(draw: st.DrawFn, most: int = 12) -> Drawn:
    """Up to `most` lines in one to three parts, with shares, ways, stages and temperatures."""
    rows = draw(st.lists(st.sampled_from(ingredients()), min_size=1, max_size=most, unique_by=_last_word))
    count = draw(st.integers(1, min(len(PARTS), len(rows))))
    parts = [list(rows[start::count]) for start in range(count)]
    names = PARTS[:count] if count > 1 else ("",)
    formula = [part for name, rows in zip(names, parts, strict=True) for part in _part(draw, name, rows)]
    return Drawn(
        recipe="\n".join(
            [
                *("---", "title: A drawn bake", "published: 2026-01-01", "kinds: [drawn]", "makes: 1 bake"),
                *draw(st.sampled_from(([], ["bakes_off: 12 %"], ["weighs: 500 g"]))),
                *("formula:", *formula, "---", "Drawn by lot.", ""),
                *_method(draw, names, parts),
                "",
            ]
        ),
        site="\n".join(
            [
                *("title: Drawn", "maker: A drawing hand", "url: https://drawn.example/"),
                draw(st.sampled_from(("region: US", "region: EU"))),
                draw(st.sampled_from(("first: weight", "first: volume"))),
                draw(st.sampled_from(("cup: us", "cup: metric", "cup: imperial", "cup: australian"))),
                draw(st.sampled_from(("oven_c: nearest 5", "oven_c: dial"))),
                draw(st.sampled_from(("flour_cup: spooned", "flour_cup: dipped"))),
                "",
            ]
        ),
    )


def _last_word(row: Ingredient) -> str:
    """No two lines whose names could be taken for each other ("milk" and "whole milk")."""
    return row.name.split()[-1].rstrip("s")


def _part(draw: st.DrawFn, name: str, rows: list[Ingredient]) -> list[str]:
    lines = [f"    - {_line(draw, row)}" for row in rows]
    if not name:
        return lines
    counts = draw(st.sampled_from(("yes", "no"))) if name != PARTS[0] else "yes"
    return [f"  {name}:", f"    counts: {counts}", "    lines:", *(f"  {line}" for line in lines)]


def _line(draw: st.DrawFn, row: Ingredient) -> str:
    amount = draw(_amounts(row))
    preparation = draw(st.sampled_from(("", "", ", cold", ", chopped small")))
    text = (
        f"{row.name}, {amount}"
        if amount in ("to taste", "for dusting")
        else f"{amount} {row.name}{preparation}"
    )
    optional = draw(st.sampled_from(("", "", "", ", optional: yes")))
    return f'{{line: "{text}", agree: no{optional}}}'


def _amounts(row: Ingredient) -> st.SearchStrategy[str]:
    grams = st.one_of(
        st.integers(1, 1500).map(str),
        st.integers(1, 99).map(lambda tenths: f"{tenths / 10}"),
        st.tuples(st.integers(1, 400), st.integers(1, 100)).map(lambda ends: f"{ends[0]}-{sum(ends)}"),
    ).map(lambda number: f"{number} g")
    number = st.sampled_from(NUMBERS)
    kinds = [grams, grams, st.tuples(number, st.sampled_from(("oz", "lb"))).map(" ".join)]
    if row.grams_per_ml is not None:
        volume = st.tuples(number, st.sampled_from(("cups", "tbsp", "tsp", "fl oz", "dl"))).map(" ".join)
        millilitres = st.integers(1, 900).map(lambda each: f"{each} ml")
        both = st.tuples(grams, volume).map(lambda pair: f"{pair[0]} ({pair[1]})")
        kinds += [volume, volume, millilitres, both]
    if "" in row.pieces:
        kinds.append(st.sampled_from(("1", "2", "3", "1/2", "2-3")))
    if row.group in ("salt", "spice", "flour"):
        kinds.append(st.sampled_from(("a pinch of", "to taste", "for dusting")))
    return st.one_of(kinds)


def _method(draw: st.DrawFn, names: tuple[str, ...], parts: list[list[Ingredient]]) -> list[str]:
    """The first part goes its ways, where there are two; the others are common to both."""
    named = [
        [f"{name}/{row.name}" if name else row.name for row in rows]
        for name, rows in zip(names, parts, strict=True)
    ]
    if not draw(st.booleans()):
        return ["## Method", *_steps(draw, [each for items in named for each in items], names)]
    first, *others = named
    common = [each for items in others for each in items]
    return [
        *(
            f"## Method: {WAYS[0]}",
            *_steps(draw, first, ()),
            f"## Method: {WAYS[1]}",
            *_steps(draw, first, ()),
        ),
        *("## Method", "### Then", *_steps(draw, common, ())),
    ]


def _steps(draw: st.DrawFn, items: list[str], names: tuple[str, ...]) -> list[str]:
    """Each item in one step whole, or in two by shares; a last step of time and heat."""
    sentences: list[str] = []
    rests: list[str] = []
    if len(names) > 1 and draw(st.booleans()):
        whole = names[-1]
        items = [each for each in items if not each.startswith(f"{whole}/")]
        rests.append(f"Put on {{{whole}}}.")
    for item in items:
        share = draw(st.sampled_from((None, None, None, *SHARES)))
        sentences.append(f"Take {{{item}}}." if share is None else f"Take {{{item}: {share[0]}}}.")
        if share is not None:
            rests.append(f"Add {{{item}: {share[1]}}}.")
    sentences += rests
    size = draw(st.integers(1, 4))
    steps = [" ".join(sentences[at : at + size]) for at in range(0, len(sentences), size)]
    return [f"{number}. {step} {_work(draw)}" for number, step in enumerate([*steps, "Go on."], start=1)]


def _work(draw: st.DrawFn) -> str:
    words = [f"{{{draw(st.sampled_from(KINDS))} {draw(st.sampled_from(TIMES))}}}."]
    words += draw(
        st.sampled_from(
            ((), ("If dry, add {2 tbsp of water}.",), ("Wait {5 min}.",), ("Roll it {23 cm} wide.",))
        )
    )
    words += [f"Bake at {{{heat}}}." for heat in draw(st.lists(st.sampled_from(HEATS), max_size=2))]
    return " ".join(words)
