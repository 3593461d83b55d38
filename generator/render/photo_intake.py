"""A photograph from a tablet, taken in: decoded, bounded, and written anew, so that nothing but its pixels stays."""

from generator.render.photographs import encoded, published_size

MOST_BYTES = 16_000_000
SUFFIX = ".jpg"


def photo_taken_in(data: bytes) -> bytes | str:
    """The picture as JPEG without metadata, upright, no larger than a page shows; a sentence where it is none.

    A picture that would unpack to more pixels than are safe is refused before it is unpacked.
    """
    if len(data) > MOST_BYTES:
        return f"the picture is larger than {MOST_BYTES // 1_000_000} MB"
    size = published_size(data)
    if size is None:
        return "this is no picture that can be read, or one with too many pixels"
    try:
        return encoded(data, width=size[0], height=size[1])
    except (OSError, ValueError, SyntaxError):
        return "this picture cannot be read to its end"
