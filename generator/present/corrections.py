"""All corrections of a recipe as readers are told them, and what changed since each earlier revision.

The file's own entries come first; what the ledger knows beside them (a component or a pack that changed, a correction
taken back, a change by hand) is told from the facts that it keeps.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from typing import Final

from generator.catalogue.names import fold
from generator.formula.model import Correction, Formula
from generator.history.changes import Harm, numbers
from generator.history.corrections import read_change
from generator.history.events import Cause, Facts, Ledger, Revision
from generator.history.revisions import revision_of
from generator.history.taking_back import in_time
from generator.present.addresses import recipe_path
from generator.present.changed import Told, told_changes
from generator.present.corrected import ARROW, amount_of, because_words, change_words, named, worded
from generator.present.correction_views import CorrectionView, SinceView
from generator.present.film import film_words
from generator.present.page_link import PageLink
from generator.settings import Settings
from generator.wording.forms import day_words
from generator.wording.speech import say

Titles = Mapping[str, str]
_LOUD = (Harm.ALLERGENS, Harm.CAUTIONS)
_BESIDE = ("label", "keeps")
_MOST_TOLD = 4
_TAKEN_BACK: Final = "taken back"


def correction_views(
    formula: Formula, settings: Settings, ledger: Ledger | None = None, titles: Titles | None = None
) -> tuple[CorrectionView, ...]:
    """Newest first. `titles` are those of all recipes, to name a component by."""
    known = ledger or Ledger()
    views = (
        *_own(formula, settings, known),
        *_beside(formula, settings, known, titles or {}),
    )
    return tuple(sorted(views, key=lambda view: (view.on, view.revision), reverse=True))


def numbered(formula: Formula, ledger: Ledger) -> tuple[tuple[Correction, int], ...]:
    """The corrections of the file, oldest first, each with the revision that it made."""
    corrections, revisions = in_time(formula.about.corrections), ledger.revisions(formula.name)
    current = revision_of(formula, ledger).number
    first = revisions[0].number if revisions else current
    before = revisions[0].corrections if revisions else len(corrections)
    made = {each.corrections: each.number for each in _corrected(revisions)}
    return tuple(
        (each, first - (before - at) if at <= before else made.get(at, current))
        for at, each in enumerate(corrections, start=1)
    )


def _corrected(revisions: tuple[Revision, ...]) -> Iterator[Revision]:
    """The revisions with which the file got one entry more; of one count the last, for an undo takes entries away."""
    for before, after in pairwise(revisions):
        if after.corrections > before.corrections:
            yield after


def _own(formula: Formula, settings: Settings, ledger: Ledger) -> Iterator[CorrectionView]:
    page = PageLink(title=formula.about.title, path=recipe_path(formula.name))
    for each, number in numbered(formula, ledger):
        yield CorrectionView(
            on=each.on,
            day=day_words(each.on),
            change=change_words(each, formula, settings),
            why=each.why,
            because=because_words(each.why, formula),
            film=film_words(each.film),
            recipe=page,
            revision=number,
        )


def _beside(formula: Formula, settings: Settings, ledger: Ledger, titles: Titles) -> Iterator[CorrectionView]:
    """What the ledger tells that no entry of the file does."""
    page = PageLink(title=formula.about.title, path=recipe_path(formula.name))
    revisions = ledger.revisions(formula.name)
    for before, after in pairwise(revisions):
        if after.corrections > before.corrections:
            continue
        change = _ledgers_words(before, after, formula, settings)
        if change:
            yield CorrectionView(
                on=after.on,
                day=day_words(after.on),
                change=change,
                why=after.why,
                because=_ledgers_reason(after, formula, titles),
                film="",
                recipe=page,
                revision=after.number,
            )


def _ledgers_words(before: Revision, after: Revision, formula: Formula, settings: Settings) -> str:
    stated = read_change(after.what) if after.cause == "undo" else None
    if stated is not None:
        what, old, new = worded(stated, formula, settings)
        return f"{what} {old} {ARROW} {new}"
    told = _for_readers(told_changes(before.facts, after.facts))
    words = [_words(each, before.facts, after.facts, formula, settings) for each in told]
    more = (
        say(" and {number} changes more", number=len(words) - _MOST_TOLD) if len(words) > _MOST_TOLD else ""
    )
    return "; ".join(words[:_MOST_TOLD]) + more


def _ledgers_reason(after: Revision, formula: Formula, titles: Titles) -> str:
    why = because_words(after.why, formula) if after.why != _TAKEN_BACK else ""
    source = after.what.partition(":")[0]
    lead: Mapping[Cause, str] = {
        "component": say("its {title} was corrected", title=titles.get(source, source)),
        "pantry": say("what is known of a pack was corrected"),
        "undo": say("an earlier correction was taken back"),
    }
    return ": ".join(each for each in (lead.get(after.cause, ""), why) if each)


def since_views(formula: Formula, facts: Facts, settings: Settings, ledger: Ledger) -> tuple[SinceView, ...]:
    """One for every earlier revision, the newest first. `facts` are today's."""
    current = revision_of(formula, ledger).number
    return tuple(_since(number, formula, facts, settings, ledger) for number in range(current - 1, 0, -1))


