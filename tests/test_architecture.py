"""The shape of the house: who may import whom, who alone may do what. Read from the imports themselves.

`faults(root)` reads the package `generator` under `root` and says what breaks the rules; the tests
below it hold our own tree to them, and prove on a small tree made for the purpose that each rule bites.
"""

import ast
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent

WORDS = frozenset({"wording"})
# What each room may import of ours, besides itself. A name with a dot means that module alone.
MAY_IMPORT: Mapping[str, frozenset[str]] = {
    **dict.fromkeys(("diagnostics", "measure", "settings", "wording"), frozenset[str]()),
    "source": frozenset({"diagnostics", "settings"}) | WORDS,
    "catalogue": frozenset({"diagnostics", "measure"}),
    "formula": frozenset({"diagnostics", "measure", "catalogue"}) | WORDS,
    "declaration": frozenset({"diagnostics", "measure", "catalogue", "formula"}) | WORDS,
    "history": frozenset({"diagnostics", "measure", "formula", "source.read", "source.write"}),
    "present": frozenset({"settings", "measure", "catalogue", "formula", "declaration", "history"}) | WORDS,
    "render": frozenset({"diagnostics", "settings", "present", "wording"}),
    # The mirror of `render`: reads its formats back, with readers of its own.
    "proof": frozenset({"diagnostics", "settings", "measure", "present", "wording"}),
    "build": frozenset({"diagnostics", "settings", "render.output"}),
    "importer": frozenset({"diagnostics", "measure", "catalogue", "formula", "source.write"}),
    "desk": frozenset({"diagnostics", "settings", "history", "source.write", "build", "pipeline", "asked"})
    | {"records", "amend", "render.theme", "render.photo_intake"}
    | {"render.description.correction", "catalogue.pack", "importer.model", "wording"},
}
# The one module of a room (or the folder it grew into) through which something more may come in.
DOORS: Mapping[str, frozenset[str]] = {
    "catalogue.load": frozenset({"source"}),
    "formula.intake": frozenset({"source"}),
    # A bake record and the private list of people are located like any file of the maker's.
    "history.bakes": frozenset({"source.document", "source.fields"}),
    # An entry into a bake record is a change of named stretches of the maker's file.
    "history.bake_entries": frozenset({"source.document", "source.lines", "source.quoting"}),
    "history.bake_opening": frozenset({"source.quoting"}),
    "declaration.people": frozenset({"source.document", "source.fields"}),
}
# These may import all the rooms of the house that are not entrances.
ENTRANCES = frozenset({"cli", "importer", "desk"})
ABOVE_ALL = {
    "pipeline": ENTRANCES | {"asked"},
    # What a publication is as a whole: the pipeline calls it, and it knows as much.
    "publication": ENTRANCES | {"pipeline", "asked"},
    # What went out, how it was, and what changed since, from what the pipeline understood.
    "records": ENTRANCES | {"asked"},
    # What a correction does to the maker's files: it needs their places, their meaning, and their wording.
    "amend": ENTRANCES | {"asked"},
    # What is asked for one at a time, from what the pipeline understood; old texts come in through it too.
    "asked": frozenset({"cli", "desk"}),
    "cli": frozenset[str](),
}

# Each of these renders one thing and knows nothing of the others; what is not listed serves them all.
RENDERERS = frozenset(
    {"site", "cards", "tag_sheets", "bench_sheets", "description", "feeds", "structured_data", "images"}
    | {"recipe_json", "overlay", "formula_sheets", "people_sheet", "terminal", "book"}
)

# Only these rooms know a foreign format.
OWNERS: Mapping[str, frozenset[str]] = {
    # The maker's YAML is read in `source` alone; the two others read tables of our own.
    "yaml": frozenset({"source", "catalogue", "declaration"}),
    "babel": frozenset({"wording"}),
    # `present` takes the marks away for plain words; only `render` makes HTML of them.
    "markdown_it": frozenset({"source", "present", "render"}),
    "jinja2": frozenset({"render"}),
    "markupsafe": frozenset({"render"}),
    "weasyprint": frozenset({"render"}),
    "PIL": frozenset({"render"}),
    "segno": frozenset({"render"}),
    # Foreign pages come in through one room.
    "tinyhtml5": frozenset({"importer"}),
    "fontTools": frozenset({"render"}),
    "pypdfium2": frozenset({"proof"}),
    "fontpkg": frozenset({"render"}),
}
# Only these may change anything on the disk; the cache of fonts lies outside of content and output.
WRITERS = ("build", "source.write", "history", "cli.start", "render.kept")
WRITING = frozenset({"write_text", "write_bytes", "unlink", "mkdir", "rmdir", "touch", "symlink_to"})

