"""Photographs as they are published: upright, bounded in size, JPEG, and silent about the camera."""

import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from io import BytesIO
from pathlib import PurePosixPath

from PIL import Image, ImageFile, ImageOps, UnidentifiedImageError

WIDEST = 1600
TALLEST = 2000
NARROWER = (480, 960)
QUALITY = 82
# The paper of the pages: what shows through where a picture is transparent.
_PAPER = (253, 250, 242)
_UNREADABLE = (
    UnidentifiedImageError,
    OSError,
    ValueError,
    SyntaxError,
    Image.DecompressionBombError,
    Image.DecompressionBombWarning,
)
PICTURE_ENDINGS = frozenset({".jpg", ".jpeg", ".png", ".webp", ".gif", ".tif", ".tiff", ".bmp"})


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
            turned = picture.getexif().get(0x0112, 1) in (5, 6, 7, 8)
            size = (picture.height, picture.width) if turned else picture.size
            _decode_small(picture)
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
    """The widths a picture of this published width is offered in, narrowest first."""
    return (*(narrower for narrower in NARROWER if narrower < width), width)


def narrower_path(path: str, width: int) -> str:
    """The name of the copy of the given width: "media/a.jpg" at 480 is "media/a-480w.jpg"."""
    published = PurePosixPath(path)
    return str(published.with_name(f"{published.stem}-{width}w{published.suffix}"))


def encoded(data: bytes, *, width: int, height: int) -> bytes:
    """The picture upright as JPEG of the given size, without metadata.

    Raises OSError where the file is cut short; `published_size` has told about files that are no pictures.
    """
    with _whole_files_only(), Image.open(BytesIO(data)) as opened:
        upright = _flat(ImageOps.exif_transpose(opened))
    sized = (
        upright.resize((width, height), Image.Resampling.LANCZOS)
        if upright.size != (width, height)
        else upright
    )
    written = BytesIO()
    sized.save(written, "JPEG", quality=QUALITY, optimize=True, progressive=True, subsampling="4:2:0")
    return written.getvalue()


def _decode_small(picture: Image.Image) -> None:
    """Raises OSError where the file is cut short: a JPEG is decoded at an eighth of its size, which is quick."""
    with _whole_files_only():
        picture.draft("RGB", (picture.width // 8, picture.height // 8))
        picture.load()


@contextmanager
def _whole_files_only() -> Iterator[None]:
    """The PDF engine tells Pillow to accept files cut short; a photograph with a grey half is no photograph."""
    before = ImageFile.LOAD_TRUNCATED_IMAGES
    ImageFile.LOAD_TRUNCATED_IMAGES = False
    try:
        yield
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = before


def _flat(picture: Image.Image) -> Image.Image:
    """The picture in RGB without information beside the pixels, on paper where it is transparent."""
    if not picture.has_transparency_data:
        return _bare(picture.convert("RGB"))
    clear = picture.convert("RGBA")
    paper = Image.new("RGBA", clear.size, (*_PAPER, 255))
    return _bare(Image.alpha_composite(paper, clear).convert("RGB"))


def _bare(picture: Image.Image) -> Image.Image:
    """The same pixels in a new picture, so that no profile or comment comes along."""
    bare = Image.new("RGB", picture.size)
    bare.paste(picture)
    return bare
