"""Photographs as they are published: upright, bounded in size, in three formats, and silent about the camera."""

import warnings
from collections.abc import Iterator
from dataclasses import dataclass
from io import BytesIO
from pathlib import PurePosixPath

from PIL import Image, UnidentifiedImageError

from generator.render.decoded import decoded, resized, upright_size

WIDEST = 1600
TALLEST = 2000
# A large picture fills nine tenths of a telephone: 658 dots of one that is 412 wide with 1.75 to the pixel, 1065 of
# one that is 390 wide with 3. One in a list fills a little less: 595 and 965.
NARROWER = (720, 1080)
LIST_WIDTHS = (600, 900)
QUALITY = 82
# Pictures in lists are cut to this shape around the focal point, so that a tall one does not fill a telephone.
LIST_SHAPE = (4, 3)
# A picture that is within a fiftieth of the shape is left whole.
_NEAR = 0.02
_UNREADABLE = (
    UnidentifiedImageError,
    OSError,
    ValueError,
    SyntaxError,
    Image.DecompressionBombError,
    Image.DecompressionBombWarning,
)
PICTURE_ENDINGS = frozenset({".jpg", ".jpeg", ".png", ".webp", ".gif", ".tif", ".tiff", ".bmp"})
# Best first, as a browser takes the first that it knows; a JPEG is understood by all.
FORMATS = ("avif", "webp", "jpg")

Focus = tuple[int, int]
"""Where the eye should rest, in percent of the width from the left and of the height from the top."""
MIDDLE: Focus = (50, 50)


@dataclass(frozen=True, slots=True, kw_only=True)
class Copy:
    """One width of a photograph, without the ending of its format. `cut` is one for lists, in their shape."""

    stem: str
    width: int
    height: int
    cut: bool = False

    def path(self, form: str) -> str:
        return f"{self.stem}.{form}"


def is_picture(source: str) -> bool:
    """Whether the name of the file is one of a picture that can be published."""
    return PurePosixPath(source).suffix.lower() in PICTURE_ENDINGS


def published_path(source: str) -> str:
    """The name of the JPEG that a picture becomes; two sources never share one.

    "media/a.jpg" stays, "media/a.png" becomes "media/a-png.jpg".
    """
    path = PurePosixPath(source)
    if path.suffix == ".jpg":
        return source
    return str(path.with_name(f"{path.stem}-{path.suffix.lower().lstrip('.')}.jpg"))


def published_size(data: bytes) -> tuple[int, int] | None:
    """Width and height in pixels that the picture is published at; None where it is no readable picture.

    A picture of more pixels than Pillow thinks safe to unpack counts as unreadable.
    """
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            picture = Image.open(BytesIO(data))
        with picture:
            size = upright_size(picture)
    except _UNREADABLE:
        return None
    return _bounded(*size)


def _bounded(width: int, height: int) -> tuple[int, int]:
    """The size scaled down, never up, into WIDEST x TALLEST."""
    if width <= WIDEST and height <= TALLEST:
        return width, height
    if width * TALLEST >= height * WIDEST:
        return WIDEST, max(1, round(height * WIDEST / width))
    return max(1, round(width * TALLEST / height)), TALLEST


def widths(width: int) -> tuple[int, ...]:
    """The widths a large picture of this published width is offered in, narrowest first."""
    return (*(narrower for narrower in NARROWER if narrower < width), width)


def list_widths(width: int) -> tuple[int, ...]:
    """The widths for lists, narrowest first, of a picture that has this width at most."""
    return tuple(each for each in LIST_WIDTHS if each < width) or (width,)


def narrower_path(path: str, width: int) -> str:
    """The name of the copy of the given width: "media/a.jpg" at 480 is "media/a-480w.jpg"."""
    published = PurePosixPath(path)
    return str(published.with_name(f"{published.stem}-{width}w{published.suffix}"))


def whole_copies(path: str, width: int, height: int) -> tuple[Copy, ...]:
    """Every width of a photograph that is published at `path`, narrowest first."""
    return _whole(path, width, height, widths(width))


def list_copies(path: str, width: int, height: int) -> tuple[Copy, ...]:
    """Every width for lists, narrowest first: of the whole where it has their shape, else of what is cut from it."""
    across, down = cut_size(width, height, LIST_SHAPE)
    if across >= width * (1 - _NEAR) and down >= height * (1 - _NEAR):
        return _whole(path, width, height, list_widths(width))
    return tuple(
        Copy(
            stem=f"{_stem(path)}-{each}c",
            width=each,
            height=max(1, round(each * LIST_SHAPE[1] / LIST_SHAPE[0])),
            cut=True,
        )
        for each in list_widths(across)
    )


