"""Which theme a publication has, and what is wrong in one of the maker's own before anything is filled."""

import os
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from jinja2 import nodes

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, did_you_mean
from generator.diagnostics.span import Span, whole_file
from generator.render.template_fault import TemplateFault, other_template, span_of
from generator.render.theme import DEFAULT, own_root, stays_inside, templates, theme_names

FOLDER = "themes"
KINDS: Mapping[str, tuple[str, ...]] = {
    "site": (".html", ".css", ".js", ".svg", ".woff2", ".ttf", ".png", ".jpg"),
    "paper": (".html", ".css"),
    "book": (".html", ".css", ".xhtml", ".opf"),
    "desk": (".html",),
}
"""The folders of a theme, and the kinds of files in each that are read."""

_FONTS = {".woff2": (b"wOF2",), ".ttf": (b"\0\1\0\0", b"true")}
"""How a font begins (W3C, WOFF File Format 2.0, 4.1; ISO/IEC 14496-22, table directory)."""
TEMPLATES = (".html", ".xhtml", ".opf")
_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]*")
_MOST_BYTES = 1_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class ChosenTheme:
    """`theme` is a name of ours, or the path of one of the maker's own; `texts` are of files with findings."""

    theme: str
    diagnostics: Diagnostics
    texts: Mapping[str, str]


def chosen_theme(name: str, root: Path, *, span: Span) -> ChosenTheme:
    """The theme that `site.yaml` names, proofread if it stands in the content folder. `span` is where it is named."""
    own = Path(os.path.realpath(root)) / FOLDER / name
    ours = theme_names()
    if name in ours:
        hint = "Give your folder another name, and write that name after “theme:” in site.yaml."
        message = f"“{name}” is a theme of the program, and a folder of yours has the same name"
        twice = (Diagnostic(code="B015", message=message, span=whole_file(f"{FOLDER}/{name}"), hint=hint),)
        return ChosenTheme(theme=name, diagnostics=twice if own.is_dir() else (), texts={})
    if own.is_dir():
        found, texts = _proofread(own)
        return ChosenTheme(theme=str(own), diagnostics=found, texts=texts)
    known = sorted({*ours, *_own_names(root)})
    listed = f"The themes there are: {', '.join(known)}."
    hint = f"{did_you_mean(name, known)} {listed} One of your own stands in {FOLDER}/{name}/.".lstrip()
    missing = Diagnostic(code="B014", message=f"there is no theme “{name}”", span=span, hint=hint)
    return ChosenTheme(theme=DEFAULT, diagnostics=(missing,), texts={})


def _own_names(root: Path) -> Iterator[str]:
    folder = root / FOLDER
    if folder.is_dir():
        yield from (each.name for each in folder.iterdir() if each.is_dir() and not each.name.startswith("."))


def _proofread(own: Path) -> tuple[Diagnostics, Mapping[str, str]]:
    found: list[Diagnostic] = []
    texts: dict[str, str] = {}
    for path in _files(own):
        shown = path.relative_to(own_root(str(own))).as_posix()
        wrong = _out_of_place(path, own, shown)
        if wrong is None and len(path.relative_to(own).parts) > 1:
            wrong, text = _read(path, own, shown)
            texts |= {shown: text} if wrong else {}
        found += [wrong] if wrong else []
    return tuple(found), texts


def _files(own: Path) -> Iterator[Path]:
    """Every file of the theme, links to folders among them; hidden ones are nobody's."""
    for folder, folders, files in os.walk(own):
        folders[:] = sorted(each for each in folders if not each.startswith("."))
        links = [each for each in folders if (Path(folder) / each).is_symlink()]
        yield from (Path(folder) / each for each in sorted((*files, *links)) if not each.startswith("."))


def _out_of_place(path: Path, own: Path, shown: str) -> Diagnostic | None:
    """A file that cannot be published or read, whatever is in it."""
    place = whole_file(shown)
    if not stays_inside(path, str(own)):
        hint = "Copy what it leads to into the theme, and delete the link."
        return Diagnostic(
            code="S054", message="this link leads out of the content folder", span=place, hint=hint
        )
    inside = path.relative_to(own).parts
    if len(inside) == 1:
        return None  # A README, say: it is not read.
    suffixes = KINDS.get(inside[0])
    if suffixes is None:
        hint = f"{did_you_mean(inside[0], KINDS)} The folders of a theme are {', '.join(KINDS)}.".lstrip()
        return Diagnostic(code="B016", message="nothing is read from this folder", span=place, hint=hint)
    if len(inside) > 2 or path.suffix not in suffixes or not _NAME.fullmatch(path.name):
        hint = (
            f"In {inside[0]}/ stand files that end in {', '.join(suffixes)}, with plain names and no folders."
        )
        return Diagnostic(code="B016", message="this file cannot be used", span=place, hint=hint)
    if not path.is_file() or path.stat().st_size > _MOST_BYTES:
        hint = f"A file of a theme is a plain file of at most {_MOST_BYTES:,} bytes."
        return Diagnostic(code="B016", message="this file cannot be used", span=place, hint=hint)
    return None


def _read(path: Path, own: Path, shown: str) -> tuple[Diagnostic | None, str]:
    """The first fault of a template that can be seen without filling it."""
    if path.suffix in (".png", ".jpg") or path.suffix in _FONTS:
        return _not_itself(path, shown), ""
    kind = path.relative_to(own).parts[0]
    environment = templates(str(own), kind)
    try:
        text = path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        hint = "Save it as UTF-8."
        return Diagnostic(
            code="B010", message="this file is not UTF-8", span=whole_file(shown), hint=hint
        ), ""
    if path.suffix not in TEMPLATES:
        return None, text
    try:
        tree = environment.parse(text, path.name, str(path))
        environment.compile(text, path.name, str(path))
    except TemplateFault as fault:
        return fault.finding, text
    known = environment.list_templates()
    for name, line in _named(tree):
        if name not in known:
            hint = other_template(name, environment)
            span = span_of(shown, text, line, (name,))
            return Diagnostic(
                code="B013", message=f"there is no template “{name}”", span=span, hint=hint
            ), text
    return None, text


def _not_itself(path: Path, shown: str) -> Diagnostic | None:
    """A font or a picture that is none."""
    # Pictures are a large library, and few themes have one.
    from generator.render.photographs import published_size

    data = path.read_bytes()
    place, begins = whole_file(shown), _FONTS.get(path.suffix)
    if begins and not data.startswith(begins):
        hint = f"A file that ends in {path.suffix} begins in another way."
        return Diagnostic(code="B016", message="this is no font that a browser reads", span=place, hint=hint)
    if not begins and published_size(data) is None:
        message = "this is no picture that can be read, or one of too many pixels"
        return Diagnostic(code="B016", message=message, span=place, hint="Save it anew as PNG or JPEG.")
    return None


def _named(tree: nodes.Template) -> Iterator[tuple[str, int]]:
    """The other templates that a template names in plain words, where it cannot do without them."""
    for name, line in _taken(tree):
        if isinstance(name, nodes.Const) and isinstance(name.value, str):
            yield name.value, line


def _taken(tree: nodes.Template) -> Iterator[tuple[nodes.Expr, int]]:
    yield from ((each.template, each.lineno) for each in tree.find_all(nodes.Extends))
    yield from (
        (each.template, each.lineno) for each in tree.find_all(nodes.Include) if not each.ignore_missing
    )
    yield from ((each.template, each.lineno) for each in tree.find_all(nodes.Import))
    yield from ((each.template, each.lineno) for each in tree.find_all(nodes.FromImport))
