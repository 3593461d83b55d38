"""A second choice in an ingredient line: `walnuts or pecans`, `butter (or 40 ml oil)`, `walnuts/pecans`."""

import re

from generator.importer.line.known import known
from generator.importer.line.tidy import one_line
from generator.importer.line.work import Work, written_of
from generator.measure.quantity import read_quantity

_LOOSE = r"(?!to taste|as needed|more\b|less\b|so\b|thereabouts)"
_OR = re.compile(rf"\s+(?:or|oder|ou|oppure)\s+{_LOOSE}", re.I)
_OR_BRACKET = re.compile(rf"\s*\(or\s+{_LOOSE}([^()]+)\)", re.I)
_OR_SLASH = re.compile(r"\s*/\s*(?=[^\W\d])")


def split_choice(text: str, work: Work) -> str:
    """The line without its second choice, which becomes an alternative of its own."""
    bracket = _OR_BRACKET.search(text)
    if bracket:
        first = text[: bracket.start()] + text[bracket.end() :]
        work.alternatives = (_alternative(bracket[1], first, work),)
        return one_line(first)
    depth_free = re.sub(r"\([^()]*\)", lambda each: " " * len(each.group()), text)
    found = _OR.search(depth_free) or _slash_between(depth_free, work)
    if found is None:
        return text
    tail = text[found.end() :]
    apart = (
        text[: found.start()].endswith(",") and known(tail.partition(",")[0].strip(), work.shelf) is not None
    )
    measured = read_quantity(tail, spoons=work.shelf.spoons) is not None and tail[:1] not in "aA"
    if not (apart or measured) and known(written_of(text, work.shelf).item, work.shelf):
        return text
    return _choice_in_words(text, found, work)


def _slash_between(text: str, work: Work) -> "re.Match[str] | None":
    """`walnuts/pecans`: a slash between two names that are known."""
    item = written_of(text, work.shelf).item
    left, _, right = (each.strip() for each in item.partition("/"))
    ours, theirs = known(left, work.shelf), known(right, work.shelf)
    if known(item, work.shelf) or ours is None or theirs is None or ours.ingredient == theirs.ingredient:
        return None
    return _OR_SLASH.search(text, text.find(left) + len(left))


def _choice_in_words(text: str, found: "re.Match[str]", work: Work) -> str:
    head, tail = text[: found.start()].rstrip(" ,"), text[found.end() :]
    own = read_quantity(tail, spoons=work.shelf.spoons)
    left = written_of(head, work.shelf)
    if own is None and not known(left.item, work.shelf):
        # “dark or milk chocolate”: the noun stands behind the second word alone.
        noun = tail.partition(",")[0].split()
        for most in range(1, len(noun)):
            shared = " ".join(noun[most:])
            if known(f"{left.item} {shared}", work.shelf):
                head, comma, rest = f"{head} {shared}", *tail.partition(",")[1:]
                work.alternatives = (" ".join(noun),)
                return one_line(f"{head}{comma}{rest}")
    name, comma, rest = tail.partition(",")
    if own is None:
        work.alternatives = (name.strip(),)
        doubt_choice(name.strip(), work)
        return one_line(f"{head}{comma}{rest}")
    work.alternatives = (tail.strip(),)
    doubt_choice(written_of(tail, work.shelf).item, work)
    return head.strip()


def _alternative(other: str, first: str, work: Work) -> str:
    """`2 small` of `1 large (or 2 small) apples` is two small apples."""
    item = written_of(one_line(first), work.shelf).item
    read = written_of(other, work.shelf)
    if known(read.item, work.shelf) is None and read_quantity(f"{other} {item}", spoons=work.shelf.spoons):
        other = f"{other} {item}"
        read = written_of(other, work.shelf)
    doubt_choice(read.item, work)
    return other


def doubt_choice(item: str, work: Work) -> None:
    if known(item, work.shelf) is None:
        message = f"the second choice “{item}” is not known"
        work.ask(
            "I002", message, "Name it as the catalogue does, or add it to pantry.yaml; mind its allergens."
        )