BAD_NAMES = frozenset({"util", "utils", "helper", "helpers", "common", "manager", "managers", "misc"})
MOST_LINES = 400


@dataclass(frozen=True, slots=True, kw_only=True)
class Module:
    """`name` is dotted and without the leading `generator`; the package itself has the name ""."""

    name: str
    path: Path
    tree: ast.Module
    lines: int

    @property
    def room(self) -> str:
        return self.name.partition(".")[0]


def modules_in(root: Path) -> dict[str, Module]:
    found = {}
    for path in sorted((root / "generator").rglob("*.py")):
        parts = path.relative_to(root / "generator").with_suffix("").parts
        name = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
        text = path.read_text(encoding="utf-8")
        found[name] = Module(name=name, path=path, tree=ast.parse(text), lines=text.count("\n"))
    return found


def imports_of(module: Module) -> Iterator[str]:
    """Every dotted name a module imports, anywhere in it; relative ones made whole."""
    package = ["generator", *module.name.split(".")]
    if module.path.name != "__init__.py":
        package = package[:-1]
    for node in ast.walk(module.tree):
        if isinstance(node, ast.Import):
            yield from (each.name for each in node.names)
        elif isinstance(node, ast.ImportFrom):
            above = package[: len(package) - node.level + 1] if node.level else []
            start = ".".join([*above, *([node.module] if node.module else [])])
            yield from (f"{start}.{each.name}" for each in node.names)


def ours(imported: str, known: Mapping[str, Module]) -> str | None:
    """The module of ours that an imported name comes from, without the leading `generator`."""
    if imported.partition(".")[0] != "generator":
        return None
    name = imported.removeprefix("generator").removeprefix(".")
    while name and name not in known:
        name = name.rpartition(".")[0]
    return name


def is_within(name: str, place: str) -> bool:
    return name == place or name.startswith(place + ".")


def may_import(module: Module, target: str) -> bool:
    target_room = target.partition(".")[0]
    if module.room in ABOVE_ALL:
        return target_room not in ABOVE_ALL[module.room]
    if target_room == module.room:
        return module.room != "render" or may_import_beside(module.name, target)
    through_a_door = (more for door, more in DOORS.items() if is_within(module.name, door))
    allowed = MAY_IMPORT.get(module.room, frozenset()).union(*through_a_door)
    return any(is_within(target, each) for each in allowed)


def may_import_beside(name: str, target: str) -> bool:
    """Among renderers: what serves all may be imported by all, one renderer by no other."""
    mine, other = ([*each.split("."), ""][1] for each in (name, target))
    return mine == other or other not in RENDERERS


def import_faults(module: Module, known: Mapping[str, Module]) -> Iterator[str]:
    for imported in imports_of(module):
        target = ours(imported, known)
        if target and not may_import(module, target):
            yield f"{module.name} imports {target}"
        foreign = imported.partition(".")[0]
        owners = OWNERS.get("fontpkg" if foreign.startswith("fontpkg") else foreign)
        if owners and module.room not in owners:
            yield f"{module.name} imports {foreign}, which only {' and '.join(sorted(owners))} may"


def form_faults(module: Module) -> Iterator[str]:
    if module.room and module.room not in {*MAY_IMPORT, *ABOVE_ALL}:
        yield f"{module.name} is in no room of the table"
    if set(module.name.replace("_", ".").split(".")) & BAD_NAMES:
        yield f"{module.name} has a name that says nothing"
    if module.lines > MOST_LINES:
        yield f"{module.name} has {module.lines} lines"
    if module.path.name == "__init__.py" and not is_docstring_only(module.tree):
        yield f"{module.name or 'generator'}: __init__.py holds more or less than a docstring"
    for node in ast.walk(module.tree):
        # A scanner's own state, private to its module, may change; what travels may not.
        if not isinstance(node, ast.ClassDef) or node.name.startswith("_"):
            continue
        if any(is_loose_dataclass(each, node) for each in node.decorator_list):
            yield f"{module.name}: {node.name} is a dataclass that is not frozen, with slots"


def is_docstring_only(tree: ast.Module) -> bool:
    return len(tree.body) == 1 and ast.get_docstring(tree) is not None


