"""Marks a copy as gone out, renewed, or gone: what is to be appended to the ledger, and what to tell the maker."""

from dataclasses import dataclass
from datetime import date
from itertools import pairwise
from pathlib import Path

from generator.catalogue.allergens import allergens_named
from generator.history.copies import Difference, differences, fingerprint
from generator.history.ledger import Event, Gone, Posted
from generator.history.places import DESCRIPTION, GIVEN, Asked, kind_of, read_place
from generator.history.revisions import revision_of
from generator.pipeline import CheckResult
from generator.present.facts import facts_of
from generator.records.baseline import baseline
from generator.records.copies_text import command_for, text_at
from generator.records.rebuild import Refused, rebuild

MOST_LINES = 3000
_WORD_END = ".,;:!?()[]{}“”\"'’…–—"


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """What the maker says of a copy. `text` is that of the copy as it stands, None where it is not given."""

    recipe: str
    place: str
    on: date | None = None
    to: str = ""
    text: str | None = None
    revision: int | None = None
    as_it_stands: bool = False
    as_typed: bool = False
    gone: bool = False
    why: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Marked:
    """Events to append and sentences to tell. Without events nothing is marked, and the last sentence says why."""

    events: tuple[Event, ...] = ()
    told: tuple[str, ...] = ()


def mark(root: Path, result: CheckResult, wish: Wish) -> Marked:
    """What marking one copy does. The recipe is one of the book."""
    formula = result.setting.book[wish.recipe]
    ledger = result.setting.ledger
    films = tuple(each.url for each in formula.about.videos)
    used = (each.place for name in ledger.recipes() for each in ledger.postings(name))
    place = read_place(wish.place, films=films, used=used, as_typed=wish.as_typed)
    if isinstance(place, Asked):
        return Marked(told=(place.words,))
    if wish.to and kind_of(place) not in GIVEN:
        return Marked(told=(f"--to is for what is handed to a person: {' or '.join(GIVEN)}",))
    on = wish.on or result.setting.day
    wrong = _wrong_day(result, wish, place, on)
    if wrong:
        return Marked(told=(wrong,))
    return _gone(result, wish, place, on) if wish.gone else _posted(root, result, wish, place, on)


def _wrong_day(result: CheckResult, wish: Wish, place: str, on: date) -> str:
    if on > result.setting.day:
        return f"{on.isoformat()} is still to come (today is {result.setting.day.isoformat()})"
    ledger = result.setting.ledger
    if wish.revision is None:
        latest = ledger.latest_day(wish.recipe)
    else:
        copies = (each for each in ledger.postings(wish.recipe) if (each.place, each.to) == (place, wish.to))
        latest = max((each.on for each in copies), default=None)
    if latest is not None and on < latest:
        return (
            f"the ledger already tells of {latest.isoformat()} for {wish.recipe}; what went out on "
            f"{on.isoformat()} carried an older text: say which with --revision N"
        )
    current = revision_of(result.setting.book[wish.recipe], ledger)
    if wish.revision is None and current.updated is not None and on < current.updated and not wish.gone:
        return (
            f"revision {current.number} of {wish.recipe} dates from {current.updated.isoformat()}; what went out on "
            f"{on.isoformat()} carried an older text: say which with --revision N"
        )
    return ""


def _gone(result: CheckResult, wish: Wish, place: str, on: date) -> Marked:
    copies = [each for each in result.setting.ledger.posted(wish.recipe) if each.place == place]
    fitting = [each for each in copies if not wish.to or each.to == wish.to]
    if not fitting:
        known = ", ".join(_named(each) for each in result.setting.ledger.posted(wish.recipe))
        return Marked(
            told=(
                f"no copy “{place}” of {wish.recipe} is known. {f'Known: {known}.' if known else ''}".rstrip(),
            )
        )
    if len(fitting) > 1:
        people = ", ".join(each.to or "nobody in particular" for each in fitting)
        return Marked(told=(f"there are {len(fitting)} of them: say whose with --to ({people})",))
    event = Gone(recipe=wish.recipe, place=place, to=fitting[0].to, on=on, why=wish.why)
    return Marked(
        events=(event,), told=(f"{_named(fitting[0])} of {wish.recipe} is gone; `due` asks for it no more",)
    )


def _named(copy: Posted) -> str:
    return f"{copy.place} (to {copy.to})" if copy.to else copy.place


