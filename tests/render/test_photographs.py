"""Photographs are published upright, bounded, and silent about the camera."""

from io import BytesIO

import pytest
from PIL import Image

from generator.render.photographs import (
    TALLEST,
    WIDEST,
    all_copies,
    encoded,
    is_picture,
    list_widths,
    narrower_path,
    published_path,
    published_size,
    widths,
)


def picture(width: int, height: int, form: str = "JPEG", *, turn: int = 0, mode: str = "RGB") -> bytes:
    """A picture whose left half is dark, with camera notes, turned by an EXIF orientation."""
    made = Image.new(mode, (width, height), "white")
    made.paste(Image.new(mode, (width // 2, height), "black"))
    notes = Image.Exif()
    if turn:
        notes[0x0112] = turn
    notes[0x010F] = "A camera"
    written = BytesIO()
    made.save(written, form, exif=notes)
    return written.getvalue()


@pytest.mark.parametrize(
    ("size", "published"),
    [
        ((800, 600), (800, 600)),
        ((3200, 2400), (WIDEST, 1200)),
        ((2000, 5000), (800, TALLEST)),
        ((WIDEST, TALLEST), (WIDEST, TALLEST)),
    ],
)
def test_a_picture_is_scaled_down_into_bounds_and_never_up(
    size: tuple[int, int], published: tuple[int, int]
) -> None:
    assert published_size(picture(*size)) == published


def test_the_orientation_of_the_camera_is_applied() -> None:
    data = picture(80, 40, turn=6)
    assert published_size(data) == (40, 80)
    upright = Image.open(BytesIO(encoded(data, width=40, height=80))).convert("L")
    rows = upright.resize((1, 4)).tobytes()
    assert rows[0] < 40
    assert rows[3] > 215


def test_nothing_is_told_about_the_camera() -> None:
    data = encoded(picture(80, 40, turn=3), width=80, height=40)
    assert b"A camera" not in data
    assert b"Exif" not in data
    assert "comment" not in Image.open(BytesIO(data)).info


def test_a_transparent_picture_lies_on_paper() -> None:
    clear = BytesIO()
    Image.new("RGBA", (10, 10), (0, 0, 0, 0)).save(clear, "PNG")
    made = Image.open(BytesIO(encoded(clear.getvalue(), width=10, height=10)))
    assert min(made.tobytes()) > 230


@pytest.mark.parametrize("data", [b"", b"no picture", picture(40, 40)[:30]])
def test_what_is_no_picture_has_no_size(data: bytes) -> None:
    assert published_size(data) is None


def test_a_picture_cut_short_is_an_error_when_it_is_encoded() -> None:
    whole = picture(400, 400)
    with pytest.raises(OSError, match="truncated"):
        encoded(whole[: len(whole) // 2], width=40, height=40)


def test_the_same_picture_gives_the_same_bytes() -> None:
    data = picture(300, 200, "PNG")
    assert encoded(data, width=150, height=100) == encoded(data, width=150, height=100)


def test_two_sources_never_share_a_published_name() -> None:
    sources = ("media/a.jpg", "media/a.png", "media/a.jpeg", "media/a.JPG")
    assert [published_path(source) for source in sources] == [
        "media/a.jpg",
        "media/a-png.jpg",
        "media/a-jpeg.jpg",
        "media/a-jpg.jpg",
    ]


def test_copies_are_narrower_than_the_picture() -> None:
    assert widths(1600) == (720, 1080, 1600)
    assert widths(720) == (720,)
    assert narrower_path("media/a.jpg", 720) == "media/a-720w.jpg"


def test_lists_have_widths_of_their_own() -> None:
    assert [list_widths(width) for width in (1600, 900, 600, 120)] == [(600, 900), (600,), (600,), (120,)]
    wide = [(each.stem, each.width, each.cut) for each in all_copies("media/a.jpg", 1600, 1200)]
    assert wide == [(f"media/a-{width}w", width, False) for width in (600, 720, 900, 1080)] + [
        ("media/a", 1600, False)
    ]
    tall = [(each.stem, each.width, each.cut) for each in all_copies("media/a.jpg", 1000, 2000)]
    assert tall == [
        ("media/a-600c", 600, True),
        ("media/a-720w", 720, False),
        ("media/a-900c", 900, True),
        ("media/a", 1000, False),
    ]


def test_pictures_are_known_by_their_ending() -> None:
    assert is_picture("media/a.JPG")
    assert not is_picture("media/a.pdf")


def test_a_picture_cut_short_is_no_picture_to_begin_with() -> None:
    whole = picture(400, 400)
    assert published_size(whole) == (400, 400)
    assert published_size(whole[: len(whole) // 2]) is None
