"""Bake records: what really happened on a bake day, read from `bakes/DATE-NAME.yaml`.

Recipe and day may be left out: the file's name gives them. Every other key may be absent. `read_bakes` looks up
what a record names: the recipe, the packs of the pantry, the ingredients that were added or left.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from fractions import Fraction
from pathlib import PurePosixPath
from typing import TypeVar

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, did_you_mean
from generator.diagnostics.span import Span, whole_file
from generator.formula.bake_day import Added, line_named, lines_within, speaks_for, stands_for
from generator.formula.model import Formula, Line, Ware
from generator.formula.references import KINDS
from generator.formula.shelf import Shelf
from generator.measure.duration import Duration, read_duration
from generator.measure.number import Range, read_number
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.temperature import read_temperature
from generator.source.document import Mapping as Keys
from generator.source.document import Node, Sequence, Text
from generator.source.fields import check_keys, date_of, text_of, whole_of

T = TypeVar("T")
KEYS = (
    *(
        "recipe",
        "day",
        "revision",
        "size",
        "room",
        "weather",
        "packs",
        "added",
        "left",
        "times",
        "dough",
        "baked",
    ),
    *("photos", "note", "next"),
)
MOST_TIMES = 100
_NAMED = re.compile(r"([0-9]{4}-[0-9]{2}-[0-9]{2})-(.+)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """What stayed over. It still counts for allergens. `line` is the line of the formula that has it."""

    item: str
    grams: Range | None
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Took:
    """How long a stage took on the day; `note` is what the maker wrote behind it ("in the cold pantry")."""

    kind: str
    duration: Duration
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeRecord:
    """One bake day. Weights are grams; `when` of what was added stands beside it in `whens`, in its order.

    `number` is 2 for the second bake of a day, and so on. `size` is how many times the recipe was baked, None for
    the recipe as written; weights are those of the day, and `as_written` reckons them back.
    """

    path: str
    recipe: str
    day: date
    revision: int | None = None
    size: Fraction | None = None
    room: str = ""
    weather: str = ""
    packs: tuple[Ware, ...] = ()
    pack_names: tuple[str, ...] = ()
    added: tuple[Added, ...] = ()
    whens: tuple[str, ...] = ()
    left: tuple[Left, ...] = ()
    dough: Fraction | None = None
    baked: Fraction | None = None
    times: tuple[Took, ...] = ()
    photos: tuple[str, ...] = ()
    note: str = ""
    next: str = ""

    @property
    def as_written(self) -> "BakeRecord":
        """The record with all its weights as of the recipe's own size."""
        if self.size is None or self.size == 1:
            return self
        share = 1 / self.size
        return replace(
            self,
            size=None,
            added=tuple(replace(each, grams=_part(each.grams, share)) for each in self.added),
            left=tuple(replace(each, grams=_part(each.grams, share)) for each in self.left),
            dough=self.dough * share if self.dough is not None else None,
            baked=self.baked * share if self.baked is not None else None,
        )

    @property
    def number(self) -> int:
        stem = PurePosixPath(self.path).stem
        match = re.fullmatch(rf"[0-9-]{{10}}-{re.escape(self.recipe)}-([0-9]{{1,4}})", stem)
        return int(match[1]) if match else 1


def _part(grams: Range | None, share: Fraction) -> Range | None:
    return grams.scaled(share) if grams is not None else None


def read_bakes(
    bakes: Iterable[tuple[str, Keys]], *, names: Iterable[str], book: Mapping[str, Formula], shelf: Shelf
) -> tuple[tuple[BakeRecord, ...], Diagnostics]:
    """Every record whose recipe and day are known, by path; and what is wrong in all of them.

    `names` are all recipes there are, `book` those that are understood: a record of one with errors is read
    without looking up what was in it.
    """
    records: list[BakeRecord] = []
    found: list[Diagnostic] = []
    known = tuple(names)
    for path, keys in bakes:
        reader = _Reader(path=path, keys=keys, names=known, book=book, shelf=shelf)
        record = reader.read()
        found += reader.found
        records += [record] if record else []
    return tuple(records), tuple(found)