def is_loose_dataclass(decorator: ast.expr, node: ast.ClassDef) -> bool:
    call = decorator.func if isinstance(decorator, ast.Call) else decorator
    if not (isinstance(call, ast.Name) and call.id == "dataclass"):
        return False
    flags = decorator.keywords if isinstance(decorator, ast.Call) else []
    true = {each.arg for each in flags if isinstance(each.value, ast.Constant) and each.value.value is True}
    # A value that is worked out when first asked for, and then kept, has no room in slots.
    keeps = any(isinstance(each, ast.Name) and each.id == "cached_property" for each in ast.walk(node))
    return not ({"frozen"} if keeps else {"frozen", "slots"}) <= true


def writing_faults(module: Module) -> Iterator[str]:
    if any(is_within(module.name, each) for each in WRITERS):
        return
    for node in ast.walk(module.tree):
        if isinstance(node, ast.Call) and writes(node):
            yield f"{module.name} changes the disk in line {node.lineno}"


def writes(call: ast.Call) -> bool:
    function = call.func
    if isinstance(function, ast.Attribute) and isinstance(function.value, ast.Name):
        if function.value.id == "shutil" and function.attr.startswith(("copy", "move", "rmtree")):
            return True
        if function.value.id == "os" and function.attr in {"replace", "rename", "remove", "unlink"}:
            return True
    if isinstance(function, ast.Attribute) and function.attr in WRITING:
        return True
    name = function.attr if isinstance(function, ast.Attribute) else getattr(function, "id", "")
    return name == "open" and any(is_writing_mode(each) for each in modes_of(call, function))


def modes_of(call: ast.Call, function: ast.expr) -> list[ast.expr]:
    """Where the mode stands: second in the built-in `open`, first in a path's."""
    place = 0 if isinstance(function, ast.Attribute) else 1
    return [*call.args[place : place + 1], *(each.value for each in call.keywords if each.arg == "mode")]


def is_writing_mode(mode: ast.expr) -> bool:
    return (
        isinstance(mode, ast.Constant) and isinstance(mode.value, str) and bool(set("wax+") & set(mode.value))
    )


def faults(root: Path) -> list[str]:
    known = modules_in(root)
    return [
        fault
        for module in known.values()
        for fault in (*form_faults(module), *import_faults(module, known), *writing_faults(module))
    ]


def test_our_tree_keeps_the_rules() -> None:
    found = faults(ROOT)
    assert not found, "\n".join(found)


def test_tests_are_no_longer_than_their_readers_patience() -> None:
    long = {
        path.relative_to(ROOT).as_posix(): lines
        for path in (ROOT / "tests").rglob("*.py")
        # A sample is one long value, and is read like a table.
        if path.name != "sample.py" and (lines := path.read_text(encoding="utf-8").count("\n")) > MOST_LINES
    }
    assert long == {}


def lay(root: Path, files: Mapping[str, str]) -> None:
    """A small house of empty rooms with the given files in it."""
    rooms = ("measure", "source", "catalogue", "formula", "render", "build", "present", "cli")
    for name in ("", *(f"{room}/" for room in rooms)):
        files = {f"{name}__init__.py": '"""A room."""\n', **files}
    for name, text in files.items():
        path = root / "generator" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")


IMPORTS = [
    ("measure/number.py", "import generator.source.read", "measure.number imports source.read"),
    ("source/read.py", "from generator.measure import unit", "source.read imports measure.unit"),
    ("catalogue/lookup.py", "from generator.source.read import x", "catalogue.lookup imports source.read"),
    ("formula/resolve.py", "from generator.source import read", "formula.resolve imports source.read"),
    (
        "formula/resolve.py",
        "def f():\n    from ..source.read import x",
        "formula.resolve imports source.read",
    ),
    ("build/store.py", "from generator.render.site import page", "build.store imports render.site.page"),
    (
        "render/cards/face.py",
        "import generator.render.site.page",
        "render.cards.face imports render.site.page",
    ),
    ("render/theme.py", "from generator.render import site", "render.theme imports render.site"),
    ("pipeline.py", "from generator.cli import main", "pipeline imports cli.main"),
    ("present/recipe.py", "from generator import cli", "present.recipe imports cli"),
    (
        "formula/fields.py",
        "import yaml",
        "formula.fields imports yaml, which only catalogue and declaration and source may",
    ),
    ("present/x.py", "from PIL.Image import open", "present.x imports PIL, which only render may"),
    ("present/x.py", "import fontpkg_vollkorn", "present.x imports fontpkg_vollkorn, which only render may"),
]
HOUSE = {
    "measure/unit.py": "",
    "source/read.py": "",
    "render/output.py": "",
    "render/site/__init__.py": '"""Pages."""',
    "render/site/page.py": "",
    "cli/main.py": "",
}


