"""Where a recipe is used is looked up, not sought in every recipe for every recipe."""

from dataclasses import replace
from unittest.mock import patch

import pytest

from generator.formula.model import Formula
from generator.present.recipe import Setting
from tests.demo import checked


def whole() -> Setting:
    """The demo's setting as if nothing had been asked of it."""
    return replace(checked().setting)


def test_users_are_those_whose_lines_name_the_recipe_in_the_order_of_the_book() -> None:
    setting = whole()
    for name in setting.book:
        sought = [
            each for each in setting.book.values() if any(line.component == name for line in each.lines)
        ]
        assert list(setting.users(name)) == sought
    assert any(setting.users(name) for name in setting.book)


@pytest.mark.parametrize("part", ["all", "without components"])
def test_each_recipe_is_looked_through_once(part: str) -> None:
    setting = whole()
    if part != "all":
        plain = {
            name: each
            for name, each in setting.book.items()
            if not any(line.component for line in each.lines)
        }
        setting = replace(setting, book=plain)
    read: list[str] = []
    lines = Formula.lines.fget  # type: ignore[attr-defined]

    def noted(formula: Formula) -> object:
        read.append(formula.name)
        return lines(formula)

    with patch.object(Formula, "lines", property(noted)):
        for name in setting.book:
            setting.users(name)
    assert sorted(read) == sorted(setting.book)