def newest_bake(
    records: Iterable[BakeRecord], recipe: str, *, until: date | None = None, on: date | None = None
) -> BakeRecord | None:
    """The newest record of a recipe, of the days up to `until` or of the one day `on`."""
    fitting = (
        each
        for each in records
        if each.recipe == recipe
        and (on is None or each.day == on)
        and (until is None or on is not None or each.day <= until)
    )
    return max(fitting, key=lambda each: (each.day, each.number, each.path), default=None)


@dataclass(slots=True, kw_only=True)
class _Reader:
    """Reads one record and collects what is wrong with it."""

    path: str
    keys: Keys
    names: tuple[str, ...]
    book: Mapping[str, Formula]
    shelf: Shelf
    found: list[Diagnostic] = field(default_factory=list)

    def read(self) -> BakeRecord | None:
        self.found += check_keys(self.keys, KEYS, what="a bake record")
        recipe, day = self._recipe(), self._day()
        formula = self.book.get(recipe)
        self._room()
        packs = self._packs(formula)
        added, whens = self._added(formula)
        left = self._left(formula)
        dough, baked = self._weight("dough"), self._weight("baked")
        if dough is not None and baked is not None and baked > dough:
            node = self.keys.get("baked") or self.keys
            hint = "Look at the two weights: a bake loses water in the oven."
            self._note("K010", node.span, "the baked weight is above that of the dough", hint)
        if day is None or not recipe:
            return None
        return BakeRecord(
            path=self.path,
            recipe=recipe,
            day=day,
            revision=self._taken(whole_of(self.keys.get("revision"), least=1)),
            size=self._size(),
            room=self._text("room"),
            weather=self._text("weather"),
            packs=tuple(ware for ware, _ in packs),
            pack_names=tuple(name for _, name in packs),
            added=added,
            whens=whens,
            left=left,
            times=self._times(),
            photos=tuple(node.value for node in self._texts("photos")),
            dough=dough,
            baked=baked,
            note=self._text("note"),
            next=self._text("next"),
        )

    def _recipe(self) -> str:
        """The recipe that the record names, else the one its file is named by; "" where there is none."""
        node, named = self.keys.get("recipe"), self._from_name()[1]
        name = self._text("recipe") or named
        if name in self.names:
            return name
        span = node.span if isinstance(node, Text) and node.value.strip() else whole_file(self.path)
        hint = did_you_mean(name, self.names) or "The name of a recipe is that of its file without “.md”."
        self._note("K001", span, f"there is no recipe called “{name}”", hint)
        return ""

    def _day(self) -> date | None:
        node = self.keys.get("day")
        stated = self._taken(date_of(node))
        named, faults = date_of(Text(value=self._from_name()[0], span=whole_file(self.path)))
        if stated is not None and named is not None and node is not None and stated != named:
            hint = f"Write {named.isoformat()}, or rename the file."
            self._note("K007", node.span, "this is another day than the file's name says", hint)
        self.found += faults if stated is None else ()
        return stated or named

    def _size(self) -> Fraction | None:
        """How many times the recipe: a number, a fraction or a decimal."""
        node, text = self.keys.get("size"), self._text("size")
        if node is None or not text:
            return None
        read = read_number(text)
        if read is None or read[1] != len(text) or not read[0].is_exact or not 0 < read[0].low <= MOST_TIMES:
            hint = f"Write how many times the recipe, as in 2 or 1/2: above 0 and at most {MOST_TIMES}."
            self._note("K014", node.span, f"“{text[:40]}” is not a size", hint)
            return None
        return read[0].low

    def _from_name(self) -> tuple[str, str]:
        match = _NAMED.fullmatch(PurePosixPath(self.path).stem)
        return (match[1], match[2]) if match else ("", "")

    def _room(self) -> None:
        node, text = self.keys.get("room"), self._text("room")
        if node is not None and text and read_temperature(text) is None:
            self._note(
                "K006", node.span, f"“{text[:40]}” is not a temperature", "Write it as in 66 F or 19 C."
            )

    def _packs(self, formula: Formula | None) -> tuple[tuple[Ware, str], ...]:
        """Every pack of the pantry that the record names, each once."""
        packs: dict[str, tuple[Ware, str]] = {}
        for node in self._texts("packs"):
            name = " ".join(node.value.split())
            pack = self.shelf.pantry.pack_for(name)
            ware = self.shelf.ware(pack.name)[0] if pack else None
            if pack is None or ware is None:
                hint = did_you_mean(name, self.shelf.pantry.names()) or "Add the row to pantry.yaml."
                self._note("K002", node.span, f"the pantry has no row called “{name}”", hint)
                continue
            packs.setdefault(pack.name, (ware, pack.name))
            if formula is not None and not self._fits(ware, formula):
                hint = "It is declared all the same. Look at the name, or put what was in under “added:”."
                self._note("K008", node.span, f"nothing in this bake is made of “{name}”", hint)
        return tuple(packs.values())

    def _fits(self, ware: Ware, formula: Formula) -> bool:
        """Whether the bake, or something that the record says was added, is made of the pack."""
        if speaks_for(ware, formula, self.book):
            return True
        added = (self.shelf.ware(name)[0] for name in self._what("added"))
        return any(each is not None and stands_for(each) == stands_for(ware) for each in added)

    def _what(self, key: str) -> tuple[str, ...]:
        nodes = self.keys.get(key)
        entries = nodes.items if isinstance(nodes, Sequence) else ()
        texts = (each.get("what") for each in entries if isinstance(each, Keys))
        return tuple(each.value.strip() for each in texts if isinstance(each, Text))

    def _added(self, formula: Formula | None) -> tuple[tuple[Added, ...], tuple[str, ...]]:
        added, whens = [], []
        for entry in self._entries("added", ("what", "amount", "when")):
            node = entry.get("what")
            item = self._taken(text_of(node)) or ""
            line = line_named(formula, item) if formula and item else None
            ware = line.ware if line else self.shelf.ware(item)[0] if item else None
            grams = self._amount(entry, ware, line)
            whens.append(self._taken(text_of(entry.get("when"))) or "")
            if node is not None and item and ware is None and line is None and formula is not None:
                self._unknown("K003", node, item, formula)
            added.append(Added(item=item, ware=ware, line=line, grams=grams, span=(node or entry).span))
        return tuple(added), tuple(whens)

    def _left(self, formula: Formula | None) -> tuple[Left, ...]:
        left = []
        for entry in self._entries("left", ("what", "amount")):
            node = entry.get("what")
            item = self._taken(text_of(node)) or ""
            line = line_named(formula, item) if formula and item else None
            if node is not None and item and line is None and formula is not None:
                self._unknown("K009", node, item, formula)
            grams = self._amount(entry, line.ware if line else None, line)
            left.append(Left(item=item, grams=grams, line=line))
        return tuple(left)

    def _times(self) -> tuple[Took, ...]:
        took = []
        for node in self._texts("times"):
            said, _, note = node.value.partition(",")
            kind, _, time = said.strip().partition(" ")
            duration = read_duration(time)
            if kind.casefold() not in KINDS:
                hint = did_you_mean(kind, KINDS) or f"Begin with one of: {', '.join(KINDS)}."
                self._note("K012", node.span, f"there is no stage “{kind[:40]}”", hint)
            elif duration is None:
                hint = f"Write it as in “{kind} 1 h 15 min”."
                self._note("K013", node.span, f"“{time[:40]}” is not a time", hint)
            else:
                took.append(Took(kind=kind.casefold(), duration=duration, note=note.strip()))
        return tuple(took)

    def _unknown(self, code: str, node: Node, item: str, formula: Formula) -> None:
        own = tuple(dict.fromkeys(line.item for line in lines_within(formula.lines)))
        near = did_you_mean(item, own)
        if code == "K009":
            message = f"this bake has no “{item}” that could be left"
            hint = near or f"It is made of: {', '.join(own)}."
        else:
            message = f"neither the bake, the catalogue nor the pantry knows “{item}”"
            others = " or ".join(f"“{each}”" for each in self.shelf.nearest(item))
            hint = near or (f"Did you mean {others}?" if others else f"Add a row “{item}:” to pantry.yaml.")
        self._note(code, node.span, message, hint)

    def _amount(self, entry: Keys, ware: Ware | None, line: Line | None) -> Range | None:
        """Grams of an amount that was weighed, spooned or counted; None where its weight cannot be known."""
        node = entry.get("amount")
        text = self._taken(text_of(node)) or ""
        if node is None or not text:
            return None
        read = read_quantity(text, spoons=self.shelf.spoons)
        if read is None or read[1] != len(text):
            hint = "Write a number and a unit, as in 10 g, 2 tsp or 1."
            self._note("K004", node.span, f"“{text[:40]}” is not an amount", hint)
            return None
        return self._grams(read[0], ware, line)

    def _grams(self, quantity: Quantity, ware: Ware | None, line: Line | None) -> Range | None:
        weight, volume = quantity.grams(), quantity.millilitres()
        if weight is not None:
            return weight
        if volume is not None and ware is not None:
            per_ml = ware.ingredient.weight_per_ml(flour_cup=self.shelf.flour_cup)
            return volume.scaled(per_ml) if per_ml is not None else None
        if quantity.unit is None and line is not None and line.grams and line.count and line.count.mid > 0:
            return quantity.amount.scaled(line.grams.mid / line.count.mid)
        return None

    def _weight(self, key: str) -> Fraction | None:
        node, text = self.keys.get(key), self._text(key)
        if node is None or not text:
            return None
        read = read_quantity(text, spoons=self.shelf.spoons)
        grams = read[0].grams() if read and read[1] == len(text) else None
        if grams is None or not grams.is_exact or grams.low <= 0:
            hint = "Write one weight with its unit, as in 908 g or 2 lb 4 oz."
            self._note("K005", node.span, f"“{text[:40]}” is not a weight", hint)
            return None
        return grams.low

    def _entries(self, key: str, allowed: tuple[str, ...]) -> tuple[Keys, ...]:
        node = self.keys.get(key)
        if node is None or (isinstance(node, Text) and not node.value.strip()):
            return ()
        items = node.items if isinstance(node, Sequence) else (node,)
        entries = tuple(each for each in items if isinstance(each, Keys))
        for each in items:
            if not isinstance(each, Keys):
                hint = f"Write “{key}: [{{what: bread flour, amount: 10 g}}]”."
                self._note("K011", each.span, "this says neither what nor how much", hint)
        for entry in entries:
            self.found += check_keys(entry, allowed, what=f"an entry of “{key}”", needed=("what",))
        return entries

    def _texts(self, key: str) -> tuple[Text, ...]:
        node = self.keys.get(key)
        items = node.items if isinstance(node, Sequence) else () if node is None else (node,)
        for each in items:
            self._taken(text_of(each))
        return tuple(each for each in items if isinstance(each, Text) and each.value.strip())

    def _text(self, key: str) -> str:
        return self._taken(text_of(self.keys.get(key))) or ""

    def _taken(self, read: tuple[T, Diagnostics]) -> T:
        value, faults = read
        self.found += [each for each in faults if each not in self.found]
        return value

    def _note(self, code: str, span: Span, message: str, hint: str) -> None:
        self.found.append(Diagnostic(code=code, message=message, span=span, hint=hint))
