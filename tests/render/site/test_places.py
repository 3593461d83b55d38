"""Addresses fit the page they stand on."""

import pytest

from generator.render.site.places import file_of, from_maker, relative


@pytest.mark.parametrize(
    ("target", "page", "address"),
    [
        ("", "", "index.html"),
        ("", "recipes/plum-cake/", "../../index.html"),
        ("recipes/", "recipes/plum-cake/", "../index.html"),
        ("recipes/plum-cake/card-a6.pdf", "recipes/plum-cake/", "card-a6.pdf"),
        ("media/a b.jpg", "about/", "../media/a%20b.jpg"),
        ("recipes/plum-cake/#step-1", "journal/x/", "../../recipes/plum-cake/index.html#step-1"),
        ("#step-1", "recipes/plum-cake/", "#step-1"),
        ("feed.xml", "404.html", "feed.xml"),
    ],
)
def test_an_address_is_relative_to_its_page(target: str, page: str, address: str) -> None:
    assert relative(target, page=page) == address


@pytest.mark.parametrize(
    ("typed", "place"),
    [
        ("recipes/plum-cake.md", "recipes/plum-cake/"),
        ("recipes/plum-cake", "recipes/plum-cake/"),
        ("/recipes/plum-cake/", "recipes/plum-cake/"),
        ("../standing/about.md#contact", "about/#contact"),
        ("media/plan.pdf", "media/plan.pdf"),
        ("../../../etc/passwd", "etc/passwd/"),
    ],
)
def test_a_makers_address_is_read_from_the_root(typed: str, place: str) -> None:
    assert from_maker(typed) == place


def test_a_folder_is_the_index_in_it() -> None:
    assert [file_of(path) for path in ("", "recipes/", "404.html")] == [
        "index.html",
        "recipes/index.html",
        "404.html",
    ]
