"""The formula sheet in words: the total formula, the preferments, the final dough, and what belongs beside them.

Percents have two decimals from ten on and three below, as formulas of the trade are written; weights are those that
a scale shows, and a sum that has a tenth of a gram tells it. The page's own docket rounds to a decimal: both come
from the same exact figures.
"""

from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction

from generator.formula.components import batches
from generator.formula.model import Formula, Line, Part
from generator.formula.percentages import kept_grams
from generator.formula.sheet import LevainBuild, Row, final_dough, levain_builds, total_formula
from generator.measure.number import Range, total
from generator.measure.unit import SPOONS
from generator.present.addresses import recipe_path
from generator.present.altitude import altitude_view
from generator.present.amounts import decimal, grams_on_scale, weight_words
from generator.present.dough_water import degrees_words, wanted_temperature, water_view
from generator.present.equipment import equipment_view
from generator.present.sheet_views import BatchView, SheetFact, SheetRow, SheetTable, SheetView
from generator.present.tins import tins_view
from generator.present.yeast_words import yeast_view
from generator.settings import Settings
from generator.wording.speech import later, say, say_many
from generator.wording.vocabulary import said

Book = Mapping[str, Formula]

SUM = later("Together")
SHEET_FILE = "formula.pdf"


def sheet_view(formula: Formula, *, book: Book, settings: Settings) -> SheetView:
    """The whole sheet of one recipe; without flour it has no percents."""
    flour = formula.totals.flour
    base = (
        say("100 % is all the flour of the dough, {sum}", sum=sum_words(Range.exact(flour))) if flour else ""
    )
    return SheetView(
        base=base,
        facts=tuple(_facts(formula, settings)),
        tables=tuple(_tables(formula, book)),
        builds=tuple(_build(each) for each in levain_builds(formula)),
        batches=tuple(_batches(formula, book)),
        water=water_view(formula, settings),
        path=f"{recipe_path(formula.name)}{SHEET_FILE}",
        yeast=yeast_view(formula, settings=settings),
        equipment=equipment_view(formula, settings=settings),
        tins=tins_view(formula, spoons=SPOONS[settings.cup]),
        altitude=altitude_view(formula, spoons=SPOONS[settings.cup]),
    )


def sheet_percent(percent: Fraction | None) -> str:
    """`68.42 %`, `1.974 %`, `0.814 %`, `−0.111 %` of what was lost; "" where there is none."""
    if percent is None:
        return ""
    sign = "−" if percent < 0 else ""
    return say("{number} %", number=f"{sign}{decimal(abs(percent), places=2 if abs(percent) >= 10 else 3)}")


def row_words(grams: Range) -> str:
    """The weight of a row; what making a component took away is a weight below nothing: `−0.5 g`."""
    if grams.low >= 0:
        return weight_words(grams)
    return f"−{weight_words(Range(abs(grams.high), abs(grams.low)))}"


def sum_words(grams: Range) -> str:
    """`600.3 g`: a weight with its tenth where it has no finer part, else as a scale shows it."""
    ends = (grams.low, grams.high)
    if any((end * 10).denominator != 1 for end in ends):
        return weight_words(grams)
    low, high = (decimal(end, places=1) if end >= 1 else grams_on_scale(end) for end in ends)
    return say("{weight} g", weight=low if low == high else f"{low}–{high}")


def _tables(formula: Formula, book: Book) -> Iterator[SheetTable]:
    counted = [part for part in formula.parts if part.counts]
    ferments = [part for part in counted if part.preferment]
    if counted:
        yield _total(formula, book, alone=len(counted) == 1)
    yield from (_part(part, formula, book) for part in ferments)
    if ferments:
        yield _final(formula, book)
    elif len(counted) > 1:
        yield from (_part(part, formula, book) for part in counted)
    yield from (_part(part, formula, book) for part in formula.parts if not part.counts)


def _total(formula: Formula, book: Book, *, alone: bool) -> SheetTable:
    rows = total_formula(formula, book)
    opened = any(part.counts and part.preferment for part in formula.parts)
    remark = say("preferments opened") if opened else ""
    if not alone and not opened:
        remark = say("all parts that count")
    percent = _sum_of(row.percent for row in rows)
    return SheetTable(
        title=say("Total formula") if formula.totals.flour else say("Ingredients"),
        remark=remark,
        rows=tuple(
            SheetRow(item=row.item, weight=row_words(row.grams), of_all=sheet_percent(row.percent))
            for row in rows
        ),
        sum=SheetRow(item=say(SUM), weight=sum_words(_grams(rows)), of_all=sheet_percent(percent)),
    )


def _final(formula: Formula, book: Book) -> SheetTable:
    """What goes into the bowl, on all flour and on the flour that goes in beside the preferment."""
    rows, flour = final_dough(formula, book), formula.totals.flour
    preferments = {part.name or part.preferment for part in formula.parts if part.counts and part.preferment}
    told = tuple(
        SheetRow(
            item=row.item,
            weight=sum_words(row.grams) if row.item in preferments else weight_words(row.grams),
            of_all=sheet_percent(100 * row.grams.mid / flour) if flour else "",
            of_own=sheet_percent(row.percent),
        )
        for row in rows
    )
    own = _own_flour(rows)
    whole = _grams(rows)
    return SheetTable(
        title=say("Final dough"),
        remark=say("what goes into the bowl"),
        rows=told,
        sum=SheetRow(
            item=say(SUM),
            weight=sum_words(whole),
            of_all=sheet_percent(100 * whole.mid / flour) if flour else "",
            of_own=sheet_percent(_sum_of(row.percent for row in rows)),
        ),
        own_flour=say("of its {sum}", sum=sum_words(Range.exact(own))) if own else "",
    )


