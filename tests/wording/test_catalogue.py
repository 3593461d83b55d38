"""Each catalogue says every text that readers are told, whole and once; and nothing that nobody says any more."""

import re
from collections import Counter
from pathlib import Path

import pytest
from babel.messages.catalog import Message
from babel.messages.pofile import read_po

from generator.catalogue.allergens import ALLERGENS
from generator.formula.caution_names import CAUTION_NAMES
from generator.measure.length import SHAPES
from generator.measure.unit import _COUNT, SPOONS, Kind, Unit, unit_named
from generator.wording.catalogue import form_of
from generator.wording.speech import CATALOGUES
from generator.wording.vocabulary import TIN_WORDS
from tests.wording.texts import Text, in_code, in_packs, in_regions, in_templates

PATHS = sorted(CATALOGUES.glob("*.po"))
_PLACE = re.compile(r"\{[a-z_0-9]*\}|%\([a-z_0-9]+\)s|<[^>]+>")


def wanted() -> dict[Text, str]:
    words = {**in_templates(), **in_regions(), **in_packs(), **in_code()}
    units = [unit for unit in map(_unit, _UNIT_NAMES) if unit is not None]
    words |= {Text("unit", name): "unit.py" for unit in units for name in (unit.name, unit.plural)}
    words |= {Text("tin", each): "tin_text.py" for each in (*SHAPES, *TIN_WORDS)}
    words |= {Text("caution", each): "caution_names.py" for each in CAUTION_NAMES}
    return words | {Text("allergen", each): "allergens.py" for each in ALLERGENS}


_UNIT_NAMES = (
    *("piece", "clove", "slice", "sheet", "packet", "leaf", "sprig", "can", "jar", "block", "pod", "stalk"),
    *("drop", "pinch", "dash", "stick"),
)


def _unit(name: str) -> Unit | None:
    return unit_named(name, spoons=SPOONS["us"])


def _forms(message: Message) -> tuple[str, ...]:
    said = message.string
    return tuple(said) if isinstance(said, tuple | list) else (said or "",)


def entries(path: Path) -> dict[Text, Message]:
    with path.open("rb") as file:
        return {_text(each): each for each in read_po(file) if each.id}


def _text(message: Message) -> Text:
    ids = message.id if isinstance(message.id, tuple | list) else (message.id, "")
    return Text(message.context or "", ids[0], ids[1])


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_every_text_is_said_and_nothing_else(path: Path) -> None:
    there, asked = entries(path), wanted()
    missing = {
        place: text for text, place in asked.items() if _known(text, there) is None and "/view/" not in place
    }
    assert not missing, f"{path.name} does not say: {missing}"
    said = {(text.context, text.one) for text in asked}
    left = [text for text in there if (text.context, text.one) not in said]
    assert not left, f"{path.name} says what nobody says: {left}"


def _known(text: Text, there: dict[Text, Message]) -> Message | None:
    """A text for many also serves who says the one alone."""
    own = there.get(text)
    return own or next(
        (each for key, each in there.items() if (key.context, key.one) == (text.context, text.one)), None
    )


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_each_is_translated_with_the_same_places_and_none_is_doubtful(path: Path) -> None:
    for text, message in entries(path).items():
        forms = _forms(message)
        assert all(forms), f"not translated: {text}"
        assert not message.fuzzy, f"marked as doubtful: {text}"
        for form in forms:
            english = {text.one, text.many} - {""}
            places = [Counter(_PLACE.findall(each)) for each in english]
            assert Counter(_PLACE.findall(form)) in places, f"{text.one!r} has other places than {form!r}"
            ends = [(each[:1] == " ", each[-1:] == " ") for each in english]
            assert (form[:1] == " ", form[-1:] == " ") in ends, (
                f"{form!r} begins or ends otherwise than {text.one!r}"
            )


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_no_text_stands_there_twice(path: Path) -> None:
    lines = path.read_text(encoding="utf-8").split("\n\n")
    heads = Counter(re.sub(r"^#.*\n", "", each, flags=re.M).partition("msgstr")[0].strip() for each in lines)
    assert [head for head, count in heads.items() if count > 1 and head] == []


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_as_many_forms_as_the_language_has(path: Path) -> None:
    form = form_of(path.stem)
    forms = {form(count) for count in range(1001)}
    with path.open("rb") as file:
        assert read_po(file).num_plurals == len(forms)
    for text, message in entries(path).items():
        if text.many:
            assert len(_forms(message)) == len(forms), text


def test_units_in_pieces_are_all_there() -> None:
    units = {name: unit for name in {*_UNIT_NAMES, *_COUNT} if (unit := _unit(name)) is not None}
    pieces = {name for name, unit in units.items() if unit.kind is Kind.COUNT}
    assert pieces == set(_COUNT)
    assert set(_UNIT_NAMES) == {*_COUNT, "stick"}
