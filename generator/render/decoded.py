"""A picture of the maker's as pixels: upright, in sRGB, on paper where it is clear, with nothing beside them."""

from collections.abc import Iterator
from contextlib import contextmanager
from io import BytesIO

from PIL import Image, ImageCms, ImageFile

# The paper of the pages: what shows through where a picture is transparent.
PAPER = (253, 250, 242)
_ORIENTATION = 0x0112
# What turns a picture upright (Exif 2.32, JEITA CP-3451, tag 274: where the 0th row and the 0th column lie).
_TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}
_SIDEWAYS = frozenset({5, 6, 7, 8})


def upright_size(picture: Image.Image) -> tuple[int, int]:
    """Width and height when it stands upright. Raises OSError where the file is cut short.

    A JPEG is decoded at an eighth of its size, which is quick and reads the file to its end.
    """
    width, height = picture.size
    with whole_files_only():
        picture.draft("RGB", (max(1, width // 8), max(1, height // 8)))
        picture.load()
    # Asked after loading: a TIFF is turned by its reader, which then forgets that it lay on its side.
    return (height, width) if _orientation(picture) in _SIDEWAYS else (width, height)


def decoded(data: bytes, *, width: int, height: int) -> Image.Image:
    """The picture in RGB at a size not larger than its own. Raises OSError where the file is cut short.

    A JPEG is decoded at the smallest of its own scales that is not smaller than that (1/2, 1/4, 1/8).
    """
    with whole_files_only(), Image.open(BytesIO(data)) as opened:
        lies = opened.format != "TIFF" and _orientation(opened) in _SIDEWAYS
        size = (height, width) if lies else (width, height)
        opened.draft("RGB", size)
        opened.load()
        turn = _TURNS.get(_orientation(opened))
        profile = opened.info.get("icc_profile")
        small = resized(_workable(opened), size)
    flat = _on_paper(_in_srgb(small, profile))
    upright = flat if turn is None else flat.transpose(turn)
    # A file's own picture may hold further frames, such as the depth map of a telephone.
    upright = upright.copy() if isinstance(upright, ImageFile.ImageFile) else upright
    upright.info = {}
    return upright


def resized(picture: Image.Image, size: tuple[int, int]) -> Image.Image:
    return picture if picture.size == size else picture.resize(size, Image.Resampling.LANCZOS)


@contextmanager
def whole_files_only() -> Iterator[None]:
    """The PDF engine tells Pillow to accept files cut short; a photograph with a grey half is no photograph."""
    before = ImageFile.LOAD_TRUNCATED_IMAGES
    ImageFile.LOAD_TRUNCATED_IMAGES = False
    try:
        yield
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = before


def _orientation(picture: Image.Image) -> int:
    found = picture.getexif().get(_ORIENTATION, 1)
    return found if isinstance(found, int) else 1


def _workable(picture: Image.Image) -> Image.Image:
    """In a mode that can be resized and has a meaning for colour profiles: L, RGB, RGBA or CMYK."""
    if picture.mode.startswith("I"):
        # Sixteen bits of grey; a plain conversion would cut off all that is lighter than 1/256.
        return picture.convert("I").point(lambda value: value * (1 / 257)).convert("L")
    if picture.has_transparency_data:
        return picture.convert("RGBA")
    return picture if picture.mode in ("L", "RGB", "CMYK") else picture.convert("RGB")


def _in_srgb(picture: Image.Image, profile: bytes | None) -> Image.Image:
    """The colours that the profile means. A profile that cannot be read, or is of other colours, says nothing."""
    clear = picture.getchannel("A") if picture.mode == "RGBA" else None
    solid = picture.convert("RGB") if clear else picture
    if profile:
        try:
            turned = ImageCms.profileToProfile(
                solid,
                ImageCms.ImageCmsProfile(BytesIO(profile)),
                ImageCms.createProfile("sRGB"),
                renderingIntent=ImageCms.Intent.RELATIVE_COLORIMETRIC,
                outputMode="RGB",
                flags=ImageCms.Flags.BLACKPOINTCOMPENSATION,
            )
            solid = turned or solid
        except (ImageCms.PyCMSError, OSError):
            pass
    solid = solid.convert("RGB")
    if clear:
        solid.putalpha(clear)
    return solid


def _on_paper(picture: Image.Image) -> Image.Image:
    if picture.mode != "RGBA":
        return picture
    paper = Image.new("RGBA", picture.size, (*PAPER, 255))
    return Image.alpha_composite(paper, picture).convert("RGB")
