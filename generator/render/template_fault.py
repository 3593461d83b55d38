"""A template that cannot be filled: where, what is wrong, and what to type.

The engine tells the line, and the rest in words for programmers; here they become a finding like any other.
"""

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import fields, is_dataclass
from functools import partial
from itertools import takewhile
from pathlib import Path
from types import FrameType, TracebackType
from typing import Any

from jinja2 import Environment, StrictUndefined, TemplateError, TemplateNotFound, TemplateSyntaxError
from jinja2.defaults import DEFAULT_NAMESPACE
from jinja2.exceptions import SecurityError, UndefinedError

from generator.diagnostics.diagnostic import Diagnostic, did_you_mean, nearest
from generator.diagnostics.span import Span

Shown = Callable[[str | Path], str | None]
"""The path of a theme's file as a maker knows it."""

_TAGS = (
    *(
        "for",
        "endfor",
        "if",
        "elif",
        "else",
        "endif",
        "block",
        "endblock",
        "macro",
        "endmacro",
        "call",
        "endcall",
    ),
    *(
        "set",
        "endset",
        "filter",
        "endfilter",
        "include",
        "import",
        "from",
        "extends",
        "with",
        "endwith",
        "trans",
    ),
    *("endtrans", "raw", "endraw", "autoescape", "endautoescape"),
)
_TAKEN = re.compile(r"the template '([^']+)' \(imported on line (\d+) .* requested name '([^']+)'")
_FEW = 14
"""So many names can be read at a glance."""
_ALWAYS = frozenset({*DEFAULT_NAMESPACE, "gettext", "ngettext", "pgettext", "npgettext"})


class TemplateFault(Exception):
    """A finding in a template, and the template's text, in which it is shown."""

    def __init__(self, finding: Diagnostic, text: str) -> None:
        super().__init__(finding, text)
        self.finding, self.text = finding, text

    def __str__(self) -> str:
        return f"{self.finding.span.path}:{self.finding.span.line}: {self.finding.message}"


class NotGiven(UndefinedError):
    """A name that is not there. `holder` was asked for it; None where the template itself was not given it.

    `wanted` is the template and the line where it was to be taken from another template, which does not have it.
    """

    def __init__(self, message: str, *, name: str, holder: object, wanted: tuple[str, str] | None) -> None:
        super().__init__(message)
        self.name, self.holder, self.wanted = name, holder, wanted


class Missed(StrictUndefined):
    """What stands for a name that was not given: any use of it but a question whether it is there is a fault."""

    __slots__ = ()

    def __init__(
        self, hint: str | None = None, obj: Any = None, name: str | None = None, exc: Any = UndefinedError
    ) -> None:
        # The engine has a mark of its own for “no object”, and hands it over where a name stands alone.
        holder = None if type(obj).__name__ == "MissingType" else obj
        taken = _TAKEN.match(hint or "")
        wanted = (taken[1], taken[2]) if taken else None
        name = name or (taken[3] if taken else "")
        told: Any = (
            partial(NotGiven, name=name, holder=holder, wanted=wanted) if exc is UndefinedError else exc
        )
        super().__init__(hint, obj, name, told)


def fault_of(error: Exception, environment: Environment, *, shown: Shown) -> TemplateFault | None:
    """What the error says of a template; None where it arose in our own code, called by a template of ours."""
    if isinstance(error, TemplateSyntaxError):
        return _misread(error, environment, shown)
    frames = list(_frames(error.__traceback__))
    inside = [at for at, (frame, _) in enumerate(frames) if "__jinja_exception__" in frame.f_globals]
    if not inside:
        return None
    own_code = any(
        "generator" in Path(frame.f_code.co_filename).parts for frame, _ in frames[inside[-1] + 1 :]
    )
    fenced = environment.sandboxed
    if own_code and not fenced and not isinstance(error, TemplateError):
        return None
    frame, line = frames[inside[-1]]
    file = frame.f_code.co_filename
    code, message, hint, words = _said(error, frame, environment)
    return _fault(code, message, hint, file=file, line=line, words=words, shown=shown)


def _frames(trace: TracebackType | None) -> Iterator[tuple[FrameType, int]]:
    while trace is not None:
        yield trace.tb_frame, trace.tb_lineno
        trace = trace.tb_next


def _said(error: Exception, frame: FrameType, environment: Environment) -> tuple[str, str, str, str]:
    """Code, message, hint, and the words to underline."""
    if isinstance(error, NotGiven):
        return _not_given(error, frame)
    if isinstance(error, TemplateNotFound):
        return _no_template(str(error.name), environment)
    if isinstance(error, SecurityError):
        return "B012", f"a theme of your own may not do this: {error}", "Use the values that it is given.", ""
    hint = "The values that a template is given are described in docs/themes.md."
    return "B012", f"this cannot be carried out: {_one_line(error)}", hint, ""


def _no_template(name: str, environment: Environment) -> tuple[str, str, str, str]:
    return "B013", f"there is no template “{name}”", other_template(name, environment), name


def other_template(name: str, environment: Environment) -> str:
    """What to write in place of a name that no template has."""
    near = nearest(name, environment.list_templates(), most=1)
    if near:
        return f"Did you mean “{near[0]}”?"
    return "Write the name of a file in the same folder of the theme, or of ours."


