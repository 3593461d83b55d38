"""A timed stage worded so that it reads in its sentence.

“{rise 40 min}” is “rise 40 min” among other words, “Rise 40 min.” where it stands alone, and the time by itself
where the sentence has the verb already: “Bake at 350 °F, 30 min, then at 325 °F, 20–30 min”.
"""

import re

from generator.formula.model import Timed
from generator.present.durations import minutes_words
from generator.wording.speech import later, say

_SENTENCE_END = re.compile(r"[.!?][\"”’)]?(?:\s+|$)|\n\s*(?:\n|[-*] )")
_BEFORE_A_TIME = later("for another about after of further least every in within")
"""Words that a bare time follows."""
_WORD = re.compile(r"\w+")
_NOTHING_FOLLOWS = re.compile(r"\s*(?:$|\n|(?=[A-Z\ue000]))")
# How a stage is asked for, and the forms of its verb.
_SAID = {
    "bake": (later("bake {time}"), later("bake bakes baking baked")),
    "rise": (later("rise {time}"), later("rise rises rising")),
    "rest": (later("rest {time}"), later("rest rests resting")),
    "knead": (later("knead {time}"), later("knead kneads kneading")),
    "mix": (later("mix {time}"), later("mix mixes mixing")),
    "cook": (later("cook {time}"), later("cook cooks cooking")),
    "chill": (later("chill {time}"), later("chill chills chilling")),
    "freeze": (later("freeze {time}"), later("freeze freezes freezing")),
    "cool": (later("cool {time}"), later("cool cools cooling")),
    "work": (later("work {time}"), later("work works working")),
}


def stage_words(stage: Timed, *, before: str, after: str) -> str:
    """The words for a stage. `before` is the passage up to it with all worded, `after` the Markdown that follows."""
    time = minutes_words(stage.duration.minutes)
    sentence = _SENTENCE_END.split(before)[-1]
    words = [word.casefold() for word in _WORD.findall(sentence)]
    asked, forms = _SAID[stage.kind]
    if words and (
        words[-1] in say(_BEFORE_A_TIME).split() or any(word in say(forms).split() for word in words)
    ):
        return time
    said = say(asked, time=time)
    if words:
        return said
    alone = _NOTHING_FOLLOWS.match(after) is not None
    return said[:1].upper() + said[1:] + ("." if alone else "")
