"""A pipeline of cardboard: the commands are tested for what they do with an answer, not for the answer."""

import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from types import ModuleType, SimpleNamespace

import pytest

from generator.build.store import WriteReport
from generator.diagnostics import diagnostic
from generator.diagnostics.codes import CODES
from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.span import Span

ERROR = next(code for code, each in CODES.items() if each.error)
WARNING = next(code for code, each in CODES.items() if not each.error)
TEXTS = {
    "site.yaml": "title: A book\n",
    "recipes/oat-braid.md": "---\ntitle: Oat braid\n---\n",
    "recipes/rye-loaf.md": "---\ntitle: Rye loaf\n---\n",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """Stands for the results of `check_folder` and of `make_folder`."""

    diagnostics: diagnostic.Diagnostics
    texts: Mapping[str, str]
    book: None = None
    report: WriteReport | None = None
    day: date = date(2026, 9, 12)
    unproven: diagnostic.Diagnostics = ()


@dataclass(slots=True, kw_only=True)
class Cardboard:
    """What the pretended pipeline answers, and what it was asked."""

    diagnostics: diagnostic.Diagnostics = ()
    report: WriteReport | None = None
    shown: str | None = "shown"
    refused: str = ""
    wishes: list[object] = field(default_factory=list)
    raises: BaseException | None = None
    asked: list[tuple[object, ...]] = field(default_factory=list)

    def check_folder(self, root: Path, *, day: date | None) -> Answer:
        self.asked.append(("check", root, day))
        if self.raises:
            raise self.raises
        return Answer(diagnostics=self.diagnostics, texts=TEXTS)

    def make_folder(
        self,
        root: Path,
        *,
        output: Path,
        day: date | None,
        jobs: int,
        progress: Callable[[str, int, int], None] | None,
        how: object = None,
    ) -> Answer:
        self.asked.append(("make", root, output, day, jobs))
        if progress:
            progress("Oat braid", 1, 2)
        return Answer(diagnostics=self.diagnostics, texts=TEXTS, report=self.report)

    def describe(self, _: Answer, name: str, kind: str = "", *, film: str = "") -> str | None:
        return self.shown and f"{self.shown} {name}"

    def show(self, _: Answer, name: str, *, wish: object = None) -> SimpleNamespace:
        self.wishes.append(wish)
        return SimpleNamespace(text=self.shown and f"{self.shown} {name}", refused=self.refused)

    def show_json(self, _: Answer, name: str, *, wish: object = None) -> SimpleNamespace:
        return SimpleNamespace(text=f'{{"name": "{name}"}}', refused="")


@pytest.fixture
def pipeline(monkeypatch: pytest.MonkeyPatch) -> Cardboard:
    cardboard = Cardboard()
    module = ModuleType("generator.pipeline")
    vars(module).update(
        check_folder=cardboard.check_folder,
        make_folder=cardboard.make_folder,
        show_text=cardboard.show,
        show_json=cardboard.show_json,
        describe_text=cardboard.describe,
    )
    monkeypatch.setitem(sys.modules, "generator.pipeline", module)
    return cardboard


@pytest.fixture
def content(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a content folder in it, and we are in the former."""
    (tmp_path / "content").mkdir()
    (tmp_path / "content" / "site.yaml").write_text(TEXTS["site.yaml"])
    monkeypatch.chdir(tmp_path)
    return tmp_path / "content"


def finding(code: str, path: str, message: str) -> Diagnostic:
    span = Span(path=path, line=1, column=1, end_line=1, end_column=4)
    return Diagnostic(code=code, message=message, span=span)
