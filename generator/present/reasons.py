"""Why something is not known of a bake, for readers: the sentences of `declaration`, in the language that is spoken.

The sentences themselves are kept as they are in English, in recipe.json and in the ledger; here they are known
again, and so is what a row of the catalogue or a word of packs asks. What a language has no words for stays in
English: better read than left out.
"""

import re
from collections.abc import Iterable, Mapping
from functools import cache

from generator.catalogue.load import built_in
from generator.declaration.words import meanings
from generator.wording.speech import later, say, voice

_SENTENCES = (
    later("The recipe “{recipe}” is not there, so what {item} holds is not known."),
    later("{item} has no formula yet: what is in it is not known."),
    later("{item} is not known, so what it holds is not known."),
    later("{item}: say in the pantry what its pack contains."),
    later("{item}: “{words}” does not name the kind of {kind}; read the pack."),
    later("{item}: {asked}; read the pack and say in the pantry what it contains."),
    later("“{words}” does not show where the warning ends (a full stop would)"),
    later("{words} is no word known here"),
    later("{words} are no words known here"),
)


def reasons(told: Iterable[str]) -> tuple[str, ...]:
    """The sentences in their order."""
    return tuple(reason_words(each) for each in told)


def reason_words(reason: str) -> str:
    asked = _asked().get(reason)
    if asked is not None:
        told = say(asked)
        return f"{told[:1].upper()}{told[1:]}."
    if not voice().catalogue:
        return reason
    words = _QUOTED.fullmatch(reason)
    if words is not None and words[2] in _asked_of_words():
        return say("“{words}” {told}", words=words[1], told=say(words[2]))
    for sentence in _SENTENCES:
        found = _pattern(sentence).fullmatch(reason)
        if found is not None:
            values = found.groupdict()
            if "asked" in values:
                values["asked"] = reason_words(values["asked"])
            return say(sentence, **values)
    return reason


_QUOTED = re.compile("“(.+?)” (.+)", re.DOTALL)


@cache
def _asked() -> Mapping[str, str]:
    """What rows of the catalogue ask, as the sentence that is kept of each."""
    asked = (each for row in built_in() for each in row.ask)
    return {f"{each[:1].upper()}{each[1:]}.": each for each in asked}


@cache
def _asked_of_words() -> frozenset[str]:
    return frozenset(each.ask for each in meanings().values() if each.ask)


@cache
def _pattern(sentence: str) -> re.Pattern[str]:
    """Matches what the sentence becomes with any values in its places."""
    return re.compile(re.sub(r"\\\{(\w+)\\\}", r"(?P<\1>.+?)", re.escape(sentence)), re.DOTALL)
