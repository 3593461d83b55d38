"""Pages, style sheets and scripts without what only their writer needs: comments, indentation, needless quotes.

Small steps that cannot change a meaning, and no more: nothing is renamed or reordered.
"""

import re
from functools import lru_cache

_PIECES = re.compile(r"/\*.*?\*/|\"(?:\\.|[^\"\\])*\"|'(?:\\.|[^'\\])*'|url\([^)\"']*\)", re.S)
_BLANK = re.compile(r"\s+")
# A blank beside these separates nothing. Before a colon, a plus and a parenthesis it may mean something.
_AROUND = re.compile(r" ?([{};,>]) ?")
_AFTER_COLON = re.compile(r": ")
_ZERO = re.compile(r"(?<![\w.])0\.(?=\d)")
# A pattern, a remark, a text in other quotes or with an escaped sign.
_UNCLEAR = re.compile(r"['`/\\]")
_TEXT = re.compile(r'("[^"]*")')
# Without plus and minus: two of them beside each other would be another sign.
_SIGNS = re.compile(r" ?([=<>!&|?:,{}();\[\]]) ?")
_LAST = re.compile(r";+}")


def slim_css(text: str) -> str:
    """The same rules in fewer bytes; strings and addresses stay as they are."""
    kept: list[str] = []

    def put_aside(found: re.Match[str]) -> str:
        if found[0].startswith("/*"):
            return " "
        kept.append(found[0])
        return f"\ue000{len(kept) - 1}\ue001"

    bare = _BLANK.sub(" ", _PIECES.sub(put_aside, text)).strip()
    for pattern, shorter in ((_AROUND, r"\1"), (_AFTER_COLON, ":"), (_ZERO, "."), (_LAST, "}")):
        bare = pattern.sub(shorter, bare)
    return re.sub("\ue000(\\d+)\ue001", lambda found: kept[int(found[1])], bare)


def slim_js(text: str) -> str:
    """The same script without indentation, blank lines and lines that only comment.

    A script with a text over several lines, where indentation counts, stays as it is.
    """
    lines = text.splitlines()
    if any(line.count("`") % 2 for line in lines) or "/*" in text:
        return text
    stripped = (line.strip() for line in lines)
    return "\n".join(_tight(line) for line in stripped if line and not line.startswith("//")) + "\n"


def _tight(line: str) -> str:
    """The line without blanks beside signs, where nothing but plain texts could be mistaken for signs."""
    if _UNCLEAR.search(line):
        return line
    code = _TEXT.split(line)
    return "".join(piece if at % 2 else _SIGNS.sub(r"\1", piece) for at, piece in enumerate(code))


_BOX = re.compile(r'<input type="(checkbox|radio)"')
_EMPTY_LINES = re.compile(r"\n\s*\n")
# A line end before or after these is never drawn: they stand as blocks, as cells, or in the head.
_BLOCKS = (
    "article|aside|body|caption|col|colgroup|details|div|dl|figure|footer|form|h[1-6]|head|header|html|link|main|meta|nav"
    "|ol|p|script|section|table|tbody|td|tfoot|th|thead|title|tr|ul"
)
_LINE_ENDS = re.compile(rf"\n(?:(?<=>\n)(?=</?(?:{_BLOCKS})[ >])|(?=</(?:{_BLOCKS})>))")
_UNTOUCHED = re.compile(r"(<(script|style|pre|textarea)\b[^>]*>.*?</\2>)", re.S)
_TAG = re.compile(r"<[a-z][a-z0-9]*(?: [a-z-]+(?:=\"[^\"<>]*\")?)+>")
# A value of these signs needs no quotes (HTML, 13.1.2.3). Those of addresses and names are kept: simple readers of
# pages look for them.
_QUOTED = re.compile(
    r"(?<= )(class|id|data-[a-z]+|scope|for|aria-[a-z]+|role|value|width|height|loading|decoding|[xy][12]?)="
    r'"([A-Za-z0-9_.#:/-]*[A-Za-z0-9_.#:-])"(?=[ >])'
)


def slim_html(text: str) -> str:
    """The same elements, attributes and words; needless quotes go, and line ends that nobody sees."""
    pieces = _UNTOUCHED.split(text)
    # Every third piece is between two untouched elements; the second of each three only names the element.
    return "".join(
        _TAG.sub(_bare, _LINE_ENDS.sub("", _EMPTY_LINES.sub("\n", piece))) if at % 3 == 0 else piece
        for at, piece in enumerate(pieces)
        if at % 3 != 2
    )


def _bare(tag: re.Match[str]) -> str:
    return _slim_tag(tag[0])


@lru_cache(maxsize=1 << 12)
def _slim_tag(tag: str) -> str:
    """The same few hundred tags stand in most pages."""
    return _BOX.sub(r"<input type=\1", _QUOTED.sub(r"\1=\2", tag))
