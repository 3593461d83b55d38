"""The short text for a comment below a film: what was corrected, why, what the film shows, where all of it stands.

A change of allergens stands first and is never left out; then the newest correction, then older ones as long as there
is room. The page's address is always the last line.
"""

from collections.abc import Iterator

from generator.present.views import CorrectionView, RecipeView
from generator.render.description.plain import address, plain, size
from generator.render.plain_words import correction_words, sentence
from generator.wording.speech import later, say, say_many

LIMIT = 1000
"""Bytes: about what is seen of a comment before it is folded, with room for one long reason (our own figure)."""


_ALARM = later("ALLERGENS AND CAUTIONS, changed since revision {revision}: {words}")


def correction_note(view: RecipeView, *, limit: int = LIMIT) -> str:
    """The text with a line end; "" where nothing has been corrected."""
    if not view.corrections and not any(each.alarms or each.changes for each in view.since):
        return ""
    first, last = tuple(_alarms(view)), _where(view)
    entries = [
        plain(say("Corrected {day}: {words}", day=each.day, words=correction_words(each)))
        for each in view.corrections
    ]
    for count in range(len(entries), -1, -1):
        text = _joined((*first, *entries[:count], *_left_out(len(entries) - count, any_told=count > 0), last))
        if size(text) <= limit and (count or not entries):
            return text
    short = (plain(_bare(view.corrections[0])),) if view.corrections else ()
    text = _joined((*first, *short, *_left_out(len(entries) - 1, any_told=True), last))
    return text if size(text) <= limit else _joined((*first, *_left_out(len(entries), any_told=False), last))


def _alarms(view: RecipeView) -> Iterator[str]:
    """What changed of allergens and cautions since the oldest copy there can be."""
    oldest = view.since[-1] if view.since else None
    if oldest is not None and oldest.alarms:
        words = "; ".join(oldest.alarms)
        yield plain(say(_ALARM, revision=oldest.number, words=sentence(words)))


def _bare(each: CorrectionView) -> str:
    return say("Corrected {day}: {words}", day=each.day, words=f"{each.change}.")


def _left_out(count: int, *, any_told: bool) -> Iterator[str]:
    if count > 0:
        if any_told:
            yield say_many(
                "{count} earlier correction: see the page.",
                "{count} earlier corrections: see the page.",
                count,
            )
        else:
            yield say_many("{count} correction: see the page.", "{count} corrections: see the page.", count)


def _where(view: RecipeView) -> str:
    anchor = view.since[-1].anchor if view.since else "leaf-corrections"
    there = f"{address(view.url)}#{anchor}"
    return say(
        "The recipe stands at revision {revision} now: {address}", revision=view.revision, address=there
    )


def _joined(lines: tuple[str, ...]) -> str:
    return "\n".join(lines) + "\n"