@pytest.mark.parametrize(("path", "text", "fault"), IMPORTS)
def test_forbidden_import_is_found(tmp_path: Path, path: str, text: str, fault: str) -> None:
    lay(tmp_path, {**HOUSE, path: text})
    assert faults(tmp_path) == [fault]


FORMS = [
    ("measure/utils.py", "", "measure.utils has a name that says nothing"),
    ("measure/unit_helpers.py", "", "measure.unit_helpers has a name that says nothing"),
    ("attic/box.py", "", "attic.box is in no room of the table"),
    ("measure/long.py", "\n" * 401, "measure.long has 401 lines"),
    (
        "measure/__init__.py",
        '"""A room."""\nX = 1',
        "measure: __init__.py holds more or less than a docstring",
    ),
    ("measure/__init__.py", "", "measure: __init__.py holds more or less than a docstring"),
    (
        "measure/x.py",
        "@dataclass(frozen=True)\nclass Loose:\n    a: int",
        "measure.x: Loose is a dataclass that is not frozen, with slots",
    ),
    ("measure/x.py", "path.write_text('x')", "measure.x changes the disk in line 1"),
    ("measure/x.py", "open('x', 'w')", "measure.x changes the disk in line 1"),
    ("measure/x.py", "path.open(mode='a')", "measure.x changes the disk in line 1"),
    ("measure/x.py", "import os\nos.replace(a, b)", "measure.x changes the disk in line 2"),
    ("measure/x.py", "import shutil\nshutil.rmtree(a)", "measure.x changes the disk in line 2"),
]


@pytest.mark.parametrize(("path", "text", "fault"), FORMS)
def test_forbidden_form_is_found(tmp_path: Path, path: str, text: str, fault: str) -> None:
    lay(tmp_path, {path: text})
    assert faults(tmp_path) == [fault]


@pytest.mark.parametrize(
    ("path", "text"),
    [
        ("catalogue/load.py", "from generator.source import read"),
        ("formula/intake.py", "import generator.source.read"),
        ("formula/intake/lines.py", "import generator.source.read"),
        ("build/task.py", "from generator.render.output import Product"),
        (
            "render/site/index.py",
            "from generator.render.site import page\nfrom generator.render.output import P",
        ),
        ("pipeline.py", "from generator.source import read\nfrom generator.render.site import page"),
        ("cli/check.py", "from generator import pipeline"),
        ("measure/x.py", "open('x')\npath.open('rb')\n'a'.replace('a', 'b')"),
        ("measure/x.py", "@dataclass(slots=True)\nclass _Scanner:\n    at: int"),
        ("measure/x.py", "@dataclass(frozen=True)\nclass X:\n    @cached_property\n    def a(self): ..."),
        ("build/x.py", "path.write_bytes(b'')"),
    ],
)
def test_what_the_table_allows_is_no_fault(tmp_path: Path, path: str, text: str) -> None:
    lay(tmp_path, {**HOUSE, path: text})
    assert faults(tmp_path) == []


def test_every_decision_stands_in_the_list() -> None:
    pages = {path.name for path in (ROOT / "docs" / "decisions").glob("*.md")} - {"README.md"}
    listed = (ROOT / "docs" / "decisions" / "README.md").read_text(encoding="utf-8")
    assert {page for page in pages if f"]({page})" not in listed} == set()


def test_project_needs_nothing_outside_its_own_folder() -> None:
    outside = "../sha" + "red"
    kinds = {".py", ".md", ".toml", ".yaml", ".json", ".sh", ".html", ".css", ".js", ".csv", ""}
    skipped = {".git", ".venv", "node_modules", "output"}
    guilty = [
        path.relative_to(ROOT).as_posix()
        for path in ROOT.rglob("*")
        if path.is_file()
        and path.suffix in kinds
        and not skipped & set(path.relative_to(ROOT).parts)
        and outside in path.read_text(encoding="utf-8", errors="replace")
    ]
    assert guilty == []
