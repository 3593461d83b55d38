"""One change of a text taken over into another that has been edited since: by lines, or not at all."""

from difflib import SequenceMatcher


def merged(base: str, mine: str, theirs: str) -> str | None:
    """`mine` with what led from `base` to `theirs`; None where an edit of `mine` touches the same lines."""
    if mine == base:
        return theirs
    old, own, new = (text.splitlines(keepends=True) for text in (base, mine, theirs))
    kept = SequenceMatcher(None, old, own, autojunk=False).get_matching_blocks()
    pieces, last = [], 0
    for tag, first, end, start, stop in SequenceMatcher(None, old, new, autojunk=False).get_opcodes():
        if tag == "equal":
            continue
        block = next((each for each in kept if each.a <= first and end <= each.a + each.size), None)
        if block is None:
            return None
        shift = block.b - block.a
        pieces += own[last : first + shift] + new[start:stop]
        last = end + shift
    return "".join((*pieces, *own[last:]))
