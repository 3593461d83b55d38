"""A face drawn: the photograph first, then the slip with its bars, then words where they can be read."""

from collections.abc import Iterator
from io import BytesIO
from itertools import groupby

from PIL import Image, ImageDraw

from generator.render.decoded import decoded, resized
from generator.render.far_faces import runs_leftward
from generator.render.images.contrast import LEAST, least_ratio
from generator.render.images.face import Bar, Box, Face
from generator.render.images.ink import OVERSAMPLE, SLIP, Stroke, as_drawn, draw_text, width_of
from generator.render.images.record import recorded, recorded_jpeg
from generator.render.photographs import Focus, cut_box


class Unreadable(ValueError):
    """Words would stand on a ground that they do not stand out from."""


def as_jpeg(face: Face, photo: Image.Image | None, focus: Focus) -> bytes:
    """For faces with a photograph: letters keep their edges, as colour is not halved."""
    file = BytesIO()
    painted(face, photo, focus).save(file, "JPEG", quality=86, optimize=True, progressive=True, subsampling=0)
    return recorded_jpeg(file.getvalue(), words_of(face))


def as_png(face: Face) -> bytes:
    """For faces of few colours, which must not be lossy: a film is made of them."""
    file = BytesIO()
    painted(face, None, (50, 50)).save(file, "PNG", compress_level=4)
    return recorded(file.getvalue(), words_of(face))


def photo_for(face: Face, data: bytes, size: tuple[int, int]) -> Image.Image | None:
    """The photograph at the least size that fills its box. `size` is as published. Raises OSError."""
    if face.photo is None:
        return None
    scale = max(face.photo.width / size[0], face.photo.height / size[1])
    whole = (max(1, round(size[0] * min(1, scale))), max(1, round(size[1] * min(1, scale))))
    return decoded(data, width=whole[0], height=whole[1])


def painted(face: Face, photo: Image.Image | None, focus: Focus) -> Image.Image:
    picture = Image.new("RGB", (face.width, face.height), face.ground)
    if photo is not None and face.photo is not None:
        size = (round(face.photo.width), round(face.photo.height))
        cut = photo.crop(cut_box(photo.size, size, focus))
        picture.paste(resized(cut, size), (round(face.photo.left), round(face.photo.top)))
    slip = _drawn_slip(face)
    picture.paste(slip, (round(face.slip.left), round(face.slip.top)))
    return picture


def _drawn_slip(face: Face) -> Image.Image:
    """Drawn at twice the size and reduced."""
    slip = face.slip
    large = Image.new("RGB", (round(slip.width * OVERSAMPLE), round(slip.height * OVERSAMPLE)), SLIP)
    pen = ImageDraw.Draw(large)
    for bar in face.bars:
        pen.rectangle(_corners(bar, slip), fill=bar.colour)
    for stroke in face.strokes:
        ratio = least_ratio(large.crop(_under(stroke, slip)), stroke.pen.colour)
        if ratio < LEAST:
            raise Unreadable(f"“{stroke.text}” stands out from its ground by {ratio:.1f} : 1")
    for stroke in face.strokes:
        draw_text(pen, (stroke.x - slip.left, stroke.y - slip.top), stroke.text, stroke.pen)
    return large.reduce(OVERSAMPLE)


def _corners(bar: Bar, slip: Box) -> tuple[int, int, int, int]:
    left = round((bar.box.left - slip.left) * OVERSAMPLE)
    top = round((bar.box.top - slip.top) * OVERSAMPLE)
    right = round((bar.box.right - slip.left) * OVERSAMPLE) - 1
    bottom = round((bar.box.bottom - slip.top) * OVERSAMPLE) - 1
    return left, top, max(left, right), max(top, bottom)


def stroke_box(stroke: Stroke) -> Box:
    """Where the letters of a stroke lie, by the reach of our faces: 0.8 of the size upwards, 0.26 downwards.

    Letters of Arabic reach further: 0.9 upwards, 0.35 downwards.
    """
    size = stroke.pen.size
    up, down = (0.9, 0.35) if runs_leftward(stroke.text) else (0.8, 0.26)
    width = width_of(stroke.text, stroke.pen)
    return Box(left=stroke.x, top=stroke.y - up * size, width=width, height=(up + down) * size)


def _under(stroke: Stroke, slip: Box) -> tuple[int, int, int, int]:
    box = stroke_box(stroke)
    edges = (box.left - slip.left, box.top - slip.top, box.right - slip.left, box.bottom - slip.top)
    left, top, right, bottom = (round(edge * OVERSAMPLE) for edge in edges)
    return left, top, max(left + 1, right), max(top + 1, bottom)


def words_of(face: Face) -> Iterator[str]:
    """The lines as they are read; what stands on one height is one line."""
    for _, line in groupby(face.strokes, key=lambda each: round(each.y)):
        yield " ".join(as_drawn(each.text) for each in line)
