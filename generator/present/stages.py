"""A timed stage worded so that it reads in its sentence.

“{rise 40 min}” is “rise 40 min” among other words, “Rise 40 min.” where it stands alone, and the time by itself
where the sentence has the verb already: “Bake at 350 °F, 30 min, then at 325 °F, 20–30 min”.
"""

import re

from generator.formula.model import Timed
from generator.present.durations import minutes_words

_SENTENCE_END = re.compile(r"[.!?][\"”’)]?(?:\s+|$)|\n\s*(?:\n|[-*] )")
_PREPOSITION = frozenset(
    {"for", "another", "about", "after", "of", "further", "least", "every", "in", "within"}
)
_WORD = re.compile(r"\w+")
_NOTHING_FOLLOWS = re.compile(r"\s*(?:$|\n|(?=[A-Z\ue000]))")
_FORMS = {
    "bake": "bake bakes baking baked",
    "rise": "rise rises rising",
    "rest": "rest rests resting",
    "knead": "knead kneads kneading",
    "mix": "mix mixes mixing",
    "cook": "cook cooks cooking",
    "chill": "chill chills chilling",
    "freeze": "freeze freezes freezing",
    "cool": "cool cools cooling",
    "work": "work works working",
}


def stage_words(stage: Timed, *, before: str, after: str) -> str:
    """The words for a stage. `before` is the passage up to it with all worded, `after` the Markdown that follows."""
    time = minutes_words(stage.duration.minutes)
    sentence = _SENTENCE_END.split(before)[-1]
    words = [word.casefold() for word in _WORD.findall(sentence)]
    if words and (words[-1] in _PREPOSITION or any(word in _FORMS[stage.kind].split() for word in words)):
        return time
    if words:
        return f"{stage.kind} {time}"
    alone = _NOTHING_FOLLOWS.match(after) is not None
    return f"{stage.kind.capitalize()} {time}" + ("." if alone else "")