def _posted(root: Path, result: CheckResult, wish: Wish, place: str, on: date) -> Marked:
    current = revision_of(result.setting.book[wish.recipe], result.setting.ledger).number
    number, facts = current, facts_of(result.setting.book[wish.recipe], result.setting)
    if wish.revision is not None and wish.revision != current:
        then = rebuild(root, result, wish.recipe, wish.revision)
        if isinstance(then, Refused):
            return Marked(told=(then.words,))
        number, facts = wish.revision, then.facts
    is_old = number != current
    ours = "" if is_old else text_at(result, wish.recipe, place)
    told, marks = _compared(result, wish, place, ours)
    if not marks:
        return Marked(told=told)
    # A comment is often the maker's own: it is taken for ours only where its text was given.
    whole = wish.text if wish.text is not None else ours if kind_of(place) == DESCRIPTION else ""
    print_of = fingerprint(whole) if whole else ""
    own = wish.text is None or not ours or fingerprint(wish.text) == fingerprint(ours)
    event = Posted(
        recipe=wish.recipe,
        place=place,
        to=wish.to,
        revision=number,
        on=on,
        fingerprint=print_of,
        own=own,
        facts=facts,
    )
    said = f"{_named(event)} of {wish.recipe} carries revision {number}, {on.isoformat()}"
    return Marked(events=(*baseline(result, wish.recipe, on=on), event), told=(*told, said))


def _compared(result: CheckResult, wish: Wish, place: str, ours: str) -> tuple[tuple[str, ...], bool]:
    """What the text that was given back says, and whether the copy may be marked as renewed."""
    if wish.text is None:
        return (), True
    mine = [each for each in result.setting.ledger.postings(wish.recipe) if each.place == place]
    same = next((each for each in reversed(mine) if each.fingerprint == fingerprint(wish.text)), None)
    current = revision_of(result.setting.book[wish.recipe], result.setting.ledger).number
    if not ours:
        if same is None or same.revision == current or wish.as_it_stands or wish.revision is not None:
            return (), True
        return (_older(same),), False
    if fingerprint(wish.text) == fingerprint(ours):
        return (), True
    found = differences(wish.text, ours, allergens=named_in)
    told, origin = _told(found), _older(same) if same else _elsewhere(mine)
    lost = lost_allergens(wish.text, ours, found)
    if lost:
        return (
            *told,
            origin,
            f"not marked: it leaves out {', '.join(lost)}. Put that right there first",
        ), False
    if wish.as_it_stands:
        return (*told, origin), True
    command = command_for(wish.recipe, place)
    how = f"Put the text of `{command}` there, or add --as-it-stands if it is to stay as it is."
    return (*told, origin, f"not marked: the copy does not say what Tinleaf would say today. {how}"), False


def _older(same: Posted) -> str:
    day = same.on.isoformat()
    return f"it is the text that was posted on {day} with revision {same.revision}: it was not renewed"


def _elsewhere(mine: list[Posted]) -> str:
    if any(each.fingerprint for each in mine):
        return "it is none of the texts that were posted there: it was edited elsewhere"
    return "no text of this place was kept before, so it cannot be told who changed it"


def _told(found: tuple[Difference, ...]) -> tuple[str, ...]:
    """The first line that differs, then every figure and allergen that does."""
    if not found:
        return ()
    first = found[0]
    lines = [f"line {first.number} is the first that differs: there “{first.there}”, now “{first.ours}”"]
    for each in found:
        where = f"line {each.number}"
        for what, (there, ours) in (("", each.figures), ("allergens: ", each.allergens)):
            if there or ours:
                lines.append(
                    f"{where}: {what}there {there or 'none'}, now {ours or 'none'} (“{_short(each)}”)"
                )
    return tuple(lines)


def _short(each: Difference) -> str:
    line = each.ours or each.there
    return line if len(line) <= 60 else f"{line[:59]}…"


def named_in(line: str) -> frozenset[str]:
    """Allergens that a line of text names, by one word or by two."""
    words = [each.strip(_WORD_END) for each in line.casefold().split()]
    pairs = (f"{one} {other}" for one, other in pairwise(words))
    return frozenset(name for each in (*words, *pairs) if each for name in allergens_named(each))


def lost_allergens(there: str, ours: str, found: tuple[Difference, ...]) -> tuple[str, ...]:
    """What our text names and the other does not: nowhere in it, or no more in a line that was edited."""
    all_there, all_ours = (
        frozenset(name for line in text.splitlines() for name in named_in(line)) for text in (there, ours)
    )
    edited = (each for each in found if each.is_edited)
    lines = frozenset(name for each in edited for name in named_in(each.ours) - named_in(each.there))
    return tuple(sorted((all_ours - all_there) | lines))


def unfit(text: str) -> str:
    """Why a text can be that of no copy; "" where it can."""
    if not text.strip():
        return "the text is empty"
    return "the text has more lines than any copy has" if text.count("\n") > MOST_LINES else ""
