"""Bakes built by hand for tests: real catalogue rows, packs of our own, and no file in between."""

from collections.abc import Iterable
from datetime import date
from fractions import Fraction
from types import MappingProxyType

from generator.catalogue.ingredient import Ingredient
from generator.catalogue.load import Pack, Pantry, built_in
from generator.declaration.model import Declaration, Run
from generator.diagnostics.span import Span
from generator.formula.model import (
    About,
    Block,
    Formula,
    Line,
    Part,
    Section,
    Totals,
    Use,
    Ware,
    Way,
    Words,
    Written,
)
from generator.measure.number import Range, total

ROW = Span(path="pantry.yaml", line=1, column=1, end_line=1, end_column=5)


def pack(
    name: str,
    label: str = "",
    *,
    contains: Iterable[str] | None = None,
    may_contain: Iterable[str] = (),
    stands_for: str | None = None,
    checked: date | None = None,
) -> Pack:
    """A pantry row; it speaks for the catalogue row of its own name where there is one."""
    known = built_in().find(stands_for or name)
    return Pack(
        name=name,
        stands_for=known.name if known else None,
        stands_in=stands_for is not None and known is not None,
        span=ROW,
        label=label,
        contains=tuple(contains or ()),
        contains_given=contains is not None,
        may_contain=tuple(may_contain),
        checked=checked,
    )


def ware(item: str, row: Pack | None = None) -> Ware | None:
    """What the pipeline would find: the pantry's row over the catalogue's."""
    pantry = Pantry((row,) if row else (), catalogue=built_in())
    ingredient: Ingredient | None = (pantry.ingredient(row.name) if row else None) or built_in().find(item)
    return Ware(ingredient=ingredient, packs=(row,) if row else ()) if ingredient else None


def line(
    item: str,
    grams: float | None = 100,
    row: Pack | None = None,
    *,
    kept: float | None = None,
    optional: bool = False,
    alternatives: tuple[Line, ...] = (),
    component: str | None = None,
    at: int = 1,
) -> Line:
    amount = None if grams is None else Range.exact(Fraction(str(grams)))
    stays = amount if kept is None else Range.exact(Fraction(str(kept)))
    span = Span(path="recipes/bake.md", line=at, column=5, end_line=at, end_column=5 + len(item))
    return Line(
        part="dough",
        key=item,
        written=Written(
            text=item,
            measures=(),
            words="",
            size="",
            item=item,
            preparation="",
            note="",
            span=span,
            item_span=span,
            amount_span=span,
        ),
        item=item,
        ware=None if component else ware(item, row),
        component=component,
        optional=optional,
        alternatives=alternatives,
        note="",
        grams=amount,
        kept=stays,
        millilitres=None,
        volume_stated=False,
        count=None,
        flour=False,
        percent=None,
        span=span,
    )


def extra(item: str, row: Pack | None = None) -> Use:
    span = Span(path="recipes/bake.md", line=40, column=1, end_line=40, end_column=9)
    return Use(
        part="",
        item=item,
        line=None,
        ware=ware(item, row),
        share="extra",
        fraction=None,
        grams=Range.exact(10),
        millilitres=None,
        count=None,
        span=span,
    )


def bake(
    *lines: Line, name: str = "bake", finished: float | None = None, uses: tuple[Use, ...] = ()
) -> Formula:
    span = Span(path=f"recipes/{name}.md", line=1, column=1, end_line=1, end_column=2)
    grams = total(each.grams for each in lines if each.grams and each.counts)
    part = Part(name="dough", counts=True, preferment=None, lines=lines, grams=grams, span=span)
    words = Words(markdown="", mentions=uses)
    block = Block(kind="step", number=1, words=words, span=span)
    return Formula(
        name=name,
        path=f"recipes/{name}.md",
        about=_about(name),
        parts=(part,),
        totals=_totals(grams, finished),
        ways=(Way(name="", sections=(Section(title="", blocks=(block,)),)),),
        times=(),
        intro=Words(markdown="", mentions=()),
        prose=(),
        weighs=None,
        bakes_off=None,
        component_shares=MappingProxyType({}),
        spans=MappingProxyType({}),
    )


def book(*formulas: Formula) -> dict[str, Formula]:
    return {each.name: each for each in formulas}


def marked(runs: Iterable[Run]) -> str:
    """Runs as Markdown: what stands out between two stars."""
    return "".join(f"**{each.text}**" if each.strong else each.text for each in runs)


def said(declaration: Declaration) -> str:
    """Everything a reader is told, in one text."""
    runs = (declaration.ingredients, declaration.contains_line, declaration.may_line)
    return " ".join("".join(each.text for each in one) for one in runs) + declaration.statement


def _about(name: str) -> About:
    return About(
        title=name.capitalize(),
        lead="",
        published=None,
        kinds=(),
        photo="",
        photo_text="",
        makes="",
        portions="",
        tin="",
        tin_read=None,
        keeps="",
        videos=(),
        links=(),
        credits=(),
        corrections=(),
    )


def _totals(grams: Range, finished: float | None) -> Totals:
    return Totals(
        grams=grams,
        dough_grams=grams,
        flour=Fraction(0),
        water=Fraction(0),
        hydration=None,
        hydration_nominal=None,
        salt_percent=None,
        salt_with_ingredients_percent=None,
        finished_grams=None if finished is None else Range.exact(Fraction(str(finished))),
        prefermented_percent=None,
    )
