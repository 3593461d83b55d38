"""Recipe files as many editors and habits leave them, with the place of what will be corrected marked."""

from dataclasses import dataclass

from hypothesis import strategies as st

AMOUNT, SECOND = "\x01", "\x02"
"""Stand in a template for the amount that is corrected, and for the second measure of its line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """`template` is the file with the two marks in it; `first` and `second` are what stands there before."""

    template: str
    item: str
    first: str
    second: str
    typed: str
    encoded_mark: bool

    def text(self, first: str, second: str) -> str:
        return self.template.replace(AMOUNT, first).replace(SECOND, second)

    @property
    def data(self) -> bytes:
        return (b"\xef\xbb\xbf" if self.encoded_mark else b"") + self.text(self.first, self.second).encode()


_CASES = (
    ("all-purpose flour", "500 g", "4 cups", "520 g"),
    ("all-purpose flour", "500 g", "4 cups", "437.5 g"),
    ("water", "300 g", "1 1/4 cups", "350 g"),
    ("water", "300 g", "1¼ cups", "1/2 lb"),
    ("table salt", "9 g", "1 1/2 tsp", "6-9 g"),
    ("table salt", "9 g", "1½ tsp", "12 g"),
)
_LINES = {
    "all-purpose flour": "500 g all-purpose flour",
    "water": "300 g water, cool",
    "table salt": "9 g table salt",
    "eggs": "2 large eggs",
}
_COMMENTS = ("", "  # weighed twice", "   #", " # 500 g, says the pack: {not a reference}")


def _spelled(line: str, form: str, comment: str, pad: str) -> str:
    if form == "double":
        return f'"{line}"{comment}'
    if form == "single":
        return f"'{line}'{comment}"
    if form == "flow":
        return f'{{line: "{line}", note: Sifted.}}{comment}'
    if form == "flow plain" and "," not in line:
        return f"{{note: Sifted,  line: {line} }}{comment}"
    if form == "block":
        return f"line:   {line}{comment}\n{pad}note: 'It is weighed.'"
    return f"{line}{comment}"


@st.composite
def layouts(draw: st.DrawFn) -> Layout:
    item, first, second, typed = draw(st.sampled_from(_CASES))
    forms = st.sampled_from(["plain", "double", "single", "flow", "flow plain", "block"])
    base = " " * draw(st.sampled_from([0, 0, 2, 3]))
    step = " " * draw(st.sampled_from([0, 2, 4]))
    gap = " " * draw(st.integers(1, 3))
    beside = draw(st.booleans())
    lines = []
    for name, line in _LINES.items():
        if name == item:
            bracket = f" ({SECOND})" if beside else ""
            after = draw(st.sampled_from(["", ", at room temperature"]))
            line = (
                f"{AMOUNT}{bracket} {name}{after}"
                if draw(st.booleans())
                else f"{AMOUNT} {name}{bracket}{after}"
            )
        dash = f"{base}{step}-{gap}"
        spelled = _spelled(line, draw(forms), draw(st.sampled_from(_COMMENTS)), " " * len(dash))
        lines.append(f"{dash}{spelled}")
        if draw(st.integers(0, 4)) == 0:
            lines.append(draw(st.sampled_from(["", f"{base}{step}# a line of its own", "#"])))
    head = [f"{base}title: Plain loaf", f"{base}published: 2026-09-12   # a Saturday", f"{base}formula:"]
    tail = draw(st.sampled_from([[], [f"{base}keeps: '3 days'"], [f"{base}# the end", ""]]))
    entries = _entries(draw, base, step)
    front = (
        [*head, *lines, *entries, *tail]
        if draw(st.booleans())
        else [*head[:2], *entries, head[2], *lines, *tail]
    )
    body = [
        "Text with a  trailing blank. ",
        "## Method",
        "1. Mix {all-purpose flour}, {water}, {table salt} and {eggs}.   {bake 30 min} at {oven 400 F}.",
        "",
        "\t## not a heading",
    ]
    end = draw(st.sampled_from(["", "\n", "\n\n\n"]))
    text = "\n".join(["---", *front, "---", *body]) + end
    return Layout(
        template=_with_ends(draw, text),
        item=item,
        first=first,
        second=second,
        typed=typed,
        encoded_mark=draw(st.booleans()),
    )


def _entries(draw: st.DrawFn, base: str, step: str) -> list[str]:
    """Corrections in every form that is a list, or none."""
    old = ["on: 2026-09-20", "change: eggs 1 -> 2", "why: 'Too dry: said so'"]
    block = [
        f"{base}corrections:  # for readers",
        f"{base}{step}- {old[0]}",
        f"{base}{step}  {old[1]}",
        f"{base}{step}  {old[2]}   # yes",
    ]
    return draw(
        st.sampled_from(
            [
                [],
                block,
                [f"{base}corrections:", f"{base}{step}-   {{{', '.join(old)}}}  # short"],
                [f"{base}corrections: [{{{', '.join(old)}}} ]  # flow"],
                [f"{base}corrections: []"],
                [f"{base}corrections:   # none yet"],
            ]
        )
    )


def _with_ends(draw: st.DrawFn, text: str) -> str:
    """One kind of line end throughout, or the two of a file that two systems have edited."""
    ends = draw(st.sampled_from(["\n", "\r\n", "mixed"]))
    if ends != "mixed":
        return text.replace("\n", ends)
    pieces = text.split("\n")
    return "".join(
        each + ("\r\n" if number % 2 else "\n") if number + 1 < len(pieces) else each
        for number, each in enumerate(pieces)
    )
