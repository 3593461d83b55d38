"""Published photographs against standards: Exif orientation, ICC colour, and sizes read by readers of our own."""

import struct
from io import BytesIO

import pytest
from PIL import Image, ImageCms, ImageDraw

from generator.render.decoded import decoded
from generator.render.photographs import (
    FORMATS,
    LIST_SHAPE,
    TALLEST,
    WIDEST,
    all_copies,
    cut_box,
    picture_set,
    published_size,
    written,
)

Colour = tuple[int, int, int]
CORNERS = {"red": (220, 20, 30), "green": (20, 160, 40), "blue": (30, 40, 200), "grey": (128, 128, 128)}


def upright() -> Image.Image:
    """80 x 40, a colour in each corner: red and green above, blue and grey below."""
    picture = Image.new("RGB", (80, 40))
    pen = ImageDraw.Draw(picture)
    for at, colour in zip(((0, 0), (40, 0), (0, 20), (40, 20)), CORNERS.values(), strict=True):
        pen.rectangle((*at, at[0] + 39, at[1] + 19), fill=colour)
    return picture


# Exif 2.32 (JEITA CP-3451), tag 274: which side of what is seen the stored rows and columns begin at. Each function
# puts the pixels of a picture that is seen upright where a camera of that orientation would store them.
STORED = {
    1: lambda x, y, w, h: (x, y),
    2: lambda x, y, w, h: (w - 1 - x, y),
    3: lambda x, y, w, h: (w - 1 - x, h - 1 - y),
    4: lambda x, y, w, h: (x, h - 1 - y),
    5: lambda x, y, w, h: (y, x),
    6: lambda x, y, w, h: (y, w - 1 - x),
    7: lambda x, y, w, h: (h - 1 - y, w - 1 - x),
    8: lambda x, y, w, h: (h - 1 - y, x),
}


def camera(orientation: int, form: str) -> bytes:
    seen = upright()
    width, height = seen.size
    stored = Image.new("RGB", (height, width) if orientation > 4 else (width, height))
    for y in range(height):
        for x in range(width):
            stored.putpixel(STORED[orientation](x, y, width, height), seen.getpixel((x, y)) or 0)
    notes = Image.Exif()
    notes[0x0112] = orientation
    # A place and a maker, which nobody shall be told.
    notes[0x010F] = "A camera"
    notes.get_ifd(0x8825)[2] = (51.0, 2.0, 3.0)
    file = BytesIO()
    stored.save(file, form, exif=notes, **({"quality": 95, "subsampling": 0} if form == "JPEG" else {}))
    return file.getvalue()


def near(one: Colour, other: Colour, by: int) -> bool:
    return all(abs(a - b) <= by for a, b in zip(one, other, strict=True))


@pytest.mark.parametrize("form", ["JPEG", "PNG", "TIFF"])
@pytest.mark.parametrize("orientation", STORED)
def test_every_orientation_of_a_camera_is_turned_upright(orientation: int, form: str) -> None:
    data = camera(orientation, form)
    assert published_size(data) == (80, 40)
    picture = decoded(data, width=80, height=40)
    for at, colour in zip(((10, 10), (70, 10), (10, 30), (70, 30)), CORNERS.values(), strict=True):
        assert near(picture.getpixel(at), colour, 6), (at, picture.getpixel(at))  # type: ignore[arg-type]


@pytest.mark.parametrize("form", FORMATS)
def test_nothing_of_the_camera_is_published_in_any_format(form: str) -> None:
    data = camera(6, "JPEG")
    assert b"A camera" in data
    content = written(decoded(data, width=80, height=40), form)
    assert not any(
        mark in content for mark in (b"A camera", b"Exif", b"exif", b"GPS", b"http://ns.adobe", b"ICC_")
    )
    with Image.open(BytesIO(content)) as opened:
        assert not opened.getexif()
        assert not {"icc_profile", "comment", "xmp", "exif"} & set(opened.info)


# Display P3 as D50 matrix columns (SMPTE EG 432-1 primaries, white D65, adapted by Bradford, as registered at
# color.org for "Display P3") with the transfer curve of sRGB.
P3 = ((0.51512, 0.24120, -0.00105), (0.29198, 0.69225, 0.04189), (0.15710, 0.06657, 0.78407))
# From linear Display P3 to linear sRGB: CSS Color 4, sample code of section 18, both D65.
P3_TO_SRGB = (
    (1.2249401762805598, -0.22494017628055996, 0.0),
    (-0.042056954709688163, 1.0420569547096881, 0.0),
    (-0.019637554590334432, -0.078636045550631889, 1.0982736001409663),
)


