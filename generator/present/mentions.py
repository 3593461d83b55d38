"""References worded for a sentence: what stands in the prose where the maker wrote braces."""

import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from functools import lru_cache, partial

from generator.formula.model import Heat, Line, Measure, Timed, Use, WholePart, Words
from generator.measure.same import Same
from generator.measure.unit import Spoons
from generator.present.durations import length_words, minutes_words
from generator.present.heats import heat_mention
from generator.present.measures import use_amount
from generator.present.plain import PLACE, plain_words
from generator.present.stages import stage_words
from generator.present.views import Amount, MentionView, Rich, UseView
from generator.settings import Settings
from generator.wording.forms import all_of
from generator.wording.speech import say, voice
from generator.wording.vocabulary import said

_MOST_NAMED = 3
_LETTER, _DIGIT = re.compile("[A-Za-z]"), re.compile(r"\d")


def rich(words: Words, *, settings: Settings, spoons: Spoons) -> Rich:
    """The passage with its mentions worded, and the same as plain text."""
    return _rich(Same(words), Same(settings), Same(spoons), voice().tag)


@lru_cache(maxsize=512)
def _rich(of: Same[Words], by: Same[Settings], in_spoons: Same[Spoons], language: str) -> Rich:
    """The page and the numbers of a recipe ask for the same passages; `language` keeps those of one apart."""
    words, settings, spoons = of.thing, by.thing, in_spoons.thing
    views: list[MentionView] = []
    before, at = "", 0
    for found in PLACE.finditer(words.markdown):
        before += words.markdown[at : found.start()]
        at = found.end()
        mention, after = words.mentions[int(found.group(1))], words.markdown[at:]
        if isinstance(mention, Timed):
            views.append(_stage(mention, before, after))
        else:
            views.append(_worded(mention, settings=settings, spoons=spoons))
        before += views[-1].text
    markdown = _renumbered(words.markdown)
    return Rich(markdown=markdown, mentions=tuple(views), plain=plain_words(markdown, views))


def amount_mentions(words: Words) -> Iterator[Use | WholePart]:
    """The references with amounts, in the order in which they stand in the passage."""
    if not any(isinstance(each, Use | WholePart) for each in words.mentions):
        return
    for found in PLACE.finditer(words.markdown):
        mention = words.mentions[int(found.group(1))]
        if isinstance(mention, Use | WholePart):
            yield mention


def amount_mention(mention: Use | WholePart, amount_of: Callable[[Use], Amount]) -> MentionView:
    """What stands in the sentence for an amount."""
    if isinstance(mention, Use):
        return _use(mention, amount_of(mention))
    return _part(mention, amount_of)


def uses_of(words: Words) -> Iterator[Use]:
    """Every amount that stands beside a step."""
    for mention in words.mentions:
        if isinstance(mention, Use):
            yield mention
        elif isinstance(mention, WholePart):
            yield from mention.uses


def _renumbered(markdown: str) -> str:
    """Placeholders counted in the order in which they stand."""
    counter = iter(range(len(markdown)))
    return PLACE.sub(lambda found: f"\ue000{next(counter)}\ue001", markdown)


def _stage(stage: Timed, before: str, after: str) -> MentionView:
    words = stage_words(stage, before=before, after=after)
    return MentionView(kind="stage", lead=words, tail="", minutes=_timer(stage.duration.minutes.high))


def _worded(mention: Use | WholePart | Heat | Measure, *, settings: Settings, spoons: Spoons) -> MentionView:
    if isinstance(mention, Use | WholePart):
        return amount_mention(mention, partial(use_amount, settings=settings, spoons=spoons))
    if isinstance(mention, Heat):
        return heat_mention(mention, oven_c=settings.oven_c)
    return _measure(mention)


def _measure(mention: Measure) -> MentionView:
    if mention.duration is not None:
        minutes = mention.duration.minutes
        return MentionView(kind="measure", lead=minutes_words(minutes), tail="", minutes=_timer(minutes.high))
    if mention.length is None:
        return MentionView(kind="measure", lead="", tail="")
    stated, other = length_words(mention.length)
    return MentionView(kind="measure", lead=stated, tail=other)


def _timer(minutes: Fraction) -> int | None:
    """Whole minutes for a timer; none for times that are no whole minutes."""
    return int(minutes) if minutes.denominator == 1 and minutes > 0 else None


def _use(use: Use, amount: Amount) -> MentionView:
    if use.extra:
        lead = say("{amount} of {item}", amount=say(use.words) or amount.first, item=use.item)
        tail = amount.weight if use.words else amount.second
        return MentionView(kind="extra", lead=lead, tail=tail)
    return MentionView(kind="ingredient", lead=use.item, tail=_tail(use, amount))


def _tail(use: Use, amount: Amount) -> str:
    """The amount in a sentence: one measure, save that pieces are told with their weight."""
    words = amount.first or amount.second
    if use.count is not None and amount.weight and amount.volume:
        words = f"{amount.volume}, {amount.weight}"
    share = _share_words(use)
    optional = say("optional") if use.line is not None and use.line.optional else ""
    return ", ".join(part for part in (words, share, optional) if part)


def _share_words(use: Use) -> str:
    if use.share in ("all", "part", "extra"):
        return ""
    if use.share == "rest":
        return say("the rest")
    return "" if _LETTER.search(use.share) and _DIGIT.search(use.share) else said(use.share)


def _part(whole: WholePart, amount_of: Callable[[Use], Amount]) -> MentionView:
    if len(whole.uses) > _MOST_NAMED:
        return MentionView(kind="part", lead=whole.part, tail=say("all of it"))
    named = (_named(use, amount_of(use)) for use in whole.uses)
    return MentionView(kind="part", lead=whole.part, tail=all_of(named))


def _named(use: Use, amount: Amount) -> str:
    """“30 g walnuts, optional”, “4 large eggs”, “a pinch of salt”, “salt, to taste”."""
    words = amount.volume if use.count is not None and amount.volume else amount.first or amount.second
    if use.grams is None and use.count is None and use.millilitres is None:
        linked = linked_words(words, use.item) if is_article(use.line) else f"{use.item}, {words}".strip(", ")
    else:
        linked = f"{words} {use.item}"
    return say("{line}, optional", line=linked) if use.line is not None and use.line.optional else linked


def is_article(line: Line | None) -> bool:
    """Whether a line's amount reads as “a pinch of”, however it is worded."""
    return line is not None and line.written.words.startswith("a ")


def linked_words(amount: str, item: str) -> str:
    """“a pinch of salt”."""
    return say("{amount} of {item}", amount=amount, item=item)


def use_views(words: Words, *, settings: Settings, spoons: Spoons) -> tuple[UseView, ...]:
    """The amounts that stand beside a step."""
    return tuple(_use_view(use, settings=settings, spoons=spoons) for use in uses_of(words))


def _use_view(use: Use, *, settings: Settings, spoons: Spoons) -> UseView:
    remark = say("as needed, beyond the formula") if use.extra else _share_words(use)
    if use.line is not None and use.line.optional and not use.extra:
        remark = ", ".join(part for part in (remark, say("optional")) if part)
    return UseView(
        item=use.item,
        amount=use_amount(use, settings=settings, spoons=spoons),
        remark=remark,
        extra=use.extra,
    )
