"""`cups_beside:` of site.yaml names the cups of other countries that pages show beside the site's own."""

import pytest

from generator.diagnostics.diagnostic import Diagnostics
from generator.settings import Settings
from generator.source.read import read_mapping
from generator.source.site import read_settings

NEEDED = "title: Bakes\nmaker: A kitchen\nurl: https://kitchen.example/\n"


def _read(value: str) -> tuple[Settings, Diagnostics]:
    mapping, found = read_mapping("site.yaml", f"{NEEDED}cups_beside: {value}\n".encode())
    assert found == ()
    return read_settings(mapping, "site.yaml", regions=("US",))


@pytest.mark.parametrize(
    ("value", "cups"),
    [
        ("[metric]", ("metric",)),
        ("[metric, Imperial]", ("metric", "imperial")),
        ("[metric, metric]", ("metric",)),
        ("australian", ("australian",)),
        ("", ()),
    ],
)
def test_cups_are_read_in_their_order_each_once(value: str, cups: tuple[str, ...]) -> None:
    settings, found = _read(value)
    assert (settings.cups_beside, found) == (cups, ())


def test_an_unknown_cup_is_told_at_its_place() -> None:
    settings, found = _read("[metric, imperail]")
    assert settings.cups_beside == ("metric",)
    assert [(each.code, each.message, each.span.column) for each in found] == [
        ("S068", "“imperail” is not one of the choices here", 23)
    ]
    assert found[0].hint.startswith("Did you mean “imperial”?")
