"""What a picture shows, written into it: the drawn words as text, and a mark that they belong to these pixels.

A picture without words in its data can only be judged by eye. The words stand in the chunk that PNG has for them
(iTXt "Description"; PNG, W3C Recommendation 2003, 11.3.4), and "Pixels" holds the fingerprint of the picture data, so
that a picture painted over by hand is not taken for the one that was drawn.
"""

import hashlib
import struct
import zlib
from collections.abc import Iterable

_END = b"\x00\x00\x00\x00IEND\xaeB`\x82"


def recorded(picture: bytes, lines: Iterable[str]) -> bytes:
    """The same PNG with its record before its end. ValueError: not a whole PNG."""
    if not picture.endswith(_END):
        raise ValueError("not a whole PNG")
    words = "\n".join(lines).encode("utf-8")
    # Keyword, compression flag and method, language, translated keyword, text.
    told = _chunk(b"iTXt", b"Description\0" + b"\0\0" + b"\0" + b"\0" + words)
    mark = _chunk(b"tEXt", b"Pixels\0sha256 " + _fingerprint(picture).encode("ascii"))
    return picture[: -len(_END)] + told + mark + _END


def recorded_jpeg(picture: bytes, lines: Iterable[str]) -> bytes:
    """The same JPEG with its record as a comment at its head (ITU-T T.81, B.2.4.5): the words, then the fingerprint
    of the picture without the comment. ValueError: not a JPEG, or more words than a comment holds."""
    if not picture.startswith(b"\xff\xd8"):
        raise ValueError("not a JPEG")
    mark = f"sha256 {hashlib.sha256(picture).hexdigest()}"
    told = "\n".join((*lines, mark)).encode("utf-8")
    return picture[:2] + b"\xff\xfe" + struct.pack(">H", len(told) + 2) + told + picture[2:]


def _fingerprint(picture: bytes) -> str:
    """Of the picture data alone, in hexadecimal."""
    found, at = hashlib.sha256(), 8
    while at < len(picture):
        length, kind = struct.unpack(">I4s", picture[at : at + 8])
        if kind == b"IDAT":
            found.update(picture[at + 8 : at + 8 + length])
        at += 12 + length
    return found.hexdigest()


def _chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