def fixed(value: float) -> bytes:
    return struct.pack(">i", round(value * 65536))


def p3_profile() -> bytes:
    """An ICC version 2 display profile of three colourants and the curve of sRGB, built by hand (ICC.1:2001-04)."""
    curve = b"curv\0\0\0\0" + struct.pack(">I", 1024)
    for at in range(1024):
        curve += struct.pack(">H", round(65535 * to_linear(at / 1023)))

    def xyz(values: tuple[float, ...]) -> bytes:
        return b"XYZ \0\0\0\0" + b"".join(map(fixed, values))

    name = b"By hand\0"
    told = b"desc\0\0\0\0" + struct.pack(">I", len(name)) + name + bytes(12) + bytes(67)
    tags = {
        b"desc": told + bytes(-len(told) % 4),
        b"wtpt": xyz((0.9642, 1.0, 0.8249)),
        **{sign: xyz(values) for sign, values in zip((b"rXYZ", b"gXYZ", b"bXYZ"), P3, strict=True)},
        **dict.fromkeys((b"rTRC", b"gTRC", b"bTRC"), curve),
        b"cprt": b"text\0\0\0\0none\0\0\0\0",
    }
    table, body, start = struct.pack(">I", len(tags)), b"", 128 + 4 + 12 * len(tags)
    for sign, content in tags.items():
        table += sign + struct.pack(">II", start + len(body), len(content))
        body += content
    head = struct.pack(">I4sI4s4s4s", start + len(body), b"lcms", 0x02400000, b"mntr", b"RGB ", b"XYZ ")
    head += struct.pack(">6H", 2026, 1, 1, 0, 0, 0) + b"acsp" + bytes(28)
    head += b"".join(map(fixed, (0.9642, 1.0, 0.8249)))
    return head + bytes(128 - len(head)) + table + body


def to_linear(value: float) -> float:
    """IEC 61966-2-1: the transfer of sRGB, which Display P3 has too."""
    return value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4


def from_linear(value: float) -> float:
    bounded = min(1.0, max(0.0, value))
    return 12.92 * bounded if bounded <= 0.0031308 else 1.055 * bounded ** (1 / 2.4) - 0.055


def by_the_book(colour: Colour) -> Colour:
    linear = [to_linear(value / 255) for value in colour]
    red, green, blue = (
        round(255 * from_linear(sum(a * b for a, b in zip(row, linear, strict=True)))) for row in P3_TO_SRGB
    )
    return red, green, blue


COLOURS = [
    (200, 120, 80),
    (90, 160, 70),
    (60, 80, 170),
    (128, 128, 128),
    (250, 245, 235),
    (20, 15, 10),
    (190, 90, 60),
]


@pytest.mark.parametrize("colour", COLOURS)
def test_a_colour_of_a_telephone_becomes_the_srgb_colour_of_the_standard(colour: Colour) -> None:
    file = BytesIO()
    Image.new("RGB", (8, 8), colour).save(file, "PNG", icc_profile=p3_profile())
    seen = decoded(file.getvalue(), width=8, height=8).getpixel((4, 4))
    assert near(seen, by_the_book(colour), 2), (seen, by_the_book(colour))  # type: ignore[arg-type]


@pytest.mark.parametrize("colour", COLOURS)
def test_what_littlecms_calls_srgb_stays_as_it_is(colour: Colour) -> None:
    own = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    file = BytesIO()
    Image.new("RGB", (8, 8), colour).save(file, "PNG", icc_profile=own)
    seen = decoded(file.getvalue(), width=8, height=8).getpixel((4, 4))
    assert near(seen, colour, 1)  # type: ignore[arg-type]


def test_transparency_keeps_its_colours_through_a_profile() -> None:
    file = BytesIO()
    Image.new("RGBA", (8, 8), (200, 120, 80, 255)).save(file, "PNG", icc_profile=p3_profile())
    seen = decoded(file.getvalue(), width=8, height=8).getpixel((4, 4))
    assert near(seen, by_the_book((200, 120, 80)), 2)  # type: ignore[arg-type]


