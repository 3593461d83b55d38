"""What else goes with a film, read back: the short block, the comment to pin, the chapter file (WebVTT)."""

import re
from collections.abc import Callable, Iterator, Mapping

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import whole_file
from generator.present.views import RecipeView
from generator.proof.built_text import lines_of
from generator.proof.claim import WORDS, Claim, claim
from generator.proof.compare import missing
from generator.proof.declared_claims import described_label
from generator.proof.docket_claims import caution_claims, correction_claims
from generator.proof.expected import Expected
from generator.proof.texts import block_faults, cautions_of

_STAYS = frozenset({"allergens", "kitchen", "advice", "cautions", ""})
_CUE = re.compile(r"(\d+):([0-5]\d):([0-5]\d)\.000 --> (\d+):([0-5]\d):([0-5]\d)\.000\n(.+)\n")
_ESCAPED = {"&lt;": "<", "&gt;": ">", "&amp;": "&"}
Reader = Callable[[str, bytes, RecipeView, Expected], Diagnostics]


def short_faults(path: str, content: bytes, view: RecipeView, expected: Expected) -> Diagnostics:
    """The short block: cautions, allergens and the page's address are in it whatever its limit."""
    return block_faults(path, content, view, expected, limit=expected.short_limit, stays=_STAYS)


def comment_faults(path: str, content: bytes, view: RecipeView, expected: Expected) -> Diagnostics:
    """The comment: the newest correction and a change of allergens, or else cautions and allergens; and the page."""
    text = lines_of(path, content.decode("utf-8").split("\n"))
    return missing(text, tuple(_commented(view)), remedy=expected.remedy)


def _commented(view: RecipeView) -> Iterator[Claim]:
    yield from claim("the address of the page", view.url, kind=WORDS, loose=True)
    if not view.corrections and not any(each.alarms or each.changes for each in view.since):
        yield from caution_claims(dict.fromkeys(cautions_of(view)))
        yield from described_label(view)
        return
    yield from list(correction_claims(view))[:1]
    for words in view.since[-1].alarms if view.since else ():
        yield from claim("what changed of allergens", words, kind=WORDS, loose=True)


def chapter_faults(path: str, content: bytes, view: RecipeView, expected: Expected) -> Diagnostics:
    """Every cue against its chapter. ValueError: no chapter file."""
    text = content.decode("utf-8")
    if not text.startswith("WEBVTT\n\n"):
        raise ValueError("no WebVTT")
    said = [_cue(found) for found in _CUE.finditer(text)]
    meant = [
        (each.seconds, each.end_seconds, " ".join(each.title.split())) for each in view.videos[0].chapters
    ]
    wrong = [f"the chapters have a cue that is none of them: {each}" for each in said if each not in meant]
    wrong += [f"no cue of the chapters is: {each}" for each in meant if each not in said]
    span = whole_file(path)
    return tuple(Diagnostic(code="A005", message=each, span=span, hint=expected.remedy) for each in wrong)


def _cue(found: re.Match[str]) -> tuple[int, int, str]:
    hours, minutes, seconds, to_hours, to_minutes, to_seconds = (int(each) for each in found.groups()[:6])
    title = re.sub("|".join(_ESCAPED), lambda sign: _ESCAPED[sign[0]], found[7])
    start = hours * 3600 + minutes * 60 + seconds
    return (start, to_hours * 3600 + to_minutes * 60 + to_seconds, title)


READERS: Mapping[str, Reader] = {
    "short": short_faults,
    "comment": comment_faults,
    "chapters": chapter_faults,
}
