"""What marking a copy writes, and when it is refused."""

from datetime import date
from pathlib import Path

import pytest

from generator.history.copies import fingerprint
from generator.history.ledger import Gone, PantryChange, Posted, Revision
from generator.pipeline import describe_text
from tests.records.folder import checked, lay, posted, swap


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return lay(tmp_path / "content")


def described(root: Path) -> str:
    return describe_text(checked(root), "loaf")


def test_the_first_mark_keeps_the_texts_as_they_stand(root: Path) -> None:
    marked = posted(root, "Page")
    pantry, peel, loaf, page = marked.events
    assert isinstance(pantry, PantryChange)
    assert pantry.text == (root / "pantry.yaml").read_text()
    assert isinstance(peel, Revision)
    assert isinstance(loaf, Revision)
    assert (peel.recipe, peel.number, peel.on) == ("candied-peel", 1, date(2026, 9, 1))
    assert (loaf.recipe, loaf.number, loaf.cause, loaf.on) == ("loaf", 2, "first", date(2026, 9, 20))
    assert loaf.text == (root / "recipes/loaf.md").read_text()
    assert isinstance(page, Posted)
    assert (page.place, page.revision, page.fingerprint, page.facts) == ("page", 2, "", loaf.facts)
    assert [type(each) for each in posted(root, "page").events] == [Posted]


def test_a_description_keeps_the_fingerprint_of_its_text(root: Path) -> None:
    (*_, event) = posted(root, "description").events
    assert isinstance(event, Posted)
    assert event.fingerprint == fingerprint(described(root))


@pytest.mark.parametrize(
    "change", [lambda text: text, lambda text: text.replace("\n", " \r\n"), lambda text: f"\ufeff{text}\n\n"]
)
def test_the_same_text_given_back_is_marked(root: Path, change: object) -> None:
    assert callable(change)
    marked = posted(root, "description", text=change(described(root)))
    assert marked.told == ("description of loaf carries revision 2, 2026-11-25",)


def test_an_edited_text_is_told_line_by_line_and_not_marked(root: Path) -> None:
    posted(root, "description")
    text = (
        described(root)
        .replace("430 g (3", "500 g (3")
        .replace("Bake 30 min", "Bake 35 min")
        .replace("400 °F", "450 °F")
    )
    marked = posted(root, "description", text=text)
    assert marked.events == ()
    told = "\n".join(marked.told)
    assert "there 500 g, now 430 g" in told
    assert "there 450 °F, now 400 °F" in told
    assert "it was edited elsewhere" in told
    assert "not marked" in marked.told[-1]
    (event,) = posted(root, "description", text=text, as_it_stands=True).events
    assert isinstance(event, Posted)
    assert (event.own, event.fingerprint) == (False, fingerprint(text))


def test_a_pinned_comment_is_compared_with_the_comment_and_not_with_the_description(root: Path) -> None:
    ours = describe_text(checked(root), "loaf", "comment")
    marked = posted(root, "pinned comment", text=ours)
    assert marked.told == ("pinned comment of loaf carries revision 2, 2026-11-25",)
    (*_, event) = marked.events
    assert isinstance(event, Posted)
    assert (event.own, event.fingerprint) == (True, fingerprint(ours))
    other = posted(root, "pinned comment", text=described(root))
    assert other.events == ()
    assert "Put the text of `tinleaf describe loaf --comment` there" in other.told[-1]


def test_a_pinned_comment_that_was_not_given_back_is_not_taken_for_ours(root: Path) -> None:
    (*_, event) = posted(root, "pinned comment").events
    assert isinstance(event, Posted)
    assert event.fingerprint == ""


def test_a_text_that_lost_an_allergen_is_never_marked(root: Path) -> None:
    text = described(root).replace("WHEAT", "")
    marked = posted(root, "description", text=text, as_it_stands=True)
    assert marked.events == ()
    assert marked.told[-1] == "not marked: it leaves out wheat. Put that right there first"


def test_the_text_of_an_older_revision_is_recognised(root: Path) -> None:
    old = described(root)
    posted(root, "description", on=date(2026, 11, 20))
    swap(root, "430 g", "450 g")
    swap(root, "(3 1/3 cups) ", "")
    marked = posted(root, "description", text=old)
    assert marked.events == ()
    assert "it is the text that was posted on 2026-11-20 with revision 2: it was not renewed" in marked.told


def test_a_place_without_a_text_of_ours_keeps_the_one_given(root: Path) -> None:
    (*_, event) = posted(root, "newsletter", text="New: a plain loaf!").events
    assert isinstance(event, Posted)
    assert (event.own, event.fingerprint) == (True, fingerprint("New: a plain loaf!"))


REFUSED = [
    ({"place": "desciption"}, "Did you mean “description”?"),
    ({"place": "newsleter"}, "Did you mean “newsletter”?"),
    ({"place": "pinned coment"}, "Did you mean “pinned comment”?"),
    ({"place": "description https://video.example/w/other"}, "Its films are https://video.example/w/loaf."),
    ({"place": "\x07"}, "a place is a few plain words"),
    ({"place": "page", "to": "Ada"}, "--to is for what is handed to a person: card or tags"),
    ({"place": "page", "on": date(2026, 11, 26)}, "2026-11-26 is still to come (today is 2026-11-25)"),
    ({"place": "page", "on": date(2026, 9, 19)}, "revision 2 of loaf dates from 2026-09-20"),
    ({"place": "page", "revision": 3}, "there is no revision 3 of loaf: there are 1 and 2"),
    ({"place": "page", "gone": True, "why": "x"}, "no copy “page” of loaf is known."),
]  # fmt: skip


@pytest.mark.parametrize(("wish", "words"), REFUSED)
def test_what_cannot_be_is_refused_in_words(root: Path, wish: dict[str, object], words: str) -> None:
    place = str(wish.pop("place"))
    marked = posted(root, place, **wish)  # type: ignore[arg-type]
    assert marked.events == ()
    assert words in marked.told[-1]


def test_a_day_before_the_last_event_is_refused(root: Path) -> None:
    posted(root, "page", on=date(2026, 10, 10))
    marked = posted(root, "description", on=date(2026, 10, 9))
    assert marked.events == ()
    assert "the ledger already tells of 2026-10-10 for loaf" in marked.told[0]


def test_a_word_that_is_meant_is_a_place_of_its_own(root: Path) -> None:
    assert posted(root, "newsletters", as_typed=True).events
    assert posted(root, "My corner of the club").events
    assert "Did you mean “my corner of the club”?" in posted(root, "my corner of the clubb").told[0]


def test_of_two_films_the_one_is_to_be_named(root: Path) -> None:
    film = "  - url: https://video.example/w/loaf"
    swap(root, film, f"{film}\n  - url: https://video.example/w/two")
    asked = posted(root, "description").told[0]
    assert asked == (
        "this recipe has 2 films; say which one:\n"
        "  description https://video.example/w/loaf\n"
        "  description https://video.example/w/two"
    )
    (*_, event) = posted(root, "Description HTTPS://video.example/w/two/").events
    assert isinstance(event, Posted)
    assert event.place == "description https://video.example/w/two"


def test_a_tag_is_gone_for_one_person(root: Path) -> None:
    posted(root, "tags", to="Ada")
    posted(root, "tag", to="Bo")
    assert "say whose with --to (Ada, Bo)" in posted(root, "tags", gone=True, why="eaten").told[0]
    (event,) = posted(root, "tags", gone=True, why="eaten", to="Bo").events
    assert event == Gone(recipe="loaf", place="tags", to="Bo", on=date(2026, 11, 25), why="eaten")