@pytest.mark.parametrize("profile", [b"no profile", p3_profile()[:200]])
def test_a_profile_that_cannot_be_read_says_nothing(profile: bytes) -> None:
    file = BytesIO()
    Image.new("RGB", (8, 8), (200, 120, 80)).save(file, "PNG", icc_profile=profile)
    assert decoded(file.getvalue(), width=8, height=8).getpixel((4, 4)) == (200, 120, 80)


def test_sixteen_bits_of_grey_are_not_cut_off() -> None:
    file = BytesIO()
    Image.new("I;16", (8, 8), 0x8000).save(file, "PNG")
    seen = decoded(file.getvalue(), width=8, height=8).getpixel((4, 4))
    assert near(seen, (128, 128, 128), 1)  # type: ignore[arg-type]


@pytest.mark.parametrize("form", FORMATS)
def test_the_second_picture_of_a_telephone_is_left_out(form: str) -> None:
    """A multi-picture file (CIPA DC-007) holds a second view or a depth map behind the photograph."""
    file = BytesIO()
    upright().save(file, "MPO", save_all=True, append_images=[Image.new("RGB", (80, 40))])
    with Image.open(BytesIO(written(decoded(file.getvalue(), width=80, height=40), form))) as opened:
        assert getattr(opened, "n_frames", 1) == 1


def measured(content: bytes, form: str) -> tuple[int, int]:
    """Width and height from the bytes of the file, by the format's own description."""
    if form == "jpg":
        at = 2
        while content[at + 1] not in range(0xC0, 0xC4):  # ITU-T T.81, B.2.2: SOF0 to SOF3
            at += 2 + struct.unpack(">H", content[at + 2 : at + 4])[0]
        height, width = struct.unpack(">HH", content[at + 5 : at + 9])
    elif form == "webp":
        assert content[:4] + content[8:16] == b"RIFFWEBPVP8 "  # RFC 9649, 2.5; RFC 6386, 9.1
        width, height = (value & 0x3FFF for value in struct.unpack("<HH", content[26:30]))
    else:
        at = content.index(b"ispe")  # ISO/IEC 23008-12, 6.5.3: image spatial extents
        assert content[4:12] == b"ftypavif"
        width, height = struct.unpack(">II", content[at + 8 : at + 16])
    return width, height


def photograph(width: int, height: int) -> bytes:
    file = BytesIO()
    Image.linear_gradient("L").resize((width, height)).convert("RGB").save(file, "JPEG")
    return file.getvalue()


@pytest.mark.parametrize("size", [(1000, 750), (300, 900), (2400, 300), (12, 9), (1, 40)])
def test_every_copy_has_the_size_that_the_page_says(size: tuple[int, int]) -> None:
    data = photograph(*size)
    width, height = published_size(data) or (0, 0)
    assert width <= min(size[0], WIDEST)
    assert height <= min(size[1], TALLEST)
    copies = {
        copy.path(form): (form, copy.width, copy.height)
        for copy in all_copies("media/a.jpg", width, height)
        for form in FORMATS
    }
    made = dict(picture_set(data, "media/a.jpg", width=width, height=height, focus=(20, 90)))
    assert set(made) == set(copies)
    for path, (form, across, down) in copies.items():
        assert measured(made[path], form) == (across, down), path
        assert across <= size[0]
        assert down <= size[1]


@pytest.mark.parametrize(
    ("size", "focus", "box"),
    [
        ((1600, 1200), (50, 50), (0, 0, 1600, 1200)),
        ((1200, 1600), (50, 50), (0, 350, 1200, 1250)),
        ((1200, 1600), (50, 0), (0, 0, 1200, 900)),
        ((1200, 1600), (50, 100), (0, 700, 1200, 1600)),
        ((2000, 750), (30, 60), (100, 0, 1100, 750)),
        ((2000, 750), (2, 60), (0, 0, 1000, 750)),
    ],
)
def test_a_cut_keeps_the_focal_point_as_near_its_middle_as_it_can(
    size: tuple[int, int], focus: tuple[int, int], box: tuple[int, int, int, int]
) -> None:
    assert cut_box(size, LIST_SHAPE, focus) == box
