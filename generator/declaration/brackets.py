"""Where an item of a label's list begins and ends: commas and brackets, never a guess about meaning."""

OPEN, CLOSE = "([{", ")]}"
_BETWEEN = ",;\n|"


def ends_sentence(text: str, index: int) -> bool:
    """Whether the character ends a sentence; the point of `1.5` does not."""
    character = text[index]
    if character in "\n!?":
        return True
    return character == "." and (index + 1 == len(text) or not text[index + 1].isalnum())


def depth_at(text: str, index: int) -> int:
    """How many brackets stand open before `index`; a stray closing one is passed over."""
    depth = 0
    for character in text[:index]:
        if character in OPEN:
            depth += 1
        elif character in CLOSE:
            depth = max(0, depth - 1)
    return depth


def item_at(text: str, index: int) -> tuple[int, int]:
    """Start and end of the item of a list that holds `index`, its own brackets included."""
    return _item_start(text, index), _item_end(text, index)


def sentence_end(text: str, start: int) -> int:
    """Where the sentence running at `start` ends: a full stop, a line's end, or the bracket that holds it."""
    depth = 0
    for index in range(start, len(text)):
        character = text[index]
        if character in OPEN:
            depth += 1
        elif character in CLOSE:
            if depth == 0:
                return index
            depth -= 1
        elif depth == 0 and ends_sentence(text, index):
            return index
    return len(text)


def sentence_start(text: str, index: int) -> int:
    """Where the sentence that holds `index` begins: after a full stop, or after the bracket that holds it."""
    depth = 0
    for at in range(index - 1, -1, -1):
        character = text[at]
        if character in CLOSE:
            depth += 1
        elif character in OPEN:
            if depth == 0:
                return at + 1
            depth -= 1
        elif depth == 0 and ends_sentence(text, at):
            return at + 1
    return 0


def split_items(text: str) -> tuple[str, ...]:
    """The items between top-level commas and semicolons, stripped, empty ones left out."""
    pieces: list[str] = []
    depth, start = 0, 0
    for index, character in enumerate(text):
        if character in OPEN:
            depth += 1
        elif character in CLOSE:
            depth = max(0, depth - 1)
        elif character in ",;" and depth == 0:
            pieces.append(text[start:index])
            start = index + 1
    pieces.append(text[start:])
    return tuple(each.strip() for each in pieces if each.strip())


def bracketed(text: str) -> str:
    """Everything in brackets, at any depth, joined by spaces."""
    inside, depth = [], 0
    for character in text:
        if character in OPEN:
            depth += 1
            inside.append(" ")
        elif character in CLOSE:
            depth = max(0, depth - 1)
            inside.append(" ")
        elif depth:
            inside.append(character)
    return " ".join("".join(inside).split())


def name_end(text: str, index: int) -> int:
    """Where the bare name that runs at `index` ends: at a bracket, a comma, a colon, a stop, or an `and`."""
    for at in range(index, len(text)):
        if text[at] in OPEN + CLOSE + ",;:|" or ends_sentence(text, at):
            return _trimmed(text, index, at)
        if text[at] == " " and text[at + 1 :].startswith(("and ", "or ", "and/or ", "& ", "from ")):
            return at
    return _trimmed(text, index, len(text))


def _trimmed(text: str, start: int, end: int) -> int:
    while end > start and text[end - 1].isspace():
        end -= 1
    return end


def _item_start(text: str, index: int) -> int:
    depth = 0
    for at in range(index - 1, -1, -1):
        character = text[at]
        if character in CLOSE:
            depth += 1
        elif character in OPEN:
            if depth == 0:
                return at + 1
            depth -= 1
        elif depth == 0 and (character in _BETWEEN or ends_sentence(text, at)):
            return at + 1
    return 0


def _item_end(text: str, index: int) -> int:
    depth = 0
    for at in range(index, len(text)):
        character = text[at]
        if character in OPEN:
            depth += 1
        elif character in CLOSE:
            if depth == 0:
                return at
            depth -= 1
        elif depth == 0 and (character in _BETWEEN or ends_sentence(text, at)):
            return at
    return len(text)