def _not_given(error: NotGiven, frame: FrameType) -> tuple[str, str, str, str]:
    if error.wanted:
        other, line = error.wanted
        message = f"“{error.name}” is to come from “{other}” (line {line}), which has no such macro"
        return "B011", message, "A template gives on what it defines itself, not what it imports.", error.name
    if error.holder is None:
        known = sorted(_names(frame))
        message = f"this template is given no “{error.name}”"
    else:
        known = sorted(_parts(error.holder))
        message = f"{_called(error.holder)} has no “{error.name}”"
    listed = f"There is: {', '.join(known)}." if 0 < len(known) <= _FEW else ""
    near = did_you_mean(error.name, known)
    return "B011", message, near or listed or "docs/themes.md lists every name.", error.name


def _called(holder: object) -> str:
    return f"a {type(holder).__name__}" if is_dataclass(holder) else f"this value ({type(holder).__name__})"


def _parts(holder: object) -> Iterator[str]:
    if is_dataclass(holder):
        yield from (each.name for each in fields(holder))
    elif isinstance(holder, dict):
        yield from (str(key) for key in holder)
    else:
        yield from (name for name in dir(holder) if not name.startswith("_"))


def _names(frame: FrameType) -> Iterator[str]:
    """What a template could name at this place: what it was given, and what it set itself."""
    for name, value in frame.f_locals.items():
        if not name.startswith("_") and not isinstance(value, Missed) and name not in _ALWAYS:
            yield name


def _misread(error: TemplateSyntaxError, environment: Environment, shown: Shown) -> TemplateFault:
    """What the engine could not read; an element that is never closed is told where it was opened."""
    told = str(error.message or "")
    file, text = error.filename or "", error.source or ""
    line, words = error.lineno, ""
    if found := re.match(r"No (filter|test) named '([^']+)'", told):
        kind, words = found[1], found[2]
        known = environment.filters if kind == "filter" else environment.tests
        message, hint = f"there is no {kind} “{words}”", did_you_mean(words, known)
    elif unclosed := re.search(r"The innermost block that needs to be closed is '(\w+)'", told):
        unknown = re.match(r"Encountered unknown tag '(\w+)'", told)
        words = unknown[1] if unknown else unclosed[1]
        opened = _opened(environment, text, unclosed[1])
        end = f"end{unclosed[1]}"
        if unknown and not opened:
            message, hint = _strange_tag(words)
        elif unknown:
            message = f"“{words}” stands where “{end}” of line {opened} is awaited"
            near = "" if words in _TAGS else did_you_mean(words, _TAGS)
            hint = near or f"Write {{% {end} %}} before it."
        else:
            line = opened or line
            message, hint = f"“{words}” is never closed", f"Write {{% {end} %}} where it ends."
    elif found := re.match(r"Encountered unknown tag '(\w+)'", told):
        words = found[1]
        message, hint = _strange_tag(words)
    else:
        message = f"this cannot be read: {told[:1].lower()}{told[1:].rstrip('.')}"
        hint = "Values stand in {{ … }}, what is to be done in {% … %}."
    hint = hint or "docs/themes.md says what templates are made of."
    return _fault("B010", message, hint, file=file, line=line, words=words, shown=shown, text=text)


def _strange_tag(word: str) -> tuple[str, str]:
    return f"there is no “{word}” to be done", did_you_mean(word, _TAGS)


def _opened(environment: Environment, text: str, name: str) -> int | None:
    """The line of the last element of that name which is open at the end of what can be read."""
    lines: list[int] = []
    try:
        tokens = [
            (line, value) for line, kind, value in environment.lex(text) if kind in ("block_begin", "name")
        ]
    except TemplateError:
        return None
    starts = {at + 1 for at, (_, value) in enumerate(tokens) if value.startswith("{%")}
    for at in sorted(starts):
        if at < len(tokens) and tokens[at][1] == name:
            lines.append(tokens[at][0])
        elif at < len(tokens) and tokens[at][1] == f"end{name}" and lines:
            lines.pop()
    return lines[-1] if lines else None


def style_fault(told: str, text: str, *, file: str, shown: Shown) -> TemplateFault:
    """What a style sheet for paper says that cannot be carried out: `Ignored … at 3:5, unknown property.`"""
    place = re.search(r"`([^`]*)` at (\d+):\d+, ([^;]*)", told)
    line, words = (int(place[2]), place[1]) if place else (1, "")
    message = f"“{words}” cannot be carried out on paper: {place[3].rstrip('.')}" if place else told
    hint = "Only what can be printed may stand in a style sheet for paper: nothing is left out in silence."
    code = "B017"
    return _fault(code, message, hint, file=file, line=line, words=words, shown=shown, text=text)


def _one_line(error: Exception) -> str:
    return " ".join(str(error).split())[:160] or type(error).__name__


def _fault(
    code: str, message: str, hint: str, *, file: str, line: int, words: str, shown: Shown, text: str = ""
) -> TemplateFault:
    text = text or _text_of(file)
    span = span_of(shown(file) or Path(file).name, text, line, (words,))
    return TemplateFault(Diagnostic(code=code, message=message, span=span, hint=hint), text)


def _text_of(file: str) -> str:
    try:
        return Path(file).read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError):
        return ""


def span_of(path: str, text: str, line: int, words: Iterable[str]) -> Span:
    """The first of the words that stands on the line, or else the line without its indentation."""
    lines = text.split("\n")
    said = lines[line - 1].rstrip("\r") if 0 < line <= len(lines) else ""
    for word in words:
        found = re.search(rf"(?<!\w){re.escape(word)}(?!\w)", said) if word else None
        if found:
            return Span(
                path=path, line=line, column=found.start() + 1, end_line=line, end_column=found.end() + 1
            )
    start = len(list(takewhile(str.isspace, said)))
    return Span(
        path=path, line=line, column=start + 1, end_line=line, end_column=max(len(said), start + 1) + 1
    )
