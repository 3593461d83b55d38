"""The pictures to share of home, of posts and of standing pages: where they stand, and what they say."""

from dataclasses import replace
from datetime import date

import pytest

from generator.present.posters import SHARE_SIZE, page_posters, shared_article, shared_home
from generator.present.views import ArticleView, PhotoView, SiteView, TeaserView
from generator.proof.expected import Expected
from generator.proof.prove import prove
from generator.render.images.poster import share_face
from generator.render.images.posters import render_page_share
from tests.demo import checked
from tests.render.images.test_posters import assert_laid_out

PHOTO = PhotoView(
    path="media/a.jpg",
    source="media/a.jpg",
    text="A jar of starter.",
    width=40,
    height=30,
    url="https://b.example/a.jpg",
)
POST = ArticleView(
    name="a-cold-week",
    title="A cold week, and what it did to the dough",
    lead="Slow.",
    path="journal/2026-a-cold-week/",
    url="https://b.example/journal/2026-a-cold-week/",
    on_site=True,
    published=date(2026, 2, 1),
    day="February 1, 2026",
    markdown="",
    photo=PHOTO,
    kinds=(),
    bakes=(),
)


def gone(_: str) -> bytes:
    raise FileNotFoundError


def site(*posts: ArticleView, teasers: tuple[TeaserView, ...] = ()) -> SiteView:
    return replace(checked().site, journal=posts, standing=(), teasers=teasers, all_recipes=(), recipes=())


def test_only_what_has_a_photograph_has_a_picture_to_share() -> None:
    bare = replace(POST, name="b", path="journal/b/", photo=None)
    assert [path for path, _ in page_posters(site(POST, bare))] == ["journal/2026-a-cold-week/share.jpg"]
    assert shared_article(bare) is None
    assert shared_home(site()) is None


def test_a_page_tells_of_it_as_it_is_made() -> None:
    shared = shared_article(POST)
    assert shared is not None
    assert shared.url == "https://b.example/journal/2026-a-cold-week/share.jpg"
    assert shared.text == "A cold week, and what it did to the dough. A jar of starter."
    assert (shared.width, shared.height) == SHARE_SIZE


def test_home_shows_the_newest_photograph() -> None:
    newest = next(each for each in checked().site.teasers if each.photo)
    home = site(teasers=(replace(newest, photo=None), newest))
    ((path, poster),) = page_posters(home)
    assert (path, poster.title, poster.photo) == ("share.jpg", home.title, newest.photo)
    assert shared_home(home) is not None


@pytest.mark.parametrize("title", ["A", POST.title, "Butter " * 30, "Pfefferkuchenhausbaumeisterschaft " * 4])
def test_nothing_leaves_its_place(title: str) -> None:
    ((_, poster),) = page_posters(site(replace(POST, title=title)))
    assert_laid_out(share_face(poster, photo=True))


def test_the_picture_of_an_older_title_is_found_out() -> None:
    now = site(POST)
    ((path, poster),) = page_posters(now)
    expected = Expected(site=now, data={}, tags={})
    made = render_page_share(path, poster, gone)
    assert prove({made.path: made.content}, expected) == ()
    older = render_page_share(path, replace(poster, title="A warm week"), gone)
    (found,) = prove({older.path: older.content}, expected)
    assert found.span.path == f"site/{path}"
    assert "the title" in found.message