def _own_flour(rows: Iterable[Row]) -> Fraction:
    """The flour that the rows' percents are on, read back from the heaviest of them."""
    known = [row for row in rows if row.percent]
    heaviest = max(known, key=lambda row: row.grams.mid, default=None)
    return 100 * heaviest.grams.mid / heaviest.percent if heaviest and heaviest.percent else Fraction(0)


def _part(part: Part, formula: Formula, book: Book) -> SheetTable:
    """A part as its lines are written; a preferment also on its own flour."""
    lines = [line for line in part.lines if line.counts]
    flour = total(line.grams for line in lines if line.flour and line.grams).mid if part.preferment else None
    rows = tuple(_line(line, flour) for line in lines)
    all_flour = formula.totals.flour
    return SheetTable(
        title=(part.name[:1].upper() + part.name[1:]) or say("Ingredients"),
        remark=_remark(part),
        rows=rows,
        sum=SheetRow(
            item=say(SUM),
            weight=sum_words(part.grams) if part.grams.high else "",
            of_all=sheet_percent(100 * part.grams.mid / all_flour) if part.counts and all_flour else "",
            of_own=sheet_percent(100 * part.grams.mid / flour) if flour else "",
        ),
        own_flour=say("of its {sum}", sum=sum_words(Range.exact(flour))) if flour else "",
    )


def _line(line: Line, flour: Fraction | None) -> SheetRow:
    words = weight_words(line.grams) or say(line.written.words.removesuffix(" of")) or say("by eye")
    own = 100 * line.grams.mid / flour if flour and line.grams else None
    return SheetRow(
        item=line.item, weight=words, of_all=sheet_percent(line.percent), of_own=sheet_percent(own)
    )


def _remark(part: Part) -> str:
    remarks = [said(part.preferment)] if part.preferment and part.preferment != part.name else []
    if part.hydration is not None:
        remarks.append(say("{percent} water on its flour", percent=sheet_percent(part.hydration)))
    if not part.counts:
        remarks.append(say("not counted in the percentages"))
    if any(not line.counts for line in part.lines):
        remarks.append(say("without its optional lines"))
    return ", ".join(each for each in remarks if each)


def _build(found: LevainBuild) -> SheetTable:
    build = found.build
    told = ((say("seed"), build.seed), (say("flour"), build.flour), (say("water"), build.water))
    return SheetTable(
        title=say("To build the {part}", part=found.part),
        remark=say("{percent} water on flour", percent=sheet_percent(build.hydration)),
        rows=tuple(SheetRow(item=item, weight=weight_words(Range.exact(grams))) for item, grams in told),
        sum=SheetRow(item=say(SUM), weight=sum_words(Range.exact(build.grams))),
    )


def _batches(formula: Formula, book: Book) -> Iterator[BatchView]:
    for batch in batches(formula, book):
        one = weight_words(Range.exact(batch.batch_grams))
        left = Range.exact(batch.left_grams)
        yield BatchView(
            title=book[batch.name].about.title,
            used=weight_words(Range.exact(batch.used_grams)),
            made=say_many(
                "{count} batch of {weight}", "{count} batches of {weight}", batch.batches, weight=one
            ),
            left=weight_words(left) if batch.left_grams else "",
        )


def _facts(formula: Formula, settings: Settings) -> Iterator[SheetFact]:
    totals = formula.totals
    wanted = wanted_temperature(formula, settings)
    weight = say("Dough weight") if totals.flour else say("Raw weight")
    facts = (
        (say("Flour"), sum_words(Range.exact(totals.flour)) if totals.flour else ""),
        (say("Hydration"), sheet_percent(totals.hydration) if totals.hydration else ""),
        (
            say("Hydration by added water and milk alone"),
            sheet_percent(totals.hydration_nominal) if totals.hydration_nominal else "",
        ),
        (say("Salt"), sheet_percent(totals.salt_percent)),
        (say("Salt with what others hold"), sheet_percent(totals.salt_with_ingredients_percent)),
        (say("Prefermented flour"), sheet_percent(totals.prefermented_percent)),
        (weight, sum_words(totals.dough_grams) if totals.dough_grams.high else ""),
        (say("All parts"), sum_words(totals.grams) if totals.grams != totals.dough_grams else ""),
        (say("Finished weight"), weight_words(totals.finished_grams)),
        (say("Loss in baking"), _loss(formula)),
        (say("Wanted dough temperature"), degrees_words(wanted) if wanted else ""),
    )
    yield from (SheetFact(label=label, words=words) for label, words in facts if words)


def _loss(formula: Formula) -> str:
    """Of the raw weight: as stated, or from the finished weight that is stated."""
    finished, raw = formula.totals.finished_grams, kept_grams(formula.parts).mid
    loss = formula.bakes_off
    if loss is None and finished is not None and raw and finished.mid < raw:
        loss = 1 - finished.mid / raw
    return say("{percent} of the raw weight", percent=sheet_percent(100 * loss)) if loss is not None else ""


def _grams(rows: Iterable[Row]) -> Range:
    return total(row.grams for row in rows)


def _sum_of(percents: Iterable[Fraction | None]) -> Fraction | None:
    known = [each for each in percents if each is not None]
    return sum(known, start=Fraction(0)) if known else None