def _whole(path: str, width: int, height: int, offered: tuple[int, ...]) -> tuple[Copy, ...]:
    return tuple(
        Copy(
            stem=_stem(path if each == width else narrower_path(path, each)),
            width=each,
            height=max(1, round(height * each / width)),
        )
        for each in offered
    )


def all_copies(path: str, width: int, height: int) -> tuple[Copy, ...]:
    """What is published of a photograph, each once, narrowest first."""
    copies = {*whole_copies(path, width, height), *list_copies(path, width, height)}
    return tuple(sorted(copies, key=lambda each: (each.width, each.stem)))


def _stem(path: str) -> str:
    return path.removesuffix(".jpg")


def cut_size(width: int, height: int, shape: tuple[int, int]) -> tuple[int, int]:
    """The largest size of this shape that a picture has room for."""
    across, down = shape
    if width * down >= height * across:
        return max(1, round(height * across / down)), height
    return width, max(1, round(width * down / across))


def cut_box(size: tuple[int, int], shape: tuple[int, int], focus: Focus) -> tuple[int, int, int, int]:
    """What is cut out of a picture of this size: the most that fits the shape, the focal point near its middle."""
    across, down = cut_size(*size, shape)
    left = min(max(round(size[0] * focus[0] / 100 - across / 2), 0), size[0] - across)
    top = min(max(round(size[1] * focus[1] / 100 - down / 2), 0), size[1] - down)
    return left, top, left + across, top + down


def focus_in_list(size: tuple[int, int], focus: Focus) -> Focus:
    """The focal point seen from within what is cut out for lists."""
    left, top, right, bottom = cut_box(size, LIST_SHAPE, focus)
    across = (size[0] * focus[0] / 100 - left) / (right - left)
    down = (size[1] * focus[1] / 100 - top) / (bottom - top)
    return round(100 * across), round(100 * down)


def picture_set(
    data: bytes, path: str, *, width: int, height: int, focus: Focus = MIDDLE
) -> Iterator[tuple[str, bytes]]:
    """Every copy in every format, by its path: decoded once, then each width reduced from the one above it.

    Raises OSError where the file is cut short; `published_size` has told about files that are no pictures.
    """
    largest = decoded(data, width=width, height=height)
    for cut in (False, True):
        picture = largest.crop(cut_box(largest.size, LIST_SHAPE, focus)) if cut else largest
        copies = [each for each in all_copies(path, width, height) if each.cut is cut]
        for copy in reversed(copies):
            picture = resized(picture, (copy.width, copy.height))
            for form in FORMATS:
                yield copy.path(form), written(picture, form)


def encoded(data: bytes, *, width: int, height: int) -> bytes:
    """The picture upright as JPEG of the given size, without metadata.

    Raises OSError where the file is cut short; `published_size` has told about files that are no pictures.
    """
    return written(decoded(data, width=width, height=height), "jpg")


def without_notes(data: bytes, suffix: str) -> bytes:
    """A picture of a theme without what a camera or a program noted in it; any other file as it is.

    A JPEG is turned upright and published like a photograph, a PNG keeps its pixels and what is clear in it.
    Raises OSError where it cannot be read.
    """
    if suffix == ".png":
        with Image.open(BytesIO(data)) as opened:
            opened.load()
            kept = {each: opened.info[each] for each in ("transparency",) if each in opened.info}
            opened.info = {}
            file = BytesIO()
            opened.save(file, "PNG", optimize=True, **kept)
            return file.getvalue()
    size = published_size(data) if suffix == ".jpg" else None
    return encoded(data, width=size[0], height=size[1]) if size else data


def written(picture: Image.Image, form: str) -> bytes:
    """The pixels in a format, and nothing but them. The same on any machine: one thread, no tiles.

    The settings give the three the same distance from the original (about 40.4 dB of the light, middle of our
    drawings at 960 pixels): JPEG 88 kB in 11 ms, WebP 54 kB in 27, AVIF 42 kB in 117. AVIF a step faster takes 28 ms
    and is larger than the WebP; a step slower takes 162 ms and saves 2 kB.
    """
    file = BytesIO()
    if form == "avif":
        picture.save(file, "AVIF", quality=66, speed=8, max_threads=1, autotiling=False)
    elif form == "webp":
        picture.save(file, "WEBP", quality=78, method=2)
    else:
        picture.save(file, "JPEG", quality=QUALITY, optimize=True, progressive=True, subsampling="4:2:0")
    return file.getvalue()