def _since(number: int, formula: Formula, facts: Facts, settings: Settings, ledger: Ledger) -> SinceView:
    then, is_whole = _kept(number, ledger.revisions(formula.name))
    told = _for_readers(told_changes(then, facts)) if then else ()
    before = () if is_whole else tuple(_earlier(number, formula, settings, ledger))
    loud, quiet = (
        tuple(_words(each, then, facts, formula, settings) for each in told if each.harm in harms)
        for harms in (_LOUD, (Harm.AMOUNTS, Harm.WORDS))
    )
    return SinceView(number=number, alarms=loud, changes=tuple(dict.fromkeys((*before, *quiet))))


def _for_readers(told: tuple[Told, ...]) -> tuple[Told, ...]:
    """What a reader of an older copy must know; where that is nothing, what its label and its keeping say now."""
    grave = tuple(each for each in told if each.harm <= Harm.AMOUNTS)
    return grave or tuple(each for each in told if each.kind in _BESIDE)


def _kept(number: int, revisions: tuple[Revision, ...]) -> tuple[Facts, bool]:
    """The facts of a revision; else the oldest that are kept, and false: they do not tell all that changed since."""
    known = [each for each in revisions if each.facts]
    own = [each for each in known if each.number <= number]
    if own:
        return own[-1].facts, True
    return (known[0].facts if known else {}), False


@dataclass(frozen=True, slots=True, kw_only=True)
class _Net:
    """What several corrections of one thing come to; `text` where a correction states no values."""

    of: str
    what: str
    old: str
    new: str
    text: str = ""


def _earlier(number: int, formula: Formula, settings: Settings, ledger: Ledger) -> Iterator[str]:
    """The corrections after revision `number` that are older than the ledger, those of one thing as one."""
    revisions = ledger.revisions(formula.name)
    count = revisions[0].corrections if revisions else len(formula.about.corrections)
    nets: list[_Net] = []
    for each in (each for each, made in numbered(formula, ledger)[:count] if made > number):
        change = read_change(each.change)
        if change is None:
            words = change_words(each, formula, settings)
            nets.append(_Net(of="", what="", old="", new="", text=words))
            continue
        what, old, new = worded(change, formula, settings)
        net = _Net(of=fold(change.what), what=what, old=old, new=new)
        at = next((at for at, one in enumerate(nets) if one.of == net.of and one.new == old), None)
        if at is None:
            nets.append(net)
        else:
            nets[at] = replace(nets[at], new=new)
    yield from (
        each.text or f"{each.what} {each.old} {ARROW} {each.new}"
        for each in nets
        if each.text or each.old != each.new
    )


def _words(told: Told, before: Facts, after: Facts, formula: Formula, settings: Settings) -> str:
    """The words of a change; of an amount that was weighed before and after, in both measures."""
    if told.kind != "line":
        return told.words
    line = next((each for each in formula.lines if f"{each.part}/{each.item}" == told.subject), None)
    ends = [_grams(facts, told.subject) for facts in (before, after)]
    if line is None or line.grams is None or not line.grams.is_exact or line.grams.low <= 0 or None in ends:
        return told.words
    old, new = (amount_of(line, each / line.grams.low, settings) for each in ends if each is not None)
    return f"{named(line, formula)} {old} {ARROW} {new}" if old != new else told.words


def _grams(facts: Facts, key: str) -> Fraction | None:
    """The exact weight that the facts tell of a line."""
    lines = facts.get("lines")
    line = lines.get(key) if isinstance(lines, Mapping) else None
    ends = numbers(line.get("grams")) if isinstance(line, Mapping) else None
    return Fraction(str(ends[0])) if ends and ends[0] == ends[1] and ends[0] > 0 else None
